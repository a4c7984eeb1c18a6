/**
 * A certificate's results beside the clauses that judged them, in the order of its tables. Rows are made from
 * the document
 * alone, so that an issued certificate shows what it showed on its day.
 */
import { setName } from '../../core/criteria/criterion.ts'
import { PROPERTIES, property, type Property, type PropertyKey } from '../../core/measure/properties.ts'
import { isNeutral } from '../../core/criteria/combining.ts'
import type { ClauseOutcome, Verdict } from '../../core/criteria/outcome.ts'
import type { CertificateDocument, DocumentCriterion, DocumentResult } from '../shape/document.ts'

/** One line of a table: a result, a clause that still waits for one, or both. */
export interface ResultRow {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
  readonly kind: 'value' | 'deviation' | 'statistic'
  readonly result: DocumentResult | null
  readonly clause: ClauseOutcome | null
  /** The criterion of `clause` where it is not the governing one. */
  readonly under: DocumentCriterion | null
  /** The group of alternatives or joint demands that the clause stands in, on its first member only. */
  readonly opens: ClauseOutcome | null
  readonly member: boolean
}

/** Results that no clause names, of one analysis or mortar: printed as one line. */
export interface PlainResults {
  readonly sample: string
  readonly laboratory: string
  readonly method?: string
  readonly condition?: string
  readonly tested: string
  readonly accredited: boolean
  readonly results: readonly DocumentResult[]
}

export interface ResultTable {
  readonly group: Property['group']
  readonly title: string
  readonly rows: readonly ResultRow[]
  readonly plain: readonly PlainResults[]
}

const TITLES: Readonly<Record<Property['group'], string>> = {
  activity: 'Activity',
  composition: 'Composition',
  physical: 'Physical properties',
}
const ORDER = Object.keys(PROPERTIES) as PropertyKey[]

interface Leaf {
  readonly clause: ClauseOutcome
  readonly group: ClauseOutcome | null
}

/** The tables of a certificate, those without any line left out. */
export function resultTables(document: CertificateDocument): ResultTable[] {
  const rows = [...governingRows(document), ...otherRows(document)]
  const shown = new Set(rows.map((row) => row.result?.key))
  const plain = document.results.filter((result) => !shown.has(result.key))
  return (Object.keys(TITLES) as Property['group'][])
    .map((group) => ({
      group,
      title: TITLES[group],
      rows: rows.filter((row) => property(row.property).group === group),
      plain: plainResults(plain.filter((result) => property(result.property).group === group)),
    }))
    .filter((table) => table.rows.length + table.plain.length > 0)
}

/**
 * Clauses of the governing criterion that need no result of this lot: their condition is false, or nobody
 * asked.
 */
export function neutralClauses(document: CertificateDocument): ClauseOutcome[] {
  return (document.verdicts[0]?.clauses ?? []).filter(
    (clause) => clause.outcome === 'not-applicable' || clause.outcome === 'not-invoked',
  )
}

/**
 * Clauses of the governing criterion on the record rather than on a value: facts, documents, classes,
 * sampling.
 */
export function recordClauses(document: CertificateDocument): ClauseOutcome[] {
  return leaves(document.verdicts[0]?.clauses ?? [])
    .map(({ clause }) => clause)
    .filter((clause) => clause.property === undefined && !isNeutral(clause.outcome))
}

export interface Judgement {
  readonly label: string
  readonly text: string
  readonly outcome: ClauseOutcome['outcome']
  readonly note?: string
}

/**
 * What every set makes of a result: rounding, limit and outcome, with the uncertainty that the doubt rests
 * on. The end of its working.
 */
export function judgements(document: CertificateDocument, result: Pick<DocumentResult, 'key'>): Judgement[] {
  return document.verdicts.flatMap((verdict, index) =>
    leaves(verdict.clauses)
      .filter(({ clause }) => clause.result === result.key && !isNeutral(clause.outcome))
      .map(({ clause }) => {
        const criterion = document.criteria[index]
        const doubt = [
          clause.doubt,
          clause.uncertainty &&
            `standard uncertainty ${clause.uncertainty.u.toFixed(1)}: ${clause.uncertainty.basis}`,
        ].filter((part) => part !== undefined)
        return {
          label: criterion === undefined ? verdict.criterion : setName(criterion),
          text: clause.reason,
          outcome: clause.outcome,
          ...(doubt.length === 0 ? {} : { note: doubt.join('; ') }),
        }
      }),
  )
}

/** Comparisons with a property, each with the outermost group it belongs to. */
function leaves(clauses: readonly ClauseOutcome[], group: ClauseOutcome | null = null): Leaf[] {
  return clauses.flatMap((clause) =>
    clause.clauses === undefined ? [{ clause, group }] : leaves(clause.clauses, group ?? clause),
  )
}

function governingRows(document: CertificateDocument): ResultRow[] {
  const named = leaves(document.verdicts[0]?.clauses ?? []).filter(
    ({ clause }) =>
      clause.property !== undefined &&
      clause.outcome !== 'not-applicable' &&
      clause.outcome !== 'not-invoked',
  )
  const first = new Map<PropertyKey, number>()
  named.forEach(({ clause }, place) => {
    if (clause.property !== undefined && !first.has(clause.property)) first.set(clause.property, place)
  })
  const place = ({ clause }: Leaf) => (clause.property === undefined ? 0 : (first.get(clause.property) ?? 0))
  return withOpenings([...named].sort((a, b) => place(a) - place(b)).map((leaf) => row(leaf, document, null)))
}

type Row = Omit<ResultRow, 'opens' | 'member'> & { readonly group: ClauseOutcome | null }

function row({ clause, group }: Leaf, document: CertificateDocument, under: DocumentCriterion | null): Row {
  const result =
    document.results.find((candidate) => candidate.key === clause.result) ?? unjudged(clause, document)
  return {
    property: clause.property ?? 'strength-activity-index',
    kind: clause.kind === 'deviation' || clause.kind === 'statistic' ? clause.kind : 'value',
    result,
    clause,
    under,
    group,
    ...(clause.condition === undefined ? {} : { condition: clause.condition }),
    ...(clause.age === undefined ? {} : { age: clause.age }),
  }
}

/** The test that was not valid and therefore not judged: its figure is still shown. */
function unjudged(clause: ClauseOutcome, { results }: CertificateDocument): DocumentResult | null {
  if (clause.outcome !== 'not-valid' || clause.kind !== 'value') return null
  return results.find((candidate) => !candidate.valid && placeOf(candidate) === placeOf(clause)) ?? null
}

/** Sets a group's heading before its first member. */
function withOpenings(rows: readonly Row[]): ResultRow[] {
  const opened = new Set<string>()
  return rows.map(({ group, ...rest }) => {
    const opens = group !== null && !opened.has(group.id) ? group : null
    if (opens !== null) opened.add(opens.id)
    return { ...rest, opens, member: group !== null }
  })
}

/**
 * Indices that the governing criterion does not judge, each under the first other criterion that does, if
 * any.
 */
function otherRows(document: CertificateDocument): ResultRow[] {
  const governed = new Set(
    leaves(document.verdicts[0]?.clauses ?? [])
      .filter(({ clause }) => !isNeutral(clause.outcome))
      .map(({ clause }) => placeOf(clause)),
  )
  const rows = new Map<string, Row>()
  for (const [index, verdict] of document.verdicts.entries())
    if (index > 0) addOtherRows(rows, verdict, document, governed, document.criteria[index] ?? null)
  for (const result of document.results) {
    if (
      property(result.property).nature !== 'index' ||
      governed.has(placeOf(result)) ||
      rows.has(placeOf(result))
    )
      continue
    rows.set(placeOf(result), {
      property: result.property,
      kind: 'value',
      result,
      clause: null,
      under: null,
      group: null,
      ...(result.condition === undefined ? {} : { condition: result.condition }),
      ...(result.age === undefined ? {} : { age: result.age }),
    })
  }
  return withOpenings(
    [...rows.values()]
      .map((entry) => ({ ...entry, group: null }))
      .sort(
        (a, b) =>
          order(a) - order(b) ||
          (a.condition ?? '').localeCompare(b.condition ?? '', 'en') ||
          Number.parseInt(a.age ?? '0', 10) - Number.parseInt(b.age ?? '0', 10),
      ),
  )
}

function addOtherRows(
  rows: Map<string, Row>,
  verdict: Verdict,
  document: CertificateDocument,
  governed: ReadonlySet<string>,
  under: DocumentCriterion | null,
): void {
  for (const leaf of leaves(verdict.clauses)) {
    const { clause } = leaf
    if (
      clause.property === undefined ||
      clause.kind !== 'value' ||
      isNeutral(clause.outcome) ||
      property(clause.property).nature !== 'index'
    )
      continue
    if (!governed.has(placeOf(clause)) && !rows.has(placeOf(clause)))
      rows.set(placeOf(clause), row(leaf, document, under))
  }
}

function placeOf(item: { property?: PropertyKey; condition?: string; age?: string }): string {
  return `${item.property}|${item.condition ?? ''}|${item.age ?? ''}`
}

function order(item: { property: PropertyKey }): number {
  return ORDER.indexOf(item.property)
}

function plainResults(results: readonly DocumentResult[]): PlainResults[] {
  const lines = new Map<string, DocumentResult[]>()
  for (const result of [...results].sort((a, b) => order(a) - order(b))) {
    const key = [
      result.sample,
      result.laboratory,
      result.accredited,
      ...(result.condition === undefined ? [result.method, result.tested] : [result.condition]),
    ].join('|')
    const line = lines.get(key)
    if (line === undefined) lines.set(key, [result])
    else line.push(result)
  }
  return [...lines.values()].flatMap((line) => {
    const [head] = line
    if (head === undefined) return []
    const { sample, laboratory, tested, accredited, method, condition } = head
    return [
      {
        sample,
        laboratory,
        tested,
        accredited,
        results: line,
        ...(method === undefined ? {} : { method }),
        ...(condition === undefined ? {} : { condition }),
      },
    ]
  })
}
