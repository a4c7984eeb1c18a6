/**
 * Pellmoor fly ash, invented: entered from an independent laboratory's finished figures alone, without a
 * reading of a specimen. Every lot has seven regular samples, one for each day of its production, beside the
 * composite made of them. Values are of plausible size and no data. In one lot the sample of one day holds
 * more on the 45 µm sieve than the limit of 34 %, and the composite, which is judged, does not. The purchaser
 * asks for three options of ASTM C618 that are recalled from memory.
 */
import { mean } from 'd3'
import { dateOfDay } from './calendar.ts'
import { autoregressive, type Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import { type SheetAnalysis, type Sheets, sheetText } from './sheet.ts'

const SHEETS: Sheets = {
  units: 'SI',
  quantityT: [2000, 2500],
  silos: ['P1', 'P2', 'P3'],
  place: 'ash line to silo',
  sampler: 'K. Waldring',
  laboratory: 'sallow-street',
  consignees: ['Northmere Block', 'Harrow Fell Readymix'],
  projects: ['Lower Mere Lock', 'Basin Weir'],
  shipmentT: [24, 3],
}

/** The sample of one day with much on the sieve, from 0 for the first day of the lot's week. */
const COARSE = { place: 5, sample: 4, residue: 35.2 }
const REGULAR_SAMPLES = 7

/** One day's sample, in per cent. */
interface Regular {
  readonly id: string
  readonly day: number
  readonly moisture: number
  readonly lossOnIgnition: number
  readonly residue: number
}

function series(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const [activity, fineness] = [autoregressive(chance, 0.4), autoregressive(chance, 0.4)]
  return (lot) => {
    const regular = regularSamples(lot, 22 + 1.2 * fineness(), chance)
    const state = activity()
    const analyses = [
      compositeAnalysis(lot, regular, state, chance),
      ...regular.map(regularAnalysis),
      ...lateAnalysis(lot, state, chance),
    ]
    const samples = regular.map(sampleLine)
    return {
      text: sheetText(SHEETS, { ...lot, samples, analyses, tests: [], shipsAfter: 10 }, chance),
      controls: [],
    }
  }
}

function regularSamples(lot: FurtherLot, residue: number, chance: Chance): Regular[] {
  return Array.from({ length: REGULAR_SAMPLES }, (_, index) => ({
    id: `R${index + 1}`,
    day: lot.day - REGULAR_SAMPLES + 1 + index,
    moisture: 0.16 + 0.03 * chance.normal(),
    lossOnIgnition: 3.1 + 0.25 * chance.normal(),
    residue:
      lot.place === COARSE.place && index === COARSE.sample
        ? COARSE.residue
        : residue + 1.6 * chance.normal(),
  }))
}

function sampleLine({ id, day }: Regular): string {
  const { place, sampler: by } = SHEETS
  return flowMapping({ id, kind: 'grab', duty: 'regular', on: `${dateOfDay(day)}T13:00`, place, by })
}

function regularAnalysis({ id, day, moisture, lossOnIgnition, residue }: Regular): SheetAnalysis {
  return {
    sample: id,
    day: day + 1,
    results: {
      moisture: `${moisture.toFixed(2)} %`,
      'loss-on-ignition': `${lossOnIgnition.toFixed(2)} %`,
      'residue-45um': `${residue.toFixed(1)} %`,
    },
  }
}

/** The composite of equal parts: what a day's samples show, but for the scatter of testing. */
function compositeAnalysis(
  lot: FurtherLot,
  regular: readonly Regular[],
  state: number,
  chance: Chance,
): SheetAnalysis {
  const percent = (centre: number, between: number) => `${(centre + between * chance.normal()).toFixed(2)} %`
  const of = (key: 'moisture' | 'lossOnIgnition' | 'residue') => mean(regular, (each) => each[key]) ?? 0
  return {
    sample: 'C',
    day: lot.castDay + 7,
    results: {
      SiO2: percent(52.6, 0.7),
      Al2O3: percent(25.1, 0.5),
      Fe2O3: percent(6.8, 0.3),
      CaO: percent(5.2, 0.3),
      MgO: percent(1.4, 0.08),
      SO3: percent(0.62, 0.06),
      Na2O: percent(0.74, 0.04),
      K2O: percent(2.2, 0.08),
      moisture: percent(of('moisture'), 0.01),
      'loss-on-ignition': percent(of('lossOnIgnition'), 0.05),
      'residue-45um': `${(of('residue') + 0.3 * chance.normal()).toFixed(1)} %`,
      density: `${(2.31 + 0.012 * chance.normal()).toFixed(2)} g/cm3`,
      'autoclave-expansion': percent(0.02, 0.01),
      'water-requirement': `${(97 + chance.normal()).toFixed(0)} %`,
      'strength-activity-index': finished(83 + 2 * state, '7 d'),
      'air-entraining-demand': `${(1.4 + 0.05 * chance.normal()).toFixed(2)} g`,
    },
  }
}

/** What the laboratory reports after 28 d, once it is there. */
function lateAnalysis(lot: FurtherLot, state: number, chance: Chance): SheetAnalysis[] {
  if (lot.lastDay < lot.castDay + 28) return []
  const results = {
    'strength-activity-index': finished(89 + 2 * state + 0.5 * chance.normal(), '28 d'),
    'expansion-alkali-silica-relative': `${(63 + 4 * chance.normal()).toFixed(0)} %`,
    'drying-shrinkage-increase': `${(0.01 + 0.005 * chance.uniform()).toFixed(3)} percentage points`,
  }
  return [{ sample: 'C', day: lot.castDay + 28, results }]
}

/** An index in whole per cents as a report states it, with the test that it belongs to. */
function finished(index: number, age: string): string {
  return flowMapping({
    value: `${index.toFixed(0)} %`,
    condition: 'c311',
    age,
    method: 'ASTM C311',
    'standard-uncertainty': '2.5 percentage points',
  })
}

export const PELLMOOR: FurtherSource = {
  id: 'pellmoor-ash',
  prefix: 'PA',
  lots: 8,
  from: '2025-11-09',
  every: 14,
  bills: 94_000,
  issuer: { name: 'J. Starrow', function: 'quality manager' },
  issues: [
    [9, 'issued with 7-day results'],
    [30, '28-day results added'],
  ],
  producer: {
    path: 'producers/pellmoor.yaml',
    text: `name: Pellmoor Ash
address: [Station Approach, Pellmoor]
plants:
  station: { name: Pellmoor station }
signatories:
  - { name: J. Starrow, function: quality manager, independent-of-production: yes }
`,
  },
  source: {
    path: 'sources/pellmoor-ash.yaml',
    text: `name: Pellmoor fly ash
producer: pellmoor
plant: station
kind: coal-fly-ash
class: F
trade-name: Pellmoor F
unit: boiler unit 4
coal-sources: [Lower Pell seam]
additives: none
safety-data-sheet: SDS PM-1, revision 1
lot-number-pattern: PA-YYYY-###
sampling-plan:
  - { properties: [moisture, loss-on-ignition, residue-45um], every: 360 t, or-every: 1 d, kind: grab }
  - { properties: [density, oxide-sum, strength-activity-index], every: 2900 t, or-every: 31 d, kind: composite }
criteria:
  - { set: c618-12a }
  - { set: c618-12a-options, requested: [expansion-alkali-silica, drying-shrinkage, air-entraining-uniformity] }
  - { set: c618-23e1 }
`,
  },
  series,
}
