/** Audit check: mass or time that each sample stands for, against the sampling plan of the source. */
import type { History } from '../history/history.ts'
import { coverageOf } from '../history/sampling-coverage.ts'
import { daysBetween, type Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Quantity } from '../measure/units.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import type { BehindPlan } from './completeness-findings.ts'
import { type Finding, found } from './finding.ts'

/** Silos are not filled to the tonne, nor samples taken to the hour: own choice. */
export const SLACK = 1.05
/** Lots named: own choice. */
const SHOWN = 5

/** A row of a sampling plan as a source's record has it. */
export interface PlanRow {
  readonly properties: readonly PropertyKey[]
  /** In tonnes. */
  readonly every?: Quantity
  /** In hours. */
  readonly 'or-every'?: Quantity
  readonly kind?: 'grab' | 'composite'
}

export interface PlannedSource {
  readonly source: string
  readonly plan: readonly PlanRow[]
  readonly history: History
  readonly lots: readonly AuditedLot[]
}

/**
 * A warning for each row of a plan that lots fall short of.
 * @param asOf calendar date; tests begun later do not count
 * Note: a row is asked of its first property; a lot without a test adds to what the next one stands for.
 */
export function behindPlan(of: PlannedSource, asOf: Moment): Checked {
  const rows = of.plan.map((row) => behindRow(of, row, asOf))
  return {
    check: 'sampled-behind-plan',
    looked: rows.reduce((total, { looked }) => total + looked, 0),
    findings: rows.flatMap(({ findings }) => findings),
  }
}

function behindRow({ source, history, lots }: PlannedSource, row: PlanRow, asOf: Moment) {
  const [property] = row.properties
  if (property === undefined) return { looked: 0, findings: [] }
  const stands = lots.flatMap((lot) => {
    const { hours, tonnes, tests } = coverageOf(history, lot.id, asOf, { property, sample: row.kind })
    const days = tests === 1 ? hours / 24 : daysProduced(lot) / tests
    return tests === 0 ? [] : [{ lot: lot.id, tonnes: tonnes / tests, days, samples: tests }]
  })
  const behind = stands
    .filter((lot) => 1 < excess(lot, row))
    .sort((a, b) => excess(b, row) - excess(a, row) || (a.lot < b.lot ? -1 : 1))
  return { looked: stands.length, findings: behindFinding(source, row, stands.length, behind) }
}

/** Several samples of a lot share the days on which it was produced: none is due while nothing is made. */
function daysProduced({ record: { produced } }: AuditedLot): number {
  return daysBetween(produced.from, produced.to) + 1
}

/** How many times the planned mass or time, whichever is passed the farther, with the slack taken off. */
function excess({ tonnes, days }: BehindPlan, { every, 'or-every': time }: PlanRow): number {
  const byMass = every === undefined ? 0 : tonnes / every.value
  const byTime = time === undefined ? 0 : (24 * days) / time.value
  return Math.max(byMass, byTime) / SLACK
}

function behindFinding(
  source: string,
  { properties, every, 'or-every': time }: PlanRow,
  looked: number,
  behind: readonly BehindPlan[],
): Finding[] {
  if (behind.length === 0) return []
  const writtenEvery = [every, time].flatMap((one) => (one === undefined ? [] : [one.written]))
  const lots = behind.slice(0, SHOWN)
  const params = { source, properties, writtenEvery, looked, behind: behind.length, lots }
  return [found(source, { code: 'sampled-behind-plan', params }, ...properties)]
}
