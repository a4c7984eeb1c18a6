/** The days that a form asks for: read once from its fields. */
import { inForce, type Moment, momentIn } from '../core/measure/moment.ts'

/** First and last day, both included; without one, any. */
export interface Period {
  readonly from?: Moment
  readonly to?: Moment
}

/** @param field text of a form's field; one that is no date asks for nothing */
export function periodOf(field: (name: 'from' | 'to') => string): Period {
  const [from, to] = [momentIn(field('from')), momentIn(field('to'))]
  return { ...(from !== null && { from }), ...(to !== null && { to }) }
}

/** Whether a day lies within a period; one that is not known lies within any. */
export function liesWithin(day: Moment | null, period: Period): boolean {
  return day === null || inForce(period, day)
}
