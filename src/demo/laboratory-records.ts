/** The laboratories of the scenario: what they are accredited for and how well they repeat. */
import { flowMapping } from './flow-mapping.ts'

const METHODS = `methods:
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
  water-requirement: [ { method: ASTM C311 } ]
  compressive-strength: [ { method: ASTM C109 } ]
  strength-activity-index: [ { method: ASTM C311 } ]
`
const ACCREDITED = [
  ...['SiO2', 'Al2O3', 'Fe2O3', 'CaO', 'MgO', 'SO3', 'Na2O', 'K2O'],
  ...['moisture', 'loss-on-ignition', 'residue-45um', 'density', 'autoclave-expansion', 'water-requirement'],
  ...['compressive-strength', 'strength-activity-index', 'oxide-sum', 'alkali-equivalent'],
]

function accreditation(members: { number: string; from: string; to?: string }): string {
  return flowMapping({
    body: 'Varrow Accreditation Board',
    ...members,
    conditions: '[c311]',
    scope: `[${ACCREDITED.join(', ')}]`,
  })
}

/** A stated standard deviation or coefficient of variation of a 28 d index. */
function repeatability(
  property: string,
  condition: string,
  scatter: { 'standard-deviation': string } | { 'coefficient-of-variation': string },
): string {
  return flowMapping({
    property,
    condition,
    age: '28 d',
    ...scatter,
    from: '2023-01-01',
    basis: '"repeated batches of one ash, 2022"',
  })
}

const activity = (condition: string, points: string) =>
  repeatability('strength-activity-index', condition, { 'standard-deviation': `${points} percentage points` })

/** Records of the laboratories, by id. */
export const LABORATORIES: Readonly<Record<string, string>> = {
  'north-quay': `name: North Quay laboratory
address: [7 North Quay, Varrow]
standing: independent
accreditation:
  - ${accreditation({ number: 'VAB 0412', from: '2023-01-01', to: '2027-12-31' })}
# Its machine reads pounds-force or kilonewtons as the purchaser asks; the moulds are of 50 mm either way.
moulds: [ { side: 50 mm, from: 2022-01-01 } ]
${METHODS}repeatability:
  - ${activity('c311', '2.8')}
  - ${activity('modified-50c', '2.6')}
  - ${repeatability('resistivity-index', 'modified-50c', { 'coefficient-of-variation': '6.0 %' })}
proficiency:
  - { round: Board round 31, date: 2024-06-14, property: residue-45um, z: 0.4 }
  - { round: Board round 32, date: 2025-06-13, property: loss-on-ignition, z: -1.1 }
`,
  'skarnmere-works': `name: Skarnmere works laboratory
address: [Generating Works, Mere Road, Skarnmere]
standing: in-house
# The accreditation ended on 30 September 2025 and was not renewed: later results are "not accredited".
accreditation:
  - ${accreditation({ number: 'VAB 0377', from: '2022-10-01', to: '2025-09-30' })}
${METHODS}repeatability:
  - ${activity('c311', '3.1')}
proficiency:
  - { round: Board round 31, date: 2024-06-14, property: residue-45um, z: 1.7 }
`,
  'roads-authority': `name: Varrow Vale Roads Authority, materials laboratory
address: [Highways House, Varrow]
standing: agency
accreditation:
  - ${accreditation({ number: 'VAB 0101', from: '2020-01-01' })}
${METHODS}`,
}
