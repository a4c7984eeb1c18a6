/**
 * Three sources of ash that Millrace Lane laboratory tests, all invented. Orrinmoss certifies what passes at
 * 7 d and diverts what does not, which its ledger tells: that alone gathers its results above the limit, most in
 * its first year.
 * Tansgarth loads trucks from a terminal where lots lie together, one of which does not meet. Hollenby is as
 * usual, with a listing that was suspended for a while.
 */
import { type TestMortar, testMortarLines } from './bench.ts'
import { ashAnalysis } from './ash-analysis.ts'
import { dateOfDay, dayOf, monthOf } from './calendar.ts'
import { type Chance, chanceOf } from './chance.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import {
  cementFactor,
  MILLRACE,
  MILLRACE_SAMPLING,
  millraceBench,
  millraceControls,
} from './millrace-laboratory.ts'
import { type Sheets, sheetText } from './sheet.ts'

/** Every lot of Orrinmoss is a silo full. */
const SILO_T = 900
/** A bin that fails at 7 d is used otherwise, in whole. */
const DIVERTED_T = 300
const LIMIT = 75
/** True index at 7 d beside the first cement: mean and standard deviation, points. */
const ORRINMOSS_INDEX = [79, 2.4] as const
const ORRINMOSS_SEED = 7_501

interface Bin {
  readonly place: number
  readonly index: number
}

/** What Orrinmoss made, bin by bin: before each certified lot those that came out below the limit. */
interface Bins {
  readonly certified: readonly number[]
  readonly diverted: readonly Bin[]
}
const ORRINMOSS_BINS = orrinmossBins(ORRINMOSS_SEED, MILLRACE_SAMPLING.lots, (place, chance) => {
  const [mean, deviation] = ORRINMOSS_INDEX
  return (mean + deviation * chance.normal()) * cementFactor(place)
})
/** In the year before, another coal came close to the limit: many bins were diverted, and many passed by little. */
const ORRINMOSS_2024 = { from: '2024-02-05', every: 16, lots: 20, bills: 97_000 } as const
const BINS_2024 = orrinmossBins(
  ORRINMOSS_SEED + 1,
  ORRINMOSS_2024.lots,
  (_, chance) => 75.2 + 0.8 * chance.normal(),
)

function orrinmossBins(seed: number, lots: number, indexOf: (place: number, chance: Chance) => number): Bins {
  const chance = chanceOf(seed)
  const certified: number[] = []
  const diverted: Bin[] = []
  while (certified.length < lots) {
    const place = certified.length
    const index = indexOf(place, chance)
    if (LIMIT <= Number(index.toFixed(1))) certified.push(index)
    else diverted.push({ place, index })
  }
  return { certified, diverted }
}

const sheets = (own: Partial<Sheets> & Pick<Sheets, 'sampler' | 'silos' | 'projects'>): Sheets => ({
  units: 'SI',
  quantityT: [SILO_T, SILO_T],
  place: 'truck loading spout',
  laboratory: 'millrace-lane',
  consignees: ['Quellan Mix', 'Basin Precast'],
  shipmentT: [24, 3],
  ...own,
})

/** A lot of any of the three, with what its source makes of the day's mortar. */
function written(
  sheet: Sheets,
  lot: FurtherLot,
  mortar: Omit<TestMortar, 'control'>,
  chance: Chance,
): WrittenLot {
  const controls = millraceControls(lot.place, lot.castDay, lot.lastDay)
  const tests = testMortarLines(
    millraceBench(lot.place),
    { control: controls[0], water: 233, ...mortar },
    lot.lastDay,
    chance,
  )
  const analyses = [{ sample: 'C', day: lot.castDay - 1, results: ashAnalysis(18, chance) }]
  return { text: sheetText(sheet, { ...lot, analyses, tests, shipsAfter: 10 }, chance), controls }
}

function usualIndex(place: number, mean7: number, chance: Chance): TestMortar['index'] {
  const state = 1.6 * chance.normal()
  const factor = cementFactor(place)
  return { 7: (mean7 + state) * factor, 28: (mean7 + 7 + state) * factor }
}

function orrinmoss2024(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const sheet = sheets({ sampler: 'G. Ashdyke', silos: ['O1'], projects: ['Route 9 overlay'] })
  return (lot) => {
    const index7 = BINS_2024.certified[lot.place] ?? LIMIT
    const mortar = { index: { 7: index7, 28: index7 + 6 }, planted: { 7: index7 } }
    // All of that year were tested beside the first cement.
    return written(sheet, { ...lot, place: 0 }, mortar, chance)
  }
}

function orrinmossSeries(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const sheet = sheets({ sampler: 'G. Ashdyke', silos: ['O1'], projects: ['Route 9 overlay'] })
  return (lot) => {
    const index7 = ORRINMOSS_BINS.certified[lot.place] ?? LIMIT
    const index = { 7: index7, 28: index7 + 6 }
    return written(sheet, lot, { index, planted: { 7: index7 } }, chance)
  }
}

/** Place of the lot of Tansgarth that does not meet at either age. */
export const TANSGARTH_LOW = { place: 11, index: { 7: 72.4, 28: 73.1 } } as const

function tansgarthSeries(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const sheet = sheets({ sampler: 'L. Penwhist', silos: ['T1', 'T2'], projects: ['Tansgarth Locks'] })
  return (lot) =>
    written(
      sheet,
      lot,
      {
        index: usualIndex(lot.place, 83, chance),
        ...(lot.place === TANSGARTH_LOW.place ? { planted: TANSGARTH_LOW.index } : {}),
      },
      chance,
    )
}

function hollenbySeries(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const sheet = sheets({ sampler: 'W. Cardle', silos: ['H1'], projects: ['Varrow Bridge'] })
  return (lot) => written(sheet, lot, { index: usualIndex(lot.place, 85, chance) }, chance)
}

/** The bins that were diverted, a line each: with the result for which they were, and what became of them. */
function divertedLines(): string[] {
  return [
    ...BINS_2024.diverted.map(({ place, index }) => ({
      day: dayOf(ORRINMOSS_2024.from) + place * ORRINMOSS_2024.every - 10,
      index,
    })),
    ...ORRINMOSS_BINS.diverted.map(({ place, index }) => ({ day: divertedDay(place), index })),
  ].map(
    ({ day, index }, count) =>
      `  - { on: ${dateOfDay(day + 8)}, mass: ${DIVERTED_T} t, silo: O1, reason: "index below 75 % at 7 d", where: ${count % 2 === 0 ? 'block works' : 'fill'}, laboratory: millrace-lane, tested: ${dateOfDay(day + 7)}, results: { strength-activity-index: { value: ${index.toFixed(1)} %, condition: c311, age: 7 d } } }`,
  )
}

/** A week before the lot that was certified in its place. */
function divertedDay(place: number): number {
  return samplingDay(place) - 10
}

function samplingDay(place: number): number {
  return dayOf(MILLRACE_SAMPLING.from) + place * MILLRACE_SAMPLING.every
}

/** Stock stands at the end of each month; one month is 12 t short of what it should be. */
function balanceLines(): string[] {
  const certified = counted(ORRINMOSS_BINS.certified.map((_, place) => monthOf(samplingDay(place))))
  const diverted = counted(ORRINMOSS_BINS.diverted.map(({ place }) => monthOf(divertedDay(place) + 8)))
  const months = [...new Set([...certified.keys(), ...diverted.keys()])].sort()
  return months.map((month, place) => {
    const [lots, bins] = [certified.get(month) ?? 0, diverted.get(month) ?? 0]
    const grown = place === 0 ? 0 : 20
    const lost = place === 5 ? 12 : 0
    const produced = lots * SILO_T + bins * DIVERTED_T + grown + lost
    return `  - { month: ${month}, silo: O1, produced: ${produced} t, diverted: ${bins * DIVERTED_T} t, rejected: 0 t, stock: ${100 + 20 * place} t }`
  })
}

function counted(months: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const month of months) counts.set(month, (counts.get(month) ?? 0) + 1)
  return counts
}

const SETS = `criteria:
  - { set: c618-12a }
  - { set: source-variability }
`

interface Head {
  readonly id: string
  readonly prefix: string
  readonly name: string
  readonly town: string
  /** Lines of the producer's record with its telephone, mail and letterhead. */
  readonly reached?: string
  readonly bills: number
  readonly issuer: FurtherSource['issuer']
  readonly record: string
  readonly series: FurtherSource['series']
  readonly notUsed?: readonly string[]
  readonly earlier?: FurtherSource['earlier']
}

function furtherAsh({
  id,
  prefix,
  name,
  town,
  reached = '',
  bills,
  issuer,
  record,
  series,
  notUsed = [],
  earlier,
}: Head): FurtherSource {
  return {
    id,
    prefix,
    ...MILLRACE_SAMPLING,
    bills,
    issuer,
    notUsed,
    ...(earlier === undefined ? {} : { earlier }),
    issues: [
      [9, 'issued with 7-day results'],
      [30, '28-day results added'],
    ],
    producer: {
      path: `producers/${name.toLowerCase()}.yaml`,
      text: `name: ${name} Ash
address: [${town}]
${reached}plants:
  works: { name: ${name} works }
signatories:
  - { name: ${issuer.name}, function: ${issuer.function}, independent-of-production: yes }
`,
    },
    laboratory: MILLRACE,
    source: {
      path: `sources/${id}.yaml`,
      text: `name: ${name} fly ash
producer: ${name.toLowerCase()}
plant: works
kind: coal-fly-ash
class: F
lot-number-pattern: ${prefix}-YYYY-###
${SETS}${record}`,
    },
    series,
  }
}

export const ORRINMOSS = furtherAsh({
  id: 'orrinmoss-ash',
  prefix: 'OM',
  name: 'Orrinmoss',
  town: 'Kiln Row, Orrinmoss',
  bills: 95_000,
  issuer: { name: 'C. Wainfleet', function: 'quality manager' },
  record: `# What was made and not certified, with the result that decided.
diverted:
${divertedLines().join('\n')}
balance:
${balanceLines().join('\n')}
reports:
  from: 2025-05
  due: 15 d
  received:
    - { month: 2025-05, on: 2025-06-11 }
    - { month: 2025-06, on: 2025-07-14 }
    - { month: 2025-07, on: 2025-08-12 }
    - { month: 2025-08, on: 2025-09-10 }
    # Late by 12 days.
    - { month: 2025-09, on: 2025-10-27 }
    - { month: 2025-10, on: 2025-11-13 }
    - { month: 2025-11, on: 2025-12-12 }
    - { month: 2025-12, on: 2026-01-14 }
    - { month: 2026-01, on: 2026-02-11 }
    - { month: 2026-02, on: 2026-03-12 }
`,
  series: orrinmossSeries,
  earlier: { ...ORRINMOSS_2024, series: orrinmoss2024 },
})

export const TANSGARTH = furtherAsh({
  id: 'tansgarth-ash',
  prefix: 'TG',
  name: 'Tansgarth',
  town: 'Lock Side, Tansgarth',
  bills: 96_000,
  issuer: { name: 'B. Oldcastle', function: 'technical manager' },
  notUsed: ['TG-2025-006'],
  record: `numbers-not-used:
  - { number: TG-2025-006, on: 2025-07-14, reason: "form spoiled, the next number was taken" }
# The terminal's silo holds what two lots left; nobody can say which of them a truck was loaded from.
shipments:
  - { bill: BL-96901, date: 2025-11-20, mass: 25.2 t, lots: [TG-2025-012, TG-2025-013], from: Tansgarth terminal, to: Basin Precast, project: Tansgarth Locks, seal: "730114" }
  - { bill: BL-96902, date: 2026-02-03, mass: 24.6 t, lots: [TG-2025-015, TG-2025-016], from: Tansgarth terminal, to: Quellan Mix, project: Varrow Bridge, seal: "730207" }
`,
  series: tansgarthSeries,
})

export const HOLLENBY = furtherAsh({
  id: 'hollenby-ash',
  prefix: 'HB',
  name: 'Hollenby',
  town: 'Stack Lane, Hollenby',
  bills: 98_000,
  issuer: { name: 'E. Marrick', function: 'head of laboratory' },
  reached: `telephone: +1 202 555 0143
mail: quality@hollenby.example
letterhead: ["Fly ash for road and dam builders", "Loading on working days, 05:30 to 17:00"]
`,
  record: `agency-numbers:
  - { agency: Varrow Vale Roads Authority, number: RA-0417, from: 2024-09-01 }
listing:
  - { date: 2024-09-01, by: Varrow Vale Roads Authority, action: listed, to: 2025-08-31, scope: "class F, structural concrete" }
  - { date: 2025-07-07, by: Varrow Vale Roads Authority, action: suspended, reason: "two monthly reports outstanding" }
  - { date: 2025-08-04, by: Varrow Vale Roads Authority, action: reinstated }
  - { date: 2025-09-01, by: Varrow Vale Roads Authority, action: renewed, to: 2026-08-31, scope: "class F, structural concrete", next-review: 2026-06-15 }
`,
  series: hollenbySeries,
})
