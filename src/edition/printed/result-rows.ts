/**
 * A certificate's results beside the clauses that judged them, in the order of its tables. Rows are made from
 * what the certificate states and nothing else.
 */
import { hoursOf } from './ages.ts'
import { isNeutral } from '../../core/criteria/combining.ts'
import { defined } from '../../core/measure/defined.ts'
import { property, type Property, type PropertyKey } from '../../core/measure/properties.ts'
import type { CertificateFacts, CertificateCriterion, CertificateResult } from '../shape/certificate-facts.ts'
import type { WordedClause } from '../../words/worded-verdict.ts'
import { governingClauses, type GroupedClause, needsNoResult, ungrouped } from './clauses.ts'
import { type PlainResults, plainResults, propertyOrder } from './plain-results.ts'

/** One line of a table: a result, a clause that still waits for one, or both. */
export interface TableRow {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
  readonly kind: 'value' | 'deviation' | 'statistic'
  readonly result: CertificateResult | null
  readonly clause: WordedClause | null
  /** The criterion of `clause` where it is not the governing one. */
  readonly under: CertificateCriterion | null
  /** The group of alternatives or joint demands that the clause stands in, on its first member only. */
  readonly opens: WordedClause | null
  readonly member: boolean
}

export interface ResultTable {
  readonly group: Property['group']
  readonly title: string
  readonly rows: readonly TableRow[]
  /** Of properties that no limit of the table is held against. */
  readonly plain: readonly PlainResults[]
  /** Not judged, of properties that another result was judged for. */
  readonly others: readonly PlainResults[]
}

const TITLES: Readonly<Record<Property['group'], string>> = {
  activity: 'Activity',
  composition: 'Composition',
  physical: 'Physical properties',
}
/** The tables of a certificate, those without any line left out. */
export function resultTables(facts: CertificateFacts): ResultTable[] {
  const rows = [...governingRows(facts), ...otherRows(facts)]
  const shown = new Set(rows.map((row) => row.result))
  const plain = facts.results.filter((result) => !shown.has(result))
  const limited = new Set(
    rows
      .filter(({ kind, clause }) => kind === 'value' && clause?.limit != null)
      .map(({ property: key }) => key),
  )
  const placeOf = conditionPlaces(facts)
  const linesOf = (results: readonly CertificateResult[]) =>
    plainResults(results).sort((a, b) => placeOf(a.condition) - placeOf(b.condition))
  return (Object.keys(TITLES) as Property['group'][])
    .map((group) => ({
      group,
      title: TITLES[group],
      rows: rows.filter((row) => property(row.property).group === group),
      plain: linesOf(
        plain.filter((one) => property(one.property).group === group && !limited.has(one.property)),
      ),
      others: linesOf(
        plain.filter((one) => property(one.property).group === group && limited.has(one.property)),
      ),
    }))
    .filter((table) => table.rows.length + table.plain.length + table.others.length > 0)
}

/** In the order of the clauses, those on one property together. */
function governingRows(facts: CertificateFacts): TableRow[] {
  const named = ungrouped(governingClauses(facts)).filter(
    ({ clause }) => clause.property !== undefined && !needsNoResult(clause),
  )
  const properties = [...new Set(named.map(({ clause }) => clause.property))]
  const inOrder = named.toSorted(
    (a, b) => properties.indexOf(a.clause.property) - properties.indexOf(b.clause.property),
  )
  return withOpenings(inOrder.map((grouped) => rowOf(grouped, facts, null)))
}

/** A row before the headings of groups are set. */
type Row = Omit<TableRow, 'opens' | 'member'> & { readonly group: WordedClause | null }

function rowOf(
  { clause, group }: GroupedClause,
  facts: CertificateFacts,
  under: CertificateCriterion | null,
): Row {
  return defined({
    property: clause.property ?? 'strength-activity-index',
    kind: kindOf(clause),
    result: judgedResult(clause, facts) ?? unjudged(clause, facts),
    clause,
    under,
    group,
    condition: clause.condition,
    age: clause.age,
  })
}

function kindOf({ kind }: WordedClause): TableRow['kind'] {
  return kind === 'deviation' || kind === 'statistic' ? kind : 'value'
}

/** A retest shares the key of what it replaces: the one that was judged is valid and has the clause's value. */
function judgedResult(clause: WordedClause, { results }: CertificateFacts): CertificateResult | undefined {
  const own = results.filter(({ key }) => key === clause.result)
  return (
    own.find(({ valid, value }) => valid && value === clause.value) ??
    own.find(({ valid }) => valid) ??
    own[0]
  )
}

/** The test that was not valid and therefore not judged: its figure is still shown. */
function unjudged(clause: WordedClause, { results }: CertificateFacts): CertificateResult | null {
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
function otherRows(facts: CertificateFacts): TableRow[] {
  const governed = new Set(
    ungrouped(governingClauses(facts))
      .filter(({ clause }) => !isNeutral(clause.outcome) || isShownWithoutLimit(clause))
      .map(({ clause }) => testOf(clause)),
  )
  const rows = new Map<string, Row>()
  for (const row of [...rowsOfOtherSets(facts), ...indexRows(facts)])
    if (!governed.has(testOf(row)) && !rows.has(testOf(row))) rows.set(testOf(row), { ...row, group: null })
  return withOpenings([...rows.values()].sort(byTest(conditionPlaces(facts))))
}

/** A result that the governing criterion wants reported has its row already. */
function isShownWithoutLimit({ kind, outcome }: WordedClause): boolean {
  return kind === 'value' && outcome === 'reported'
}

/** Indices that another criterion judges; where several do, the first one's row stands. */
function rowsOfOtherSets(facts: CertificateFacts): Row[] {
  return facts.verdicts.flatMap((verdict, index) =>
    index === 0
      ? []
      : ungrouped(verdict.clauses)
          .filter(({ clause }) => clause.kind === 'value' && isIndex(clause) && !isNeutral(clause.outcome))
          .map((grouped) => rowOf(grouped, facts, facts.criteria[index] ?? null)),
  )
}

/** Indices as they were found, for those that no criterion judges. */
function indexRows({ results }: CertificateFacts): Row[] {
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

/** Conditions in the order in which sets name them, the governing one first; those of no set as the record has them. */
function conditionPlaces({ verdicts, results }: CertificateFacts): (condition: string | undefined) => number {
  const judged = verdicts.flatMap(({ clauses }) => ungrouped(clauses).map(({ clause }) => clause.condition))
  const named = [...judged, ...results.map(({ condition }) => condition)].filter((id) => id !== undefined)
  const places = new Map([...new Set(named)].map((id, place) => [id, place]))
  return (condition) => places.get(condition ?? '') ?? -1
}

function byTest(placeOf: ReturnType<typeof conditionPlaces>): (a: Row, b: Row) => number {
  return (a, b) =>
    propertyOrder(a) - propertyOrder(b) ||
    placeOf(a.condition) - placeOf(b.condition) ||
    hoursOf(a.age) - hoursOf(b.age)
}
