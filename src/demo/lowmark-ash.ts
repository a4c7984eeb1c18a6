/**
 * Lowmark fly ash, invented: a works whose own laboratory writes US units throughout, cubes of 2 in included.
 * Values are of plausible size and no data. Planted, each in one lot: an index of 77 % at 7 d with 73 % at
 * 28 d, which complies since either age is enough; one of 72 % at 7 d, shipped on condition, with 73 % at
 * 28 d, which does not. Four lots have duplicates, from which the error of testing is estimated. In one lot a
 * second mortar with more ash stands beside the same control: a control holds no ash.
 */
import { type Bench, type CastControl, castControl, type TestMortar, testMortarLines } from './bench.ts'
import { autoregressive, type Chance, chanceOf } from './chance.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import { type SheetAnalysis, type Sheets, sheetText } from './sheet.ts'

const BENCH: Bench = {
  laboratory: 'lowmark-works',
  condition: 'c311',
  mark: ['LM', 'US'],
  units: 'US',
  strengthMPa: { 7: 30.8, 28: 38.9 },
  ohmMetre: 41,
  flow: 109,
  controlWater: 242,
  cement: { lot: 'LC-2', type: 'portland', 'Na2O-equivalent': '0.71 %' },
}

const SHEETS: Sheets = {
  units: 'US',
  quantityT: [700, 1000],
  silos: ['East', 'West'],
  place: 'truck loading spout',
  sampler: 'V. Draymoor',
  laboratory: 'lowmark-works',
  consignees: ['Basin Precast', 'Lowmark Readymix'],
  projects: ['Route 9 overlay', 'Lowmark Lift Bridge'],
  shipmentT: [22, 3],
}

/** Indices that the written loads of a lot come to, by its place. */
export const EITHER_AGE = {
  complies: { place: 4, index: { 7: 77, 28: 73 } },
  fails: { place: 7, index: { 7: 72, 28: 73 } },
} as const
/** Places of the lots tested in duplicate. */
export const DUPLICATES: readonly number[] = [2, 3, 5, 8]
/** The lot with a mortar of 35 % ash too, its true indices, and a chance that moves no other reading. */
const MORE_ASH = { place: 9, condition: 'modified-35-23c', index: { 7: 66, 28: 78 }, seed: 35 } as const
/** Index at 7 d and 28 d: mean and standard deviation of true lot values, in points. */
const INDEX = { 7: [82, 1.8], 28: [89, 1.8] } as const

function series(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const [activity, residue] = [autoregressive(chance, 0.4), autoregressive(chance, 0.4)]
  return (lot) => {
    const control = castControl(BENCH, lot.castDay, lot.lastDay, chance)
    const state = activity()
    const mortar: TestMortar = {
      control,
      index: { 7: INDEX[7][0] + INDEX[7][1] * state, 28: INDEX[28][0] + INDEX[28][1] * state },
      ratio: 1.28 + 0.06 * chance.normal(),
      water: 232,
      ...plantedAt(lot.place),
    }
    const again = DUPLICATES.includes(lot.place)
    const mortars = again ? [mortar, { ...mortar, minutesLater: 45 }] : [mortar]
    const tests = [
      ...mortars.flatMap((each) => testMortarLines(BENCH, each, lot.lastDay, chance)),
      ...(lot.place === MORE_ASH.place ? moreAsh(lot, control) : []),
    ]
    const analyses = analysesOf(lot, 18 + 1.5 * residue(), chance)
    return {
      text: sheetText(SHEETS, { ...lot, analyses, tests, shipsAfter: 10 }, chance),
      controls: [control],
    }
  }
}

/** The mortar with more ash, beside the control of the other. */
function moreAsh({ lastDay }: FurtherLot, control: CastControl): string[] {
  const { condition, index, seed } = MORE_ASH
  const mortar = { control, index, ratio: 1.7, water: 226, minutesLater: 45 }
  return testMortarLines({ ...BENCH, condition }, mortar, lastDay, chanceOf(seed))
}

function plantedAt(place: number): Pick<TestMortar, 'planted'> {
  const found = Object.values(EITHER_AGE).find((each) => each.place === place)
  return found === undefined ? {} : { planted: found.index }
}

function analysesOf(lot: FurtherLot, residue: number, chance: Chance): SheetAnalysis[] {
  const day = lot.castDay - 1
  const percent = (mean: number, between: number) => `${(mean + between * chance.normal()).toFixed(2)} %`
  const fineness = () => `${(residue + 0.5 * chance.normal()).toFixed(1)} %`
  const first = {
    SiO2: percent(54.2, 0.8),
    Al2O3: percent(23.8, 0.5),
    Fe2O3: percent(7.4, 0.3),
    CaO: percent(6.1, 0.4),
    MgO: percent(1.5, 0.08),
    SO3: percent(0.55, 0.06),
    Na2O: percent(0.82, 0.04),
    K2O: percent(1.9, 0.07),
    moisture: percent(0.14, 0.03),
    'loss-on-ignition': percent(2.1, 0.2),
    'residue-45um': fineness(),
    density: `${(2.36 + 0.015 * chance.normal()).toFixed(2)} g/cm3`,
    'autoclave-expansion': percent(0.03, 0.01),
    'drying-shrinkage-increase': '0.01 percentage points',
  }
  const again = DUPLICATES.includes(lot.place)
    ? [{ sample: 'C', day: day + 1, results: { 'residue-45um': fineness() } }]
    : []
  return [{ sample: 'C', day, results: first }, ...again]
}

export const LOWMARK: FurtherSource = {
  id: 'lowmark-ash',
  prefix: 'LA',
  lots: 10,
  from: '2025-10-20',
  every: 14,
  bills: 93_000,
  issuer: { name: 'D. Quillbeck', function: 'technical director' },
  issues: [
    [9, 'issued with 7-day results'],
    [30, '28-day results added'],
  ],
  producer: {
    path: 'producers/lowmark.yaml',
    text: `name: Lowmark Ash Works
address: [200 Levee Road, Lowmark]
plants:
  station: { name: Lowmark station }
signatories:
  - { name: D. Quillbeck, function: technical director, independent-of-production: yes }
`,
  },
  laboratory: {
    path: 'laboratories/lowmark-works.yaml',
    text: `name: Lowmark works laboratory
address: [200 Levee Road, Lowmark]
standing: in-house
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0547, from: 2025-01-01, to: 2028-12-31, conditions: [c311], scope: [SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, moisture, loss-on-ignition, residue-45um, density, autoclave-expansion, drying-shrinkage-increase, water-requirement, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent] }
moulds: [ { side: 2 in, from: 2025-01-01 } ]
methods:
  SiO2: [ { method: ASTM C311 } ]
  Al2O3: [ { method: ASTM C311 } ]
  Fe2O3: [ { method: ASTM C311 } ]
  CaO: [ { method: ASTM C311 } ]
  MgO: [ { method: ASTM C311 } ]
  SO3: [ { method: ASTM C311 } ]
  Na2O: [ { method: ASTM C311 } ]
  K2O: [ { method: ASTM C311 } ]
  moisture: [ { method: ASTM C311 } ]
  loss-on-ignition: [ { method: ASTM C311 } ]
  residue-45um: [ { method: ASTM C430 } ]
  density: [ { method: ASTM C188 } ]
  autoclave-expansion: [ { method: ASTM C151 } ]
  drying-shrinkage-increase: [ { method: ASTM C157 } ]
  water-requirement: [ { method: ASTM C311 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C311 } ]
  bulk-resistivity: [ { method: own procedure LM-4 } ]
  resistivity-index: [ { method: own procedure LM-4 } ]
`,
  },
  source: {
    path: 'sources/lowmark-ash.yaml',
    text: `name: Lowmark fly ash
producer: lowmark
plant: station
kind: coal-fly-ash
class: F
trade-name: Lowmark F
unit: boiler unit 1
coal-sources: [Levee seam]
additives: none
safety-data-sheet: SDS LM-1, revision 1
lot-number-pattern: LA-YYYY-###
approvals:
  - { from: 2025-10-01, by: Varrow Vale Roads Authority, scope: "class F, structural concrete" }
facts: { incinerator-ash: no, coal-only: yes }
documents:
  - { kind: certification-statement, title: "statement LM-F 1", from: 2025-10-01 }
sampling-plan:
  - { properties: [density, oxide-sum, strength-activity-index], every: 2200 short ton, or-every: 20 d, kind: composite }
criteria:
  - { set: varrow-roads }
  - { set: c618-12a }
  - { set: source-variability }
`,
  },
  series,
}
