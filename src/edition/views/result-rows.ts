/**
 * A certificate's results beside the clauses that judged them, in the order of its tables. Rows are made from
 * the document alone, so that an issued certificate shows what it showed on its day.
 */
import { hoursOf } from './document-ages.ts'
import { isNeutral } from '../../core/criteria/combining.ts'
import { defined } from '../../core/measure/defined.ts'
import { property, type Property, type PropertyKey } from '../../core/measure/properties.ts'
import type { CertificateDocument, DocumentCriterion, DocumentResult } from '../shape/document.ts'
import {
  type DocumentClause,
  governingClauses,
  type GroupedClause,
  needsNoResult,
  ungrouped,
} from './document-clauses.ts'
import { type PlainResults, plainResults, propertyOrder } from './plain-results.ts'

/** One line of a table: a result, a clause that still waits for one, or both. */
export interface TableRow {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
  readonly kind: 'value' | 'deviation' | 'statistic'
  readonly result: DocumentResult | null
  readonly clause: DocumentClause | null
  /** The criterion of `clause` where it is not the governing one. */
  readonly under: DocumentCriterion | null
  /** The group of alternatives or joint demands that the clause stands in, on its first member only. */
  readonly opens: DocumentClause | null
  readonly member: boolean
}

export interface ResultTable {
  readonly group: Property['group']
  readonly title: string
  readonly rows: readonly TableRow[]
  readonly plain: readonly PlainResults[]
}

const TITLES: Readonly<Record<Property['group'], string>> = {
  activity: 'Activity',
  composition: 'Composition',
  physical: 'Physical properties',
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

/** In the order of the clauses, those on one property together. */
function governingRows(document: CertificateDocument): TableRow[] {
  const named = ungrouped(governingClauses(document)).filter(
    ({ clause }) => clause.property !== undefined && !needsNoResult(clause),
  )
  const properties = [...new Set(named.map(({ clause }) => clause.property))]
  const inOrder = named.toSorted(
    (a, b) => properties.indexOf(a.clause.property) - properties.indexOf(b.clause.property),
  )
  return withOpenings(inOrder.map((grouped) => rowOf(grouped, document, null)))
}

/** A row before the headings of groups are set. */
type Row = Omit<TableRow, 'opens' | 'member'> & { readonly group: DocumentClause | null }

function rowOf(
  { clause, group }: GroupedClause,
  document: CertificateDocument,
  under: DocumentCriterion | null,
): Row {
  return defined({
    property: clause.property ?? 'strength-activity-index',
    kind: kindOf(clause),
    result: document.results.find(({ key }) => key === clause.result) ?? unjudged(clause, document),
    clause,
    under,
    group,
    condition: clause.condition,
    age: clause.age,
  })
}

function kindOf({ kind }: DocumentClause): TableRow['kind'] {
  return kind === 'deviation' || kind === 'statistic' ? kind : 'value'
}

/** The test that was not valid and therefore not judged: its figure is still shown. */
function unjudged(clause: DocumentClause, { results }: CertificateDocument): DocumentResult | null {
  if (clause.outcome !== 'not-valid' || clause.kind !== 'value') return null
  return results.find((result) => !result.valid && testOf(result) === testOf(clause)) ?? null
}

/** Sets a group's heading before its first member. */
function withOpenings(rows: readonly Row[]): TableRow[] {
  const opened = new Set<string>()
  return rows.map(({ group, ...row }) => {
    const opens = group !== null && !opened.has(group.id) ? group : null
    if (opens !== null) opened.add(opens.id)
    return { ...row, opens, member: group !== null }
  })
}

/** Indices that the governing criterion does not judge, by property, condition and age. */
function otherRows(document: CertificateDocument): TableRow[] {
  const governed = new Set(
    ungrouped(governingClauses(document))
      .filter(({ clause }) => !isNeutral(clause.outcome))
      .map(({ clause }) => testOf(clause)),
  )
  const rows = new Map<string, Row>()
  for (const row of [...rowsOfOtherSets(document), ...indexRows(document)])
    if (!governed.has(testOf(row)) && !rows.has(testOf(row))) rows.set(testOf(row), { ...row, group: null })
  return withOpenings([...rows.values()].sort(byTest))
}

/** Indices that another criterion judges; where several do, the first one's row stands. */
function rowsOfOtherSets(document: CertificateDocument): Row[] {
  return document.verdicts.flatMap((verdict, index) =>
    index === 0
      ? []
      : ungrouped(verdict.clauses)
          .filter(({ clause }) => clause.kind === 'value' && isIndex(clause) && !isNeutral(clause.outcome))
          .map((grouped) => rowOf(grouped, document, document.criteria[index] ?? null)),
  )
}

/** Indices as they were found, for those that no criterion judges. */
function indexRows({ results }: CertificateDocument): Row[] {
  return results.filter(isIndex).map((result) =>
    defined({
      property: result.property,
      kind: 'value' as const,
      result,
      clause: null,
      under: null,
      group: null,
      condition: result.condition,
      age: result.age,
    }),
  )
}

interface Tested {
  readonly property?: PropertyKey
  readonly condition?: string
  readonly age?: string
}

function isIndex({ property: key }: Tested): boolean {
  return key !== undefined && property(key).nature === 'index'
}

/** What was tested how: property, condition and age. */
function testOf({ property: key, condition = '', age }: Tested): string {
  return [key, condition, hoursOf(age)].join('|')
}

function byTest(a: Row, b: Row): number {
  return (
    propertyOrder(a) - propertyOrder(b) ||
    (a.condition ?? '').localeCompare(b.condition ?? '', 'en') ||
    hoursOf(a.age) - hoursOf(b.age)
  )
}
