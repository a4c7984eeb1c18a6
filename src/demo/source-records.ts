/** The records of the scenario's sources, as text. */
import { verificationPlanLines } from './agency-samples.ts'
import { flowMapping } from './flow-mapping.ts'
import type { DemoEvent, DemoSource } from './scenario.ts'

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
reactivity: { class: reactive, shown-by: "calcium hydroxide consumed, two outside laboratories" }
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
reactivity: { class: reactive, shown-by: "calcium hydroxide consumed, two outside laboratories" }
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
reactivity: { class: reactive, shown-by: "calcium hydroxide consumed, two outside laboratories" }
`,
  'skarnmere-reclaimed': `name: Skarnmere reclaimed ash
producer: skarnmere
plant: yard
kind: harvested-coal-ash
class: F
deposit: Skarnmere storage area, cells B and C
additives: "dried, screened, classified"
safety-data-sheet: SDS SK-3, revision 1
reactivity: { class: weak, shown-by: "calcium hydroxide consumed, two outside laboratories" }
`,
  'tarn-hollow-limestone': `name: Tarn Hollow limestone
producer: tarn-hollow
plant: mill-3
kind: limestone-filler
trade-name: Tarn Hollow filler
deposit: Tarn Hollow quarry, limestone face
additives: none
safety-data-sheet: SDS TH-4, revision 1
reactivity: { class: inert, shown-by: "calcium hydroxide consumed, two outside laboratories" }
# An inert reference: judged only under the sets that are to tell reactive from inert.
criteria:
  - { set: strength-or-resistivity }
  - { set: modified-strength }
  - { set: resistivity-option }
`,
}

/** How often each source with a class is sampled. */
const SAMPLING = [
  {
    properties: '[moisture, loss-on-ignition, residue-45um]',
    every: '400 short ton',
    'or-every': '1 d',
    kind: 'grab',
  },
  {
    properties: '[density, oxide-sum, strength-activity-index]',
    every: '3200 short ton',
    'or-every': '31 d',
    kind: 'composite',
  },
]

/** An approval of values over a plain limit of the invented supplement for roads. */
const APPROVED_OVER: Readonly<Record<string, string>> = {
  'skarnmere-ash': flowMapping({
    from: '2025-01-01',
    by: 'Varrow Vale Roads Authority',
    scope: '"loss on ignition up to 4.0 %"',
    set: 'varrow-roads',
    clause: 'loss-on-ignition',
    evidence: '"air records of bridge decks, 2023 and 2024"',
  }),
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

/** A source's record: what it is, what it is approved for, how it is sampled, what happened to it. */
export function sourceText(source: DemoSource): string {
  const plan = source.class === null ? [] : plannedLines(source, source.class)
  const events =
    source.events.length === 0 ? [] : ['events:', ...source.events.map((event) => `  - ${eventText(event)}`)]
  const { id, copyOf = id } = source
  const lines = [...plan, ...events, ...verificationPlanLines(copyOf)]
  return `${SOURCE_HEADS[copyOf] ?? ''}${lines.map((line) => `${line}\n`).join('')}`
}

function plannedLines({ copyOf, id: own, prefix }: DemoSource, ofClass: string): string[] {
  const approval = flowMapping({
    from: '2023-09-01',
    by: 'Varrow Vale Roads Authority',
    scope: `"class ${ofClass}, structural concrete"`,
  })
  const id = copyOf ?? own
  const approvedOver = APPROVED_OVER[id]
  return [
    `lot-number-pattern: ${prefix}-YYYY-###`,
    'approvals:',
    `  - ${approval}`,
    ...(approvedOver === undefined ? [] : [`  - ${approvedOver}`]),
    ...(STATED[id] ?? '').split('\n').filter((line) => line !== ''),
    'sampling-plan:',
    ...SAMPLING.map((sampling) => `  - ${flowMapping(sampling)}`),
  ]
}

function eventText({ from, to, kind, title, restarts }: DemoEvent): string {
  return flowMapping({
    date: from,
    to,
    kind,
    title: `"${title}"`,
    'restarts-series': restarts === true ? 'yes' : undefined,
  })
}
