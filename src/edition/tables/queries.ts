/**
 * Ready queries over the tables, in the part of SQL that DuckDB, Spark and Trino share: nothing in them names a file,
 * so that only the source of the tables differs (`table-sources.ts`).
 */
import type { Edition } from '../shape/edition.ts'
import { partitions } from './partitions.ts'

export interface Query {
  /** Of its file, by what it asks. */
  readonly id: string
  readonly title: string
  /** What a row of the answer is and what is left out, in whole sentences. */
  readonly note: string
  /** Names of the tables that it reads. */
  readonly tables: readonly string[]
  readonly sql: string
}

const QUERIES: readonly Query[] = [
  {
    id: 'failures-by-source-and-year',
    title: 'Failures by source and year',
    note: 'A row for each source and year of sampling: lots that do not meet the set that governs them today, and their tonnes. Withdrawn lots are counted with the others and beside them.',
    tables: ['lots'],
    sql: `SELECT
  source,
  year,
  count(*) AS lots,
  sum(CASE WHEN outcome = 'does-not-meet' THEN 1 ELSE 0 END) AS failures,
  sum(CASE WHEN state = 'withdrawn' THEN 1 ELSE 0 END) AS withdrawn,
  sum(CASE WHEN outcome = 'does-not-meet' THEN quantity_t ELSE 0 END) AS failures_t
FROM lots
GROUP BY source, year
ORDER BY source, year
`,
  },
  {
    id: 'clauses-that-fail',
    title: 'Clauses that fail',
    note: 'A row for each clause of a set that decided that lots do not meet the set, where it governs them. A group is left out, since its members are counted; withdrawn lots are counted with the others.',
    tables: ['clauses'],
    sql: `SELECT
  criterion,
  clause,
  property,
  condition,
  age,
  count(DISTINCT lot) AS lots,
  min(margin) AS worst_margin,
  difference_unit
FROM clauses
WHERE governs
  AND decides
  AND outcome = 'does-not-meet'
  AND kind <> 'group'
GROUP BY criterion, clause, property, condition, age, difference_unit
ORDER BY lots DESC, criterion, clause
`,
  },
  {
    id: 'producer-against-agency',
    title: 'Producer against agency',
    note: 'A row for each source, property, condition and age that both have tested on the same lots: the mean difference of the agency’s result from the producer’s, and its standard deviation from lot to lot. Results that are not valid or known only within bounds are left out, withdrawn lots too. Splits and independent samples are taken together here; the page of a source keeps them apart.',
    tables: ['lots', 'results'],
    sql: `WITH means AS (
  SELECT
    r.source,
    r.lot,
    r.role,
    r.property,
    coalesce(r.condition, '') AS condition,
    coalesce(r.age, '') AS age,
    r.unit,
    avg(r.value) AS value
  FROM results r
  JOIN lots l ON l.lot = r.lot
  WHERE r.valid
    AND r.value_low IS NULL
    AND r.value_high IS NULL
    AND l.state <> 'withdrawn'
  GROUP BY r.source, r.lot, r.role, r.property, coalesce(r.condition, ''), coalesce(r.age, ''), r.unit
)
SELECT
  p.source,
  p.property,
  p.condition,
  p.age,
  p.unit,
  count(*) AS lots,
  avg(p.value) AS producer_mean,
  avg(a.value) AS agency_mean,
  avg(a.value - p.value) AS mean_difference,
  stddev_samp(a.value - p.value) AS sd_of_difference
FROM means p
JOIN means a
  ON a.lot = p.lot
  AND a.property = p.property
  AND a.condition = p.condition
  AND a.age = p.age
WHERE p.role = 'producer'
  AND a.role = 'verification'
GROUP BY p.source, p.property, p.condition, p.age, p.unit
ORDER BY p.source, p.property, p.condition, p.age
`,
  },
  {
    id: 'separation-of-indices',
    title: 'Separation of indices',
    note: 'A row for each two sources and each index at one condition and age: how far their means lie apart, in standard deviations from lot to lot (root mean square of both). The larger, the better that condition tells the two materials apart. Two lots of each at least; withdrawn lots, the agency’s results, and those not valid or known only within bounds are left out.',
    tables: ['lots', 'results'],
    sql: `WITH by_lot AS (
  SELECT r.source, r.lot, r.property, r.condition, r.age, avg(r.value) AS value
  FROM results r
  JOIN lots l ON l.lot = r.lot
  WHERE r.property IN ('strength-activity-index', 'resistivity-index')
    AND r.role = 'producer'
    AND r.valid
    AND r.value_low IS NULL
    AND r.value_high IS NULL
    AND l.state <> 'withdrawn'
  GROUP BY r.source, r.lot, r.property, r.condition, r.age
),
by_source AS (
  SELECT
    source,
    property,
    condition,
    age,
    count(*) AS lots,
    avg(value) AS mean,
    stddev_samp(value) AS sd
  FROM by_lot
  GROUP BY source, property, condition, age
  HAVING count(*) > 1
)
SELECT
  a.property,
  a.condition,
  a.age,
  a.source AS source_a,
  b.source AS source_b,
  a.lots AS lots_a,
  b.lots AS lots_b,
  a.mean AS mean_a,
  b.mean AS mean_b,
  abs(a.mean - b.mean) / nullif(sqrt((a.sd * a.sd + b.sd * b.sd) / 2), 0) AS separation
FROM by_source a
JOIN by_source b
  ON b.property = a.property
  AND b.condition = a.condition
  AND b.age = a.age
  AND b.source > a.source
ORDER BY separation DESC NULLS LAST, a.property, a.condition, a.age, a.source, b.source
`,
  },
  {
    id: 'shipments-before-completion',
    title: 'Shipments before completion',
    note: 'A row for each source and year of shipment: bills and tonnes that left before every activity index of their lot was known, those without a certificate on that day, and those of lots already known not to meet. Bills of lots that the site does not show are in no table. Bills that may be of several lots are counted apart, since nobody can say what was known of them.',
    tables: ['shipments'],
    sql: `SELECT
  source,
  year,
  count(*) AS shipments,
  sum(CASE WHEN ages_unknown IS NOT NULL THEN 1 ELSE 0 END) AS before_completion,
  sum(CASE WHEN ages_unknown IS NOT NULL THEN mass_t ELSE 0 END) AS before_completion_t,
  sum(CASE WHEN certificate_then = 'none' THEN 1 ELSE 0 END) AS without_certificate,
  sum(CASE WHEN failure_then = 'known' THEN 1 ELSE 0 END) AS known_not_to_meet,
  sum(CASE WHEN lot IS NULL THEN 1 ELSE 0 END) AS not_of_one_lot
FROM shipments
GROUP BY source, year
ORDER BY source, year
`,
  },
  {
    id: 'control-batches',
    title: 'Scatter of control batches',
    note: 'A row for each laboratory, condition, property and age: mean and coefficient of variation of the control from batch to batch. Results that are not valid or known only within bounds are left out.',
    tables: ['controls'],
    sql: `SELECT
  laboratory,
  condition,
  property,
  age,
  unit,
  count(*) AS batches,
  avg(value) AS mean,
  100 * stddev_samp(value) / nullif(avg(value), 0) AS variation_percent
FROM controls
WHERE valid
  AND value_low IS NULL
  AND value_high IS NULL
GROUP BY laboratory, condition, property, age, unit
ORDER BY laboratory, condition, property, age
`,
  },
  {
    id: 'questions-by-check',
    title: 'Questions by check',
    note: 'A row for each audit check and severity: how many questions it raised, on how many lots, sources or laboratories. Answered ones are counted too.',
    tables: ['findings'],
    sql: `SELECT
  audit_check,
  severity,
  count(*) AS findings,
  count(DISTINCT about) AS about
FROM findings
GROUP BY audit_check, severity
ORDER BY audit_check, severity
`,
  },
]

/** Queries that the tables of an edition can answer. */
export function queriesOf(edition: Edition): Query[] {
  const names = tableNames(edition)
  return QUERIES.filter(({ tables }) => tables.every((name) => names.has(name)))
}

/** Names of the tables that have a file. */
export function tableNames(edition: Edition): ReadonlySet<string> {
  return new Set([...partitions(edition)].map(({ table }) => table.name))
}
