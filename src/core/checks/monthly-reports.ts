/** Audit checks: months without a report to the agency, and reports that came late. */
import {
  daysBetween,
  isBy,
  lastDayOf,
  type Moment,
  momentOfDay,
  monthNumber,
  monthOfNumber,
} from '../measure/moment.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

export interface ReportPlan {
  readonly source: string
  /** First month due, year and month: "2025-03". */
  readonly from: string
  /** Hours after the end of a month. */
  readonly dueHours: number
  readonly received: readonly { readonly month: string; readonly on: Moment }[]
}

/** A month whose report is due by the as-of date. */
interface DueMonth {
  readonly month: string
  readonly due: Moment
  readonly received: Moment | undefined
}

/**
 * A warning for each run of months without a report, and information on each report that came late.
 * @param asOf calendar date; a report is missing from the day after it was due
 */
export function reportFindings(plan: ReportPlan, asOf: Moment): Checked[] {
  const months = dueMonths(plan, asOf)
  return [
    { check: 'report-missing', looked: months.length, findings: missing(plan.source, months) },
    {
      check: 'report-late',
      looked: months.length,
      findings: months.flatMap((one) => late(plan.source, one)),
    },
  ]
}

/**
 * The last day on which the report on a month is in time.
 * @param month year and month: "2026-03"
 * @param dueHours hours after the end of the month; hours that make no whole day are left out
 */
export function reportDue(month: string, dueHours: number): Moment {
  return momentOfDay(lastDayOf(month).day + Math.floor(dueHours / 24))
}

function dueMonths({ from, dueHours, received }: ReportPlan, asOf: Moment): DueMonth[] {
  const months: DueMonth[] = []
  const first = new Map<string, Moment>()
  for (const { month, on } of received) {
    const known = first.get(month)
    if (known === undefined || on.day < known.day) first.set(month, on)
  }
  for (let number = monthNumber(from); ; number += 1) {
    const month = monthOfNumber(number)
    const due = reportDue(month, dueHours)
    if (!isBy(due, asOf) || due.day === asOf.day) return months
    months.push({ month, due, received: first.get(month) })
  }
}

function missing(source: string, months: readonly DueMonth[]): Finding[] {
  const runs: DueMonth[][] = []
  months.forEach((one, place) => {
    if (one.received !== undefined) return
    const isFirst = place === 0 || months[place - 1]?.received !== undefined
    if (isFirst) runs.push([])
    runs.at(-1)?.push(one)
  })
  return runs.flatMap((run) => {
    const [first, last] = [run[0], run.at(-1)]
    if (first === undefined || last === undefined) return []
    const params = { source, first: first.month, last: last.month, months: run.length, due: first.due.text }
    return [found(source, { code: 'report-missing', params }, first.month)]
  })
}

function late(source: string, { month, due, received }: DueMonth): Finding[] {
  if (received === undefined || isBy(received, due)) return []
  const daysLate = daysBetween(due, received)
  const params = { source, month, due: due.text, received: received.text, daysLate }
  return [found(source, { code: 'report-late', params }, month)]
}
