/**
 * Ironholm slag cement, invented: ground granulated slag of grade 100, tested beside a cement of its own works.
 * Values are of plausible size and no data. Ten lots, three weeks apart: from the fifth on there is a mean of
 * five; the seventh fails the floor for any single sample while the mean of five still passes; the last waits
 * for 28 d.
 */
import { type Bench, castControl, testMortarLines } from './bench.ts'
import { autoregressive, type Chance } from './chance.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import { type Sheets, sheetText } from './sheet.ts'

const BENCH: Bench = {
  laboratory: 'ironholm-works',
  condition: 'c989',
  mark: ['IH', 'SL'],
  units: 'SI',
  strengthMPa: { 7: 28.6, 28: 39.8 },
  ohmMetre: null,
  flow: 110,
  controlWater: null,
  cement: { lot: 'RC-4', type: 'portland', 'Na2O-equivalent': '0.74 %' },
}

const SHEETS: Sheets = {
  units: 'SI',
  quantityT: [1400, 2100],
  silos: ['G1', 'G2'],
  place: 'mill discharge to silo',
  sampler: 'O. Lindqvarn',
  laboratory: 'ironholm-works',
  consignees: ['Quellan Mix', 'Northmere Block'],
  projects: ['Varrow Bridge', 'Basin Weir'],
  shipmentT: [24, 4],
}

/** Place of the lot whose index falls below the single floor of 90 %, and what its loads come to. */
const LOW = { place: 6, index28: 87.4 }
/** Index of a plain lot at 7 d and 28 d: mean, and standard deviation of true lot values, in points. */
const INDEX = { 7: [76, 2.5], 28: [103, 2] } as const
/** Oxides in per cent of a plain lot, each with the standard deviation of true lot values. */
const OXIDES: Readonly<Record<string, readonly [number, number]>> = {
  SiO2: [35.2, 0.5],
  Al2O3: [11.4, 0.3],
  Fe2O3: [0.6, 0.08],
  CaO: [40.6, 0.6],
  MgO: [8.2, 0.4],
  SO3: [2.1, 0.2],
  Na2O: [0.28, 0.02],
  K2O: [0.42, 0.03],
}

function series(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const drift = autoregressive(chance, 0.4)
  return (lot) => {
    const control = castControl(BENCH, lot.castDay, lot.lastDay, chance)
    const index = { 7: INDEX[7][0] + INDEX[7][1] * drift(), 28: INDEX[28][0] + INDEX[28][1] * drift() }
    const planted = lot.place === LOW.place ? { planted: { 28: LOW.index28 } } : {}
    const tests = testMortarLines(BENCH, { control, index, ...planted }, lot.lastDay, chance)
    const analyses = [{ sample: 'C', day: lot.castDay - 1, results: analysis(chance) }]
    return {
      text: sheetText(SHEETS, { ...lot, analyses, tests, shipsAfter: 10 }, chance),
      controls: [control],
    }
  }
}

function analysis(chance: Chance): Record<string, string> {
  const oxides = Object.entries(OXIDES).map(([key, [mean, between]]) => [
    key,
    `${(mean + between * chance.normal()).toFixed(2)} %`,
  ])
  return {
    ...Object.fromEntries(oxides),
    sulfide: `${(0.92 + 0.08 * chance.normal()).toFixed(2)} %`,
    'residue-45um': `${(2.4 + 0.5 * chance.normal()).toFixed(1)} %`,
    'specific-surface': `${Math.round(438 + 9 * chance.normal())} m2/kg`,
    density: `${(2.91 + 0.01 * chance.normal()).toFixed(2)} g/cm3`,
  }
}

export const IRONHOLM: FurtherSource = {
  id: 'ironholm-slag',
  prefix: 'IS',
  lots: 10,
  from: '2025-09-15',
  every: 21,
  bills: 91_000,
  issuer: { name: 'H. Oylward', function: 'quality manager' },
  issues: [
    [9, 'issued with 7-day results'],
    [30, '28-day results added'],
  ],
  producer: {
    path: 'producers/ironholm.yaml',
    text: `name: Ironholm Slag Cement
address: [Granulation Works, Ladle Lane, Ironholm]
plants:
  mill-1: { name: grinding mill 1 }
signatories:
  - { name: H. Oylward, function: quality manager, independent-of-production: yes }
`,
  },
  laboratory: {
    path: 'laboratories/ironholm-works.yaml',
    text: `name: Ironholm works laboratory
address: [Granulation Works, Ladle Lane, Ironholm]
standing: in-house
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0521, from: 2024-01-01, to: 2027-12-31, conditions: [c989], scope: [SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, sulfide, residue-45um, density, specific-surface, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent] }
methods:
  SiO2: [ { method: ASTM C114 } ]
  Al2O3: [ { method: ASTM C114 } ]
  Fe2O3: [ { method: ASTM C114 } ]
  CaO: [ { method: ASTM C114 } ]
  MgO: [ { method: ASTM C114 } ]
  SO3: [ { method: ASTM C114 } ]
  Na2O: [ { method: ASTM C114 } ]
  K2O: [ { method: ASTM C114 } ]
  sulfide: [ { method: ASTM C114 } ]
  residue-45um: [ { method: ASTM C430 } ]
  density: [ { method: ASTM C188 } ]
  specific-surface: [ { method: ASTM C204 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C989 } ]
`,
  },
  source: {
    path: 'sources/ironholm-slag.yaml',
    text: `name: Ironholm slag cement
producer: ironholm
plant: mill-1
kind: slag
class: "100"
trade-name: Ironholm 100
unit: grinding mill 1
additives: none
safety-data-sheet: SDS IH-1, revision 2
lot-number-pattern: IS-YYYY-###
criteria:
  - { set: c989-18 }
  - { set: source-variability }
`,
  },
  series,
}
