/** The records of the scenario that are not lots or control batches, as text. */
import { PRECISION } from './agency-samples.ts'
import { LABORATORIES } from './laboratory-records.ts'
import { AS_OF, type DemoSource } from './scenario.ts'
import { sourceText } from './source-records.ts'

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
${PRECISION}`

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

/** site.yaml, producers, laboratories and sources. */
export function* siteRecords(sources: readonly DemoSource[], asOf: string = AS_OF): Generator<DemoFile> {
  yield { path: 'site.yaml', text: SITE(asOf) }
  for (const [id, text] of Object.entries(PRODUCERS)) yield { path: `producers/${id}.yaml`, text }
  for (const [id, text] of Object.entries(LABORATORIES)) yield { path: `laboratories/${id}.yaml`, text }
  for (const source of sources) yield { path: `sources/${source.id}.yaml`, text: sourceText(source) }
}
