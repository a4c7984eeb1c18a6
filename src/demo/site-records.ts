/** The records of the scenario that are not lots or control batches, as text. */
import { AS_OF, type DemoSource, SOURCES } from './scenario.ts'

export interface DemoFile {
  readonly path: string
  readonly text: string
}

const SITE = (asOf: string) => `title: Varrow Vale register of pozzolans
address: https://example.org/pozzolans/
as-of: ${asOf}
units: SI
# The first one governs; a source may say otherwise.
criteria: [c618-12a, c618-19, strength-or-resistivity, modified-strength, resistivity-option]
grace: 7 d
# Of consignee, project, seals, verification, persons, findings: what may reach the site.
publish: [verification, persons, findings]
drafts: no
notice: Invented example data
`

const PRODUCERS: Readonly<Record<string, string>> = {
  skarnmere: `name: Skarnmere Ash
address: [Generating Works, Mere Road, Skarnmere]
plants:
  works: { name: "Skarnmere works, unit 2" }
  yard: { name: Skarnmere reclaim yard }
signatories:
  - { name: T. Vesterby, function: head of quality, independent-of-production: yes }
`,
  quellan: `name: Quellan Basin Ash
address: [1 Terminal Way, Quellan Basin]
plants:
  terminal: { name: Quellan terminal }
signatories:
  - { name: R. Amadi, function: laboratory director, independent-of-production: yes }
`,
  'tarn-hollow': `name: Tarn Hollow Pozzolans
address: [Mill Lane, Tarn Hollow]
plants:
  mill-2: { name: mill 2 }
  mill-3: { name: mill 3 }
signatories:
  - { name: M. Okafor, function: quality manager, independent-of-production: yes }
`,
}

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
const SCOPE =
  '[SiO2, Al2O3, Fe2O3, CaO, MgO, SO3, Na2O, K2O, moisture, loss-on-ignition, residue-45um, density, autoclave-expansion, water-requirement, compressive-strength, strength-activity-index, oxide-sum, alkali-equivalent]'

const LABORATORIES: Readonly<Record<string, string>> = {
  'north-quay': `name: North Quay laboratory
address: [7 North Quay, Varrow]
standing: independent
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0412, from: 2023-01-01, to: 2027-12-31, conditions: [c311], scope: ${SCOPE} }
${METHODS}repeatability:
  - { property: strength-activity-index, condition: c311, age: 28 d, standard-deviation: 2.8 percentage points, from: 2023-01-01, basis: "repeated batches of one ash, 2022" }
  - { property: strength-activity-index, condition: modified-50c, age: 28 d, standard-deviation: 2.6 percentage points, from: 2023-01-01, basis: "repeated batches of one ash, 2022" }
  - { property: resistivity-index, condition: modified-50c, age: 28 d, coefficient-of-variation: 6.0 %, from: 2023-01-01, basis: "repeated batches of one ash, 2022" }
proficiency:
  - { round: Board round 31, date: 2024-06-14, property: residue-45um, z: 0.4 }
  - { round: Board round 32, date: 2025-06-13, property: loss-on-ignition, z: -1.1 }
`,
  'skarnmere-works': `name: Skarnmere works laboratory
address: [Generating Works, Mere Road, Skarnmere]
standing: in-house
# The accreditation ended on 30 September 2025 and was not renewed: later results are "not accredited".
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0377, from: 2022-10-01, to: 2025-09-30, conditions: [c311], scope: ${SCOPE} }
${METHODS}repeatability:
  - { property: strength-activity-index, condition: c311, age: 28 d, standard-deviation: 3.1 percentage points, from: 2023-01-01, basis: "repeated batches of one ash, 2022" }
proficiency:
  - { round: Board round 31, date: 2024-06-14, property: residue-45um, z: 1.7 }
`,
  'roads-authority': `name: Varrow Vale Roads Authority, materials laboratory
address: [Highways House, Varrow]
standing: agency
accreditation:
  - { body: Varrow Accreditation Board, number: VAB 0101, from: 2020-01-01, conditions: [c311], scope: ${SCOPE} }
${METHODS}`,
}

const SOURCE_HEADS: Readonly<Record<string, string>> = {
  'skarnmere-ash': `name: Skarnmere fly ash
producer: skarnmere
plant: works
kind: coal-fly-ash
class: F
trade-name: Skarnmere F
unit: boiler unit 2
coal-sources: [Upper Fell seam]
additives: none
safety-data-sheet: SDS SK-1, revision 4
`,
  'quellan-ash': `name: Quellan Basin fly ash
producer: quellan
plant: terminal
marketing-entity: Basin Cementitious Marketing
kind: coal-fly-ash
class: C
trade-name: Basin C
unit: boiler units 1 and 3
coal-sources: [Basin open pit, Low Ridge pit]
additives: none
safety-data-sheet: SDS QB-2, revision 1
`,
  'tarn-hollow-tuff': `name: Tarn Hollow tuff
producer: tarn-hollow
plant: mill-2
kind: raw-natural-pozzolan
class: N
trade-name: Tarn Hollow N
deposit: Tarn Hollow quarry, bench 4
additives: "grinding aid, 0.02 %"
safety-data-sheet: SDS TH-1, revision 2
`,
  'skarnmere-reclaimed': `name: Skarnmere reclaimed ash
producer: skarnmere
plant: yard
kind: harvested-coal-ash
class: F
deposit: Skarnmere storage area, cells B and C
additives: "dried, screened, classified"
safety-data-sheet: SDS SK-3, revision 1
`,
  'tarn-hollow-limestone': `name: Tarn Hollow limestone
producer: tarn-hollow
plant: mill-3
kind: limestone-filler
trade-name: Tarn Hollow filler
deposit: Tarn Hollow quarry, limestone face
additives: none
safety-data-sheet: SDS TH-4, revision 1
# An inert reference: judged only under the sets that are to tell reactive from inert.
criteria:
  - { set: strength-or-resistivity }
  - { set: modified-strength }
  - { set: resistivity-option }
`,
}

/** An approval of values over a plain limit of the invented supplement for roads. */
const APPROVED_OVER: Readonly<Record<string, string>> = {
  'skarnmere-ash':
    '  - { from: 2025-01-01, by: Varrow Vale Roads Authority, scope: "loss on ignition up to 4.0 %", set: varrow-roads, clause: loss-on-ignition, evidence: "air records of bridge decks, 2023 and 2024" }\n',
}

/** Facts, documents and declared values that supplements and other standards ask for. */
const STATED: Readonly<Record<string, string>> = {
  'skarnmere-ash': `facts: { incinerator-ash: no, coal-only: yes }
documents:
  - { kind: certification-statement, title: "statement SK-F 3", from: 2023-09-01 }
declared: { density: 2.31 g/cm3, residue-45um: 18.5 % }
`,
  'quellan-ash': `facts: { incinerator-ash: no, coal-only: yes }
documents:
  - { kind: certification-statement, title: "statement QB-C 1", from: 2023-09-01 }
`,
}

/** site.yaml, producers, laboratories and sources. */
export function* siteRecords(asOf: string = AS_OF): Generator<DemoFile> {
  yield { path: 'site.yaml', text: SITE(asOf) }
  for (const [id, text] of Object.entries(PRODUCERS)) yield { path: `producers/${id}.yaml`, text }
  for (const [id, text] of Object.entries(LABORATORIES)) yield { path: `laboratories/${id}.yaml`, text }
  for (const source of SOURCES) yield { path: `sources/${source.id}.yaml`, text: sourceText(source) }
}

function sourceText(source: DemoSource): string {
  const plan =
    source.class === null
      ? ''
      : `lot-number-pattern: ${source.prefix}-YYYY-###
approvals:
  - { from: 2023-09-01, by: Varrow Vale Roads Authority, scope: "class ${source.class}, structural concrete" }
${APPROVED_OVER[source.id] ?? ''}${STATED[source.id] ?? ''}sampling-plan:
  - { properties: [moisture, loss-on-ignition, residue-45um], every: 400 short ton, or-every: 1 d, kind: grab }
  - { properties: [density, oxide-sum, strength-activity-index], every: 3200 short ton, or-every: 31 d, kind: composite }
`
  const events =
    source.events.length === 0
      ? ''
      : `events:\n${source.events
          .map(
            (event) =>
              `  - { date: ${event.from}${event.to === undefined ? '' : `, to: ${event.to}`}, kind: ${event.kind}, title: "${event.title}"${event.restarts === true ? ', restarts-series: yes' : ''} }\n`,
          )
          .join('')}`
  return `${SOURCE_HEADS[source.id] ?? ''}${plan}${events}`
}
