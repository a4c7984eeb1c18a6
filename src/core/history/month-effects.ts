/** Effects of the calendar month on a series, each segment about its own mean. */
import { type Moment, monthNumber, monthOf } from '../measure/moment.ts'
import { mean } from '../statistics/descriptive.ts'
import { monthDifferences } from '../statistics/months.ts'
import type { ComparableGroup } from './comparable-points.ts'
import { LEAST_BASELINE, ownCorrelation } from './control-charts.ts'
import { LEVEL, notShown, type Shown } from './not-shown.ts'
import type { MonthEffects } from './segment-figures.ts'

/** Results that a month needs. */
const LEAST = 3
/** Months of the calendar that results must span, so that each month was seen twice: common practice, no source. */
const SPAN = 24

/**
 * How far the results of each month lie from those of all others.
 * @param groups of a series; those of fewer than eight points have no mean to speak of and are left out
 * Notes: 1. points count as deviations from the mean of their segment, which takes some of a season out where
 * segments are shorter than a year; 2. each mean of a segment takes a degree of freedom; 3. intervals hold for all months at once (Bonferroni).
 */
export function monthEffects(groups: readonly ComparableGroup[]): Shown<MonthEffects> {
  const used = groups.filter(({ points }) => LEAST_BASELINE <= points.length)
  const points = used.flatMap((group) => group.points)
  const bounded = points.filter((point) => point.bounded).length
  if (0 < bounded) return notShown({ code: 'known-within-bounds', params: { n: bounded } })
  const months = spanOf(points)
  if (months < SPAN) return notShown({ code: 'too-short', params: { months, needed: SPAN } })
  const deviations = used.flatMap((group) => {
    const centre = mean(group.points.map(({ value }) => value))
    return group.points.map(({ sampled, value }) => ({
      month: (monthNumber(monthOf(sampled)) % 12) + 1,
      value: value - centre,
    }))
  })
  const found = monthDifferences(deviations, LEAST, 1 - (1 - LEVEL) / 12, used.length - 1)
  if (found.length === 0) return notShown({ code: 'too-few-a-month', params: { needed: LEAST } })
  const widened = wideningOf(used)
  return {
    shown: true,
    months: found.map(({ month, n, difference, interval: [from], df }) => {
      const half = (difference - from) * widened
      const [low, high] = [difference - half, difference + half]
      return { month, n, difference, interval: { low, high, level: LEVEL, df }, clear: 0 < low || high < 0 }
    }),
  }
}

/** Neighbours that are alike make a month's mean the less certain. */
function wideningOf(groups: readonly ComparableGroup[]): number {
  const phi = mean(groups.map(({ points }) => ownCorrelation(points)))
  return Math.sqrt((1 + phi) / (1 - phi))
}

/** Months of the calendar from the first to the last, both counted. */
function spanOf(points: readonly { readonly sampled: Moment }[]): number {
  const counted = points.map(({ sampled }) => monthNumber(monthOf(sampled)))
  return counted.length === 0
    ? 0
    : counted.reduce((a, b) => Math.max(a, b)) - counted.reduce((a, b) => Math.min(a, b)) + 1
}
