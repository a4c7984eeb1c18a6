/** Effects of the calendar month. */
import { quantile } from './distributions.ts'
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
 * @param spent degrees of freedom that went into the values beside the one mean of all: where they are deviations from
 * the means of several groups, one less than there are groups
 * Notes: 1. three results of a month have no scatter of their own to speak of: all months share one; 2. months that do not scatter at all, nor the others, are left out.
 * Source: interval with one scatter for all as of `twoSampleT`; the comparison with the others is an own choice.
 */
export function monthDifferences(
  values: readonly { readonly month: number; readonly value: number }[],
  least: number,
  level: number,
  spent = 0,
): MonthDifference[] {
  const byMonth = [...Map.groupBy(values, ({ month }) => month)].sort(([a], [b]) => a - b)
  return byMonth.flatMap(([month, own]) => {
    const others = values.filter((one) => one.month !== month).map(({ value }) => value)
    if (own.length < least || others.length < least) return []
    const ofMonth = own.map(({ value }) => value)
    const test = twoSampleT(ofMonth, others, { form: 'pooled', confidence: level })
    const df = values.length - 2 - spent
    if (test === null || df < 1) return []
    const { difference, standardError } = test
    // The squares of the residuals are shared by fewer degrees of freedom.
    const half = quantile((1 + level) / 2, df) * standardError * Math.sqrt(test.df / df)
    return [{ month, n: own.length, difference, interval: [difference - half, difference + half], df }]
  })
}
