/**
 * Clauses judged through the front door: the text that a user writes goes in, the verdict that `check --json`
 * prints comes out. Every row is a little content folder, whose lot is judged under four sets: its clause alone,
 * in an any-of beside a member that is not met, in an all-of beside one that is met, and in that any-of within
 * that all-of.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../src/core/criteria/outcome.ts'
import type { ClauseOutcome } from '../../src/core/criteria/verdict.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { loadRecords } from '../../src/records/load.ts'

export interface TrialAnalysis {
  /** Members of the mapping `results`. */
  readonly results: string
  /** C, the composite, without it; G is a grab; others are the lot's own. */
  readonly sample?: string
  /** Quay without it; dock is another one. */
  readonly laboratory?: 'quay' | 'dock'
  /** Calendar date; without it two days after sampling, or thirty where a figure has an age. */
  readonly tested?: string
  /** Members of the mapping `control-results`. */
  readonly control?: string
}

export interface TrialLot {
  /** One analysis by its results alone, or several in full; none without it. */
  readonly analyses?: string | readonly TrialAnalysis[]
  /** Day of sampling; without it the judged lot's is 2026-03-01, or 2026-02-01 where a figure has an age; each one before it ten days earlier. */
  readonly on?: string
  /** Further samples, as items of the list. */
  readonly samples?: readonly string[]
  /** Tonnes; 500 without it. */
  readonly tonnes?: number
  /** Further lines of the record. */
  readonly more?: string
}

export interface Row {
  /** What is judged and why the outcome is what it is. */
  readonly title: string
  /** Members of the clause, as in a flow mapping of YAML. */
  readonly clause: string
  /** Lots in order of sampling, the judged one last; a text is the results of one analysis. */
  readonly lots?: readonly (string | TrialLot)[]
  /** Further lines of the set. */
  readonly set?: string
  /** Further lines of the source. */
  readonly source?: string
  /** Members of an approval of the clause under each of the sets. */
  readonly approval?: string
  /** The purchaser asks for the clause. */
  readonly requested?: true
  readonly outcome: Outcome
}

/** The as-of date of every folder. */
export const AS_OF = '2026-03-10'

const CLAUSE = (clause: string) => `{ clause: c, ${clause} }`
// Moisture of every lot is 2.0 %.
const FAILING = '{ clause: failing, property: moisture, at-most: 1.0 % }'
const MET = '{ clause: met, property: moisture, at-most: 3.0 % }'

const SETS = {
  alone: CLAUSE,
  any: (clause: string) => `{ clause: g, any-of: [${CLAUSE(clause)}, ${FAILING}] }`,
  all: (clause: string) => `{ clause: g, all-of: [${CLAUSE(clause)}, ${MET}] }`,
  nested: (clause: string) =>
    `{ clause: h, all-of: [{ clause: g, any-of: [${CLAUSE(clause)}, ${FAILING}] }, ${MET}] }`,
} as const
type SetKind = keyof typeof SETS
const KINDS = Object.keys(SETS) as SetKind[]

/** Outcomes that say nothing for or against, in no combination. */
const NEUTRAL: readonly Outcome[] = ['not-applicable', 'not-invoked', 'reported']

/**
 * Outcomes of the clause and of the verdict under each set. The combinations are those of the design (section
 * 2), of the row's outcome with the one member beside it: a route that was not run does not hide one that
 * failed.
 */
function expected({ outcome, clause }: Row): Outcomes {
  const neutral = NEUTRAL.includes(outcome) || /information: yes/.test(clause)
  const any = neutral || outcome === 'not-reported' ? 'does-not-meet' : outcome
  return {
    alone: [outcome, neutral ? 'reported' : outcome],
    any: [outcome, any],
    all: [outcome, neutral ? 'meets' : outcome],
    nested: [outcome, any],
  }
}

type Outcomes = Readonly<
  Record<SetKind, readonly [clause: Outcome | undefined, verdict: Outcome | undefined]>
>

function outcomes(verdicts: readonly ReportedVerdict[]): Outcomes {
  return Object.fromEntries(
    KINDS.map((kind) => {
      const verdict = verdicts.find(({ criterion }) => criterion === kind)
      const clause = flat(verdict?.clauses ?? []).find(({ id }) => id === 'c')
      return [kind, [clause?.outcome, verdict?.outcome]]
    }),
  ) as unknown as Outcomes
}

/** Every row as a test. */
export function judgeThroughTheFrontDoor(name: string, rows: readonly Row[]): void {
  describe(name, () => {
    for (const row of rows)
      it(`${row.title}: ${row.outcome}`, () => {
        expect(outcomes(reportOn(row).verdicts)).toEqual(expected(row))
      })
  })
}

/** Of the report only what these tests look at. */
interface Report {
  readonly diagnostics: readonly { readonly message: string; readonly file: string }[]
  readonly lots: readonly {
    readonly id: string
    readonly standing: string
    readonly overdueSince: string | null
    readonly findings: readonly {
      readonly check: string
      readonly severity: string
      readonly sentence: string
      readonly evidence: readonly string[]
    }[]
    readonly results: readonly {
      readonly key: string
      readonly value: number
      readonly written: string | null
      readonly finished: boolean
      readonly valid: boolean
      readonly reasons: readonly string[]
    }[]
    readonly verdicts: readonly {
      readonly criterion: string
      readonly outcome: Outcome
      readonly clauses: readonly ReportedClause[]
    }[]
  }[]
}
type ReportedClause = ClauseOutcome & {
  readonly reason: string
  readonly u: number | null
  readonly degreesOfFreedom: number | null
}
type ReportedLot = Report['lots'][number]
type ReportedVerdict = ReportedLot['verdicts'][number]

/** The last lot as `check --json` prints it; the records have no fault. */
export function reportOn(row: Omit<Row, 'title' | 'outcome'>): ReportedLot {
  const folder = mkdtempSync(join(tmpdir(), 'front-door-'))
  for (const [path, text] of [...SHARED, ...rowFiles(row)]) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const { records, diagnostics } = loadRecords(folder)
  const edition = computeEdition(records, { program: 'test' })
  const report = JSON.parse([...checkReport(edition, diagnostics)].join('')) as Report
  rmSync(folder, { recursive: true })
  expect(report.diagnostics).toEqual([])
  const lot = report.lots.at(-1)
  if (lot === undefined) throw new RangeError('reportOn needs a row with a lot, got none')
  return lot
}

function flat(clauses: readonly ClauseOutcome[]): ClauseOutcome[] {
  return clauses.flatMap((clause) => [clause, ...flat(clause.clauses ?? [])])
}

type File = readonly [path: string, text: string]

function rowFiles(row: Omit<Row, 'title' | 'outcome'>): File[] {
  const { lots = [{}] } = row
  return [
    ...KINDS.map((kind): File => [`criteria/${kind}.yaml`, setText(row, SETS[kind])]),
    ['sources/tuff.yaml', sourceText(row)],
    ...lots.map((lot, place): File => {
      const text = lotText(typeof lot === 'string' ? { analyses: lot } : lot, lots.length - 1 - place)
      return [`lots/tuff/L${place + 1}.yaml`, text]
    }),
  ]
}

function setText(
  { clause, set = '' }: Pick<Row, 'clause' | 'set'>,
  whole: (clause: string) => string,
): string {
  return `title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\n${set}\nclauses:\n  - ${whole(clause)}\n`
}

function sourceText({
  source = '',
  approval,
  requested,
}: Pick<Row, 'source' | 'approval' | 'requested'>): string {
  const asked = requested === undefined ? '' : ', requested: [c]'
  const criteria = KINDS.map((set) => `{ set: ${set}${asked} }`)
  const approvals =
    approval === undefined ? [] : KINDS.map((set) => `{ ${approval}, set: ${set}, clause: c }`)
  return `name: Trial
producer: hill
kind: raw-natural-pozzolan
criteria: [${criteria.join(', ')}]
${approvals.length === 0 ? '' : `approvals: [${approvals.join(', ')}]`}
${source}
`
}

/** @param earlier how many lots follow it */
export function lotText(lot: TrialLot, earlier: number): string {
  const {
    analyses = [],
    on = daysBefore(lastDay(lot), 10 * earlier),
    tonnes = 500,
    more = '',
    samples = [],
  } = lot
  const listed = typeof analyses === 'string' ? [{ results: analyses }] : analyses
  return `produced: { from: ${daysBefore(on, 5)}, to: ${on} }
quantity: ${tonnes} t
samples:
  - { id: C, kind: composite, taken: { from: ${daysBefore(on, 5)}T06:00, to: ${on}T06:00 } }
  - { id: G, kind: grab, on: ${on}T06:00 }
${samples.map((sample) => `  - ${sample}\n`).join('')}analyses:
${[...listed, { results: 'moisture: 2.0 %' }].map((analysis) => `  - ${analysisText(analysis, on)}`).join('\n')}
${more}
`
}

/** Sampling of the judged lot: early enough for the age of a finished figure to have been reached. */
function lastDay({ analyses = [] }: TrialLot): string {
  return AGED.test(JSON.stringify(analyses)) ? '2026-02-01' : '2026-03-01'
}

const AGED = /\bage: /

function analysisText(
  { results, sample = 'C', laboratory = 'quay', tested, control }: TrialAnalysis,
  on: string,
): string {
  const beside = control === undefined ? '' : `, control-results: { ${control} }`
  return `{ laboratory: ${laboratory}, sample: ${sample}, tested: ${tested ?? daysBefore(on, AGED.test(results) ? -30 : -2)}, results: { ${results} }${beside} }`
}

function daysBefore(date: string, days: number): string {
  return new Date(Date.parse(date) - days * 86_400_000).toISOString().slice(0, 10)
}

export const SHARED: readonly File[] = [
  ['site.yaml', `title: Trial\nunits: SI\nas-of: ${AS_OF}\ncriteria: [alone]\ngrace: 7 d\n`],
  ['laboratories/dock.yaml', 'name: Dock\naddress: [3 Dock]\nstanding: independent\n'],
  ['producers/hill.yaml', 'name: Hill\naddress: [1 Mill Lane]\n'],
  [
    'laboratories/quay.yaml',
    `name: Quay
address: [2 Quay]
standing: in-house
repeatability:
  - { property: SO3, standard-deviation: 0.2 percentage points, from: 2025-01-01, basis: duplicates }
  - { property: CaO, standard-deviation: 0.5 percentage points, degrees-of-freedom: 4, from: 2025-01-01, basis: duplicates }
`,
  ],
  [
    'conditions/cool.yaml',
    `title: 20 %, 23 °C
standing: modified
replacement: { amount: 20 %, by: mass }
water: { w/cm: 0.484 }
curing: { medium: saturated-lime-water, temperature: 23 degC }
ages:
  - { age: 7 d, within: 3 h }
  - { age: 28 d, within: 12 h }
strength:
  specimen: { shape: cube, side: 50 mm }
`,
  ],
  // Strengths that make every index a plain fraction: 30 MPa of 40 MPa is 75 %.
  [
    'controls/K1.yaml',
    `condition: cool
laboratory: quay
cement: { lot: PC-1 }
cast: 2026-01-05T09:00
strength:
  - { age: 7 d, tested: 2026-01-12T09:00, mean: 30.0 MPa, of: 3 }
  - { age: 28 d, tested: 2026-02-02T09:00, mean: 40.0 MPa, of: 3 }
`,
  ],
]

/** A lot with one mortar at the condition `cool`, cast on 2026-01-05. @param strength items of the list */
export function mortarLot(...strength: readonly string[]): TrialLot {
  return { on: '2026-01-03', more: mortar('2026-01-05', strength) }
}

/** The list `tests` with one mortar. @param cast calendar date, at nine o'clock */
export function mortar(cast: string, strength: readonly string[]): string {
  return `tests:
  - { sample: C, condition: cool, control: K1, laboratory: quay, cast: ${cast}T09:00, strength: [${strength.join(', ')}] }`
}
