/**
 * Millrace Lane laboratory, invented: it tests three sources of ash beside one control batch a casting day. Its
 * control cement changed twice. The first change moves the indices of all three sources together, and nobody
 * made batches with both cements; at the second, four pairs of batches were made side by side.
 */
import { type Bench, type CastControl, castControl } from './bench.ts'
import { dateOfDay, dayOf, nextWednesday } from './calendar.ts'
import { chanceOf } from './chance.ts'
import type { DemoFile } from './site-records.ts'

/** Days on which all three sources sample, so that their mortars share the day's control. */
export const MILLRACE_SAMPLING = { from: '2025-04-14', every: 18, lots: 20 } as const

/** Place of the first lot tested beside each cement, and the control's strength with it over that with the first. */
const CEMENTS = [
  { lot: 'MC-1', from: 0, strength: 1 },
  { lot: 'MC-2', from: 7, strength: 1.05 },
  { lot: 'MC-3', from: 14, strength: 1.05 },
] as const
/** Places of the lots on whose casting days a second batch with the later cement was made. */
const BRIDGED = { from: CEMENTS[1], to: CEMENTS[2], places: [10, 11, 12, 13] } as const
/** Of the control with the first cement, MPa. */
const STRENGTH_MPA = { 7: 30.6, 28: 38.7 } as const
/** The day's control is the same for whoever writes it. */
const SEED = 311_000

type Cement = (typeof CEMENTS)[number]

function cementAt(place: number): Cement {
  return CEMENTS.findLast(({ from }) => from <= place) ?? CEMENTS[0]
}

/** The bench with the cement of a place. */
export function millraceBench(place: number): Bench {
  return benchWith(cementAt(place), 'AL')
}

function benchWith({ lot, strength }: Cement, behind: string): Bench {
  return {
    laboratory: 'millrace-lane',
    condition: 'c311',
    mark: ['ML', behind],
    units: 'SI',
    strengthMPa: { 7: STRENGTH_MPA[7] * strength, 28: STRENGTH_MPA[28] * strength },
    ohmMetre: null,
    flow: 108,
    controlWater: 242,
    cement: { lot, type: 'portland', 'Na2O-equivalent': '0.66 %' },
  }
}

/** By how much an index falls since the control of a place is stronger than the first cement's was. */
export function cementFactor(place: number): number {
  return 1 / cementAt(place).strength
}

/** The controls of a casting day; on some days one with the next cement stands beside it. */
export function millraceControls(
  place: number,
  castDay: number,
  lastDay: number,
): readonly [CastControl, ...CastControl[]] {
  const control = castControl(millraceBench(place), castDay, lastDay, chanceOf(SEED + castDay))
  if (!BRIDGED.places.some((each) => each === place)) return [control]
  return [control, castControl(benchWith(BRIDGED.to, 'NC'), castDay, lastDay, chanceOf(-SEED - castDay))]
}

function pairLine(place: number): string {
  const castDay = nextWednesday(dayOf(MILLRACE_SAMPLING.from) + place * MILLRACE_SAMPLING.every + 2)
  const [year, month, day] = dateOfDay(castDay).split('-')
  return `      - { earlier: ML-${year}-${month}${day}-AL, later: ML-${year}-${month}${day}-NC }`
}

export const MILLRACE: DemoFile = {
  path: 'laboratories/millrace-lane.yaml',
  text: `name: Millrace Lane laboratory
address: [4 Millrace Lane, Varrow]
standing: independent
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0561, from: 2023-06-01, to: 2028-05-31, conditions: [c311], scope: [SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, moisture, loss-on-ignition, residue-45um, density, autoclave-expansion, water-requirement, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent] }
moulds: [ { side: 50 mm, from: 2023-06-01 } ]
methods:
${['SiO2', 'Al2O3', 'Fe2O3', 'CaO', 'MgO', 'SO3', 'Na2O', 'K2O', 'moisture', 'loss-on-ignition'].map((key) => `  ${key}: [ { method: ASTM C311 } ]`).join('\n')}
  residue-45um: [ { method: ASTM C430 } ]
  density: [ { method: ASTM C188 } ]
  autoclave-expansion: [ { method: ASTM C151 } ]
  water-requirement: [ { method: ASTM C311 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C311 } ]
proficiency:
  - { round: Board round 32, date: 2025-06-13, property: residue-45um, z: -3.2, cause: "sieve worn, replaced on 20 June 2025", closed: 2025-07-04 }
  - { round: Board round 33, date: 2025-12-12, property: residue-45um, z: 0.6 }
equipment:
  - { mark: ML-P1, kind: compression machine, properties: [compressive-strength], resolution: 0.1 kN, every: 365 d, verified: [2023-05-24, 2024-05-21, 2025-05-19] }
  - { mark: ML-S4, kind: wet-washing sieve, properties: [residue-45um], resolution: 0.1 %, every: 180 d, verified: [2023-12-11, 2024-06-06, 2024-12-02, 2025-06-20, 2025-12-15] }
closed-days:
  - { from: 2025-12-24, to: 2025-12-26 }
  - { from: 2026-01-01, to: 2026-01-01 }
# Nothing joins MC-1 and MC-2: no batch was made with both.
cement-bridges:
  - from: ${BRIDGED.from.lot}
    to: ${BRIDGED.to.lot}
    pairs:
${BRIDGED.places.map(pairLine).join('\n')}
`,
}
