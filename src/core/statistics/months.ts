/** Effects of the calendar month. */
import { twoSampleT } from './student-t-test.ts'

export interface MonthDifference {
  /** 1 for January. */
  readonly month: number
  readonly n: number
  /** Mean of the month's values less the mean of all others. */
  readonly difference: number
  /** Interval of the difference. */
  readonly interval: readonly [number, number]
  readonly df: number
}

/**
 * How far each month's values lie from those of all other months.
 * @param values with their month, 1 to 12
 * @param least values that a month needs, two or more; other months are left out
 * @param level of confidence of the interval, between 0 and 1; for twelve months at once divide the rest by twelve
 * Notes: 1. three results of a month have no scatter of their own to speak of: all months share one; 2. months that do not scatter at all, nor the others, are left out.
 * Source: interval with one scatter for all as of `twoSampleT`; the comparison with the others is an own choice.
 */
export function monthDifferences(
  values: readonly { readonly month: number; readonly value: number }[],
  least: number,
  level: number,
): MonthDifference[] {
  const byMonth = [...Map.groupBy(values, ({ month }) => month)].sort(([a], [b]) => a - b)
  return byMonth.flatMap(([month, own]) => {
    const others = values.filter((one) => one.month !== month).map(({ value }) => value)
    if (own.length < least || others.length < least) return []
    const ofMonth = own.map(({ value }) => value)
    const test = twoSampleT(ofMonth, others, { form: 'pooled', confidence: level })
    return test === null
      ? []
      : [{ month, n: own.length, difference: test.difference, interval: test.interval, df: test.df }]
  })
}
