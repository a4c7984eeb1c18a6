/**
 * Ferrowick silica fume, invented: its index is taken at 7 d after curing at 65 °C, so that a certificate is
 * complete after a week. Values are of plausible size and no data. The eighth lot holds far more oversize than
 * those before it: within the limit of 10 %, yet too far from the average.
 */
import { type Bench, castControl, testMortarLines } from './bench.ts'
import { autoregressive, type Chance } from './chance.ts'
import type { FurtherLot, FurtherSource, WrittenLot } from './further-source.ts'
import { type Sheets, sheetText } from './sheet.ts'

const BENCH: Bench = {
  laboratory: 'sallow-street',
  condition: 'c1240-65c',
  mark: ['SS', '65'],
  units: 'SI',
  strengthMPa: { 7: 41.5 },
  ohmMetre: null,
  flow: 108,
  controlWater: 242,
  cement: { lot: 'TC-11', type: 'portland', 'Na2O-equivalent': '0.66 %' },
}

const SHEETS: Sheets = {
  units: 'SI',
  quantityT: [90, 140],
  silos: ['F1', 'F2'],
  place: 'bag filter hopper',
  sampler: 'C. Rowleaf',
  laboratory: 'sallow-street',
  consignees: ['Basin Precast', 'Harrow Fell Readymix'],
  projects: ['Tarn Dam repair', 'Mere Causeway'],
  shipmentT: [18, 3],
}

/** The lot with oversize out of line, in per cent. */
const OVERSIZE = { place: 7, residue: '9.1 %' }
/** Index at 7 d: mean and standard deviation of true lot values, in points. */
const INDEX = [118, 3] as const

function series(chance: Chance): (lot: FurtherLot) => WrittenLot {
  const [activity, oversize] = [autoregressive(chance, 0.4), autoregressive(chance, 0.4)]
  return (lot) => {
    const control = castControl(BENCH, lot.castDay, lot.lastDay, chance)
    const index = { 7: INDEX[0] + INDEX[1] * activity() }
    const tests = testMortarLines(BENCH, { control, index, water: 242 }, lot.lastDay, chance)
    const residue = `${(3 + 0.6 * oversize()).toFixed(1)} %`
    const analyses = [
      {
        sample: 'C',
        day: lot.castDay - 1,
        results: {
          ...analysis(chance),
          'residue-45um': lot.place === OVERSIZE.place ? OVERSIZE.residue : residue,
        },
      },
    ]
    return {
      text: sheetText(SHEETS, { ...lot, analyses, tests, shipsAfter: 9 }, chance),
      controls: [control],
    }
  }
}

function analysis(chance: Chance): Record<string, string> {
  const percent = (mean: number, between: number) => `${(mean + between * chance.normal()).toFixed(2)} %`
  return {
    SiO2: percent(93.4, 0.7),
    Al2O3: percent(0.55, 0.05),
    Fe2O3: percent(1.1, 0.12),
    CaO: percent(0.5, 0.05),
    MgO: percent(0.7, 0.06),
    SO3: percent(0.3, 0.04),
    Na2O: percent(0.21, 0.02),
    K2O: percent(0.86, 0.06),
    moisture: percent(0.55, 0.08),
    'loss-on-ignition': percent(2.3, 0.25),
    'specific-surface': `${(20.4 + 0.7 * chance.normal()).toFixed(1)} m2/g`,
    density: `${(2.24 + 0.01 * chance.normal()).toFixed(2)} g/cm3`,
  }
}

export const FERROWICK: FurtherSource = {
  id: 'ferrowick-fume',
  prefix: 'FF',
  lots: 10,
  from: '2025-10-27',
  every: 14,
  bills: 92_000,
  issuer: { name: 'S. Mallendar', function: 'quality manager' },
  issues: [[9, '7-day results']],
  producer: {
    path: 'producers/ferrowick.yaml',
    text: `name: Ferrowick Alloys
address: [Furnace Road, Ferrowick]
plants:
  furnace-2: { name: "furnace 2, filter house" }
signatories:
  - { name: S. Mallendar, function: quality manager, independent-of-production: yes }
`,
  },
  laboratory: {
    path: 'laboratories/sallow-street.yaml',
    text: `name: Sallow Street laboratory
address: [31 Sallow Street, Varrow]
standing: independent
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0533, from: 2024-05-01, to: 2028-04-30, conditions: [c1240-65c, c311], scope: [SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, moisture, loss-on-ignition, residue-45um, density, specific-surface, autoclave-expansion, water-requirement, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent] }
methods:
  SiO2: [ { method: ASTM C114 } ]
  Al2O3: [ { method: ASTM C114 } ]
  Fe2O3: [ { method: ASTM C114 } ]
  CaO: [ { method: ASTM C114 } ]
  MgO: [ { method: ASTM C114 } ]
  SO3: [ { method: ASTM C114 } ]
  Na2O: [ { method: ASTM C114 } ]
  K2O: [ { method: ASTM C114 } ]
  moisture: [ { method: ASTM C311 } ]
  loss-on-ignition: [ { method: ASTM C311 } ]
  residue-45um: [ { method: ASTM C430 } ]
  density: [ { method: ASTM C188 } ]
  specific-surface: [ { method: "ASTM C1069" } ]
  autoclave-expansion: [ { method: ASTM C151 } ]
  water-requirement: [ { method: ASTM C311 } ]
  drying-shrinkage-increase: [ { method: ASTM C157 } ]
  expansion-alkali-silica-relative: [ { method: ASTM C441 } ]
  air-entraining-demand: [ { method: ASTM C311 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C1240 } ]
`,
  },
  source: {
    path: 'sources/ferrowick-fume.yaml',
    text: `name: Ferrowick silica fume
producer: ferrowick
plant: furnace-2
kind: silica-fume
trade-name: Ferrowick SF
unit: furnace 2, filter house
additives: none
safety-data-sheet: SDS FW-3, revision 1
lot-number-pattern: FF-YYYY-###
criteria:
  - { set: c1240-2004 }
`,
  },
  series,
}
