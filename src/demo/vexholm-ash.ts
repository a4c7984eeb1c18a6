/**
 * Vexholm fly ash, invented: each lot resembles the one before it (correlation 0.4), and somewhere eight lots in
 * a row lie on one side of the mean. Nothing caused it: it is the chance of such a series, planted by its seed.
 */
import { type Bench, castControl, testMortarLines } from './bench.ts'
import { ashAnalysis } from './ash-analysis.ts'
import { autoregressive, type Chance, chanceOf } from './chance.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import { type Sheets, sheetText } from './sheet.ts'

const BENCH: Bench = {
  laboratory: 'vexholm-works',
  condition: 'c311',
  mark: ['VX', '23'],
  units: 'SI',
  strengthMPa: { 7: 30.9, 28: 39 },
  ohmMetre: null,
  flow: 109,
  controlWater: 242,
  cement: { lot: 'VC-1', type: 'portland', 'Na2O-equivalent': '0.64 %' },
}

const SHEETS: Sheets = {
  units: 'SI',
  quantityT: [600, 900],
  silos: ['V1', 'V2'],
  place: 'silo discharge',
  sampler: 'K. Ullscarf',
  laboratory: 'vexholm-works',
  consignees: ['Northmere Block'],
  projects: ['Mere Causeway'],
  shipmentT: [23, 3],
}

/** Correlation of a lot with the one before it. */
export const VEXHOLM_CORRELATION = 0.4
/** Indices of the lots in the order of sampling: mean, and standard deviation in points. */
const INDEX = { 7: [82, 1.9], 28: [88.5, 1.9] } as const
/** Found by trying: of 30 lots eight in a row lie on one side of their mean, and their correlation is 0.40. */
const RUN_SEED = 236

function series(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const next = autoregressive(chanceOf(RUN_SEED), VEXHOLM_CORRELATION)
  return (lot) => {
    const state = next()
    const index = { 7: INDEX[7][0] + INDEX[7][1] * state, 28: INDEX[28][0] + INDEX[28][1] * state }
    const control = castControl(BENCH, lot.castDay, lot.lastDay, chance)
    const tests = testMortarLines(
      BENCH,
      // Written loads come to the index, so that the correlation is that of the results.
      { control, index, planted: index, water: 233 },
      lot.lastDay,
      chance,
    )
    const analyses = [{ sample: 'C', day: lot.castDay - 1, results: ashAnalysis(17, chance) }]
    return {
      text: sheetText(SHEETS, { ...lot, analyses, tests, shipsAfter: 33 }, chance),
      controls: [control],
    }
  }
}

export const VEXHOLM: FurtherSource = {
  id: 'vexholm-ash',
  prefix: 'VX',
  lots: 30,
  from: '2025-03-03',
  every: 12,
  bills: 99_000,
  issuer: { name: 'J. Sorrelwick', function: 'quality manager' },
  // It waits for 28 d before it certifies and ships.
  issues: [[30, 'issued with 28-day results']],
  producer: {
    path: 'producers/vexholm.yaml',
    text: `name: Vexholm Ash
address: [Boiler Yard, Vexholm]
plants:
  works: { name: Vexholm works }
signatories:
  - { name: J. Sorrelwick, function: quality manager, independent-of-production: yes }
`,
  },
  laboratory: {
    path: 'laboratories/vexholm-works.yaml',
    text: `name: Vexholm works laboratory
address: [Boiler Yard, Vexholm]
standing: in-house
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0570, from: 2025-01-01, to: 2028-12-31, conditions: [c311], scope: [SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, moisture, loss-on-ignition, residue-45um, density, autoclave-expansion, water-requirement, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent] }
moulds: [ { side: 50 mm, from: 2025-01-01 } ]
methods:
  loss-on-ignition: [ { method: ASTM C311 } ]
  residue-45um: [ { method: ASTM C430 } ]
  density: [ { method: ASTM C188 } ]
  water-requirement: [ { method: ASTM C311 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C311 } ]
`,
  },
  source: {
    path: 'sources/vexholm-ash.yaml',
    text: `name: Vexholm fly ash
producer: vexholm
plant: works
kind: coal-fly-ash
class: F
lot-number-pattern: VX-YYYY-###
criteria:
  - { set: c618-12a }
  - { set: source-variability }
phases:
  - { from: 2025-03-01, to: 2025-10-31, title: first two thirds of the record }
`,
  },
  series,
}
