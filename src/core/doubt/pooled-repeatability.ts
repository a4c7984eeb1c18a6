/** A laboratory's scatter between batches, pooled from its own earlier work where it states none. */
import type { Uncertainty } from '../result/uncertainty.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import { compareMoments, dateOf, type Moment } from '../measure/moment.ts'
import type { Result } from '../result/result.ts'

/**
 * One batch's mean: batches of a group were made alike (one cement lot, one material lot) and should agree.
 */
export interface Batch {
  readonly group: string
  readonly tested: Moment
  readonly mean: number
}

/**
 * From the day after `after` on: coefficient of variation between batches in per cent, and its degrees of
 * freedom.
 */
export type PooledStep = readonly [after: Moment, cvPercent: number, df: number]

/** Fewer degrees of freedom give no figure worth printing: own choice. */
const LEAST_DF = 2
/** Below this the figure is said to rest on few batches: own choice. */
export const FEW_DF = 10

/**
 * The pooled scatter as it grows with the laboratory's work.
 * @param batches of one property, condition and age, in any order, all means in one unit
 * @returns one step for each day on which batches were tested, once two degrees of freedom are there;
 * coefficients of variation to six significant digits
 * Notes: 1. batches with a mean of zero or below are left out; 2. batches of a group were made alike, and
 * only their scatter about the group's own mean counts; 3. what is pooled holds the scatter of specimens as
 * far as it enters a mean; 4. the standard deviation of ln(mean) stands for the coefficient of variation, to
 * first order: 20 % for 20.2 %.
 * Source: pooled by degrees of freedom, JCGM 100:2008, 4.2.4; sums of squares by Welford 1962, Technometrics
 * 4, 419-420.
 */
export function pooledSteps(batches: readonly Batch[]): PooledStep[] {
  const groups = new Map<string, { n: number; mean: number }>()
  let [squares, df] = [0, 0]
  const steps: PooledStep[] = []
  const ordered = batches.filter((batch) => 0 < batch.mean).toSorted(inOrder)
  for (const [place, batch] of ordered.entries()) {
    const group = groups.get(batch.group) ?? { n: 0, mean: 0 }
    groups.set(batch.group, group)
    // Welford 1962: S += (x − mean before) (x − mean after).
    const value = Math.log(batch.mean)
    group.n += 1
    const delta = value - group.mean
    group.mean += delta / group.n
    squares += delta * (value - group.mean)
    df += group.n === 1 ? 0 : 1
    const next = ordered[place + 1]
    if (df < LEAST_DF || next?.tested.day === batch.tested.day) continue
    // JCGM 100:2008, 4.2.4: pooled by degrees of freedom.
    steps.push([
      dateOf(batch.tested),
      Number((100 * Math.sqrt(Math.max(0, squares) / df)).toPrecision(6)),
      df,
    ])
  }
  return steps
}

/** Day by day, so that the steps are; then by moment and group. */
function inOrder(a: Batch, b: Batch): number {
  return a.tested.day - b.tested.day || compareMoments(a.tested, b.tested) || (a.group < b.group ? -1 : 1)
}

/**
 * Repeated batches of one lot measure the scatter of an index itself; below so many degrees of freedom
 * control batches tell more: own choice.
 */
const DIRECT_DF = 5

/** Key of the series pooled from repeated batches of one lot. */
export function repeatedKey(result: Pick<Result, 'property' | 'condition' | 'age'>): string {
  return `${pooledKey(result)}|repeated`
}

/**
 * The uncertainty of an index from repeated batches of single lots tested before it.
 * @param steps of the index at its condition and age, in order of date
 * @returns standard, in the index's unit; undefined while batches are few
 * Note: batches of the test's own day do not count.
 */
export function repeatedUncertainty(steps: readonly PooledStep[], result: Result): Uncertainty | undefined {
  const step = lastBefore(steps, result.tested)
  if (step === undefined || step[2] < DIRECT_DF) return undefined
  const [, cv, df] = step
  return {
    u: (Math.abs(result.value) * cv) / 100,
    df,
    basis: { code: 'repeated-batches', params: { cvPercent: cv, df } },
  }
}

/** Key of a pooled series within a laboratory. */
export function pooledKey({
  property,
  condition,
  age,
}: Pick<Result, 'property' | 'condition' | 'age'>): string {
  return [property, condition ?? '', age?.text ?? ''].join('|')
}

/**
 * Coefficient of variation of an index, from that of its control's means.
 * @param controlPercent between batches, per cent
 * @returns per cent of the index
 * Note: test batches are taken to scatter as control batches do, independently of them: own assumption.
 * Source: JCGM 100:2008, 5.1.6, equation (12), for a ratio of two means.
 */
export function indexScatter(controlPercent: number): number {
  // JCGM 100:2008, 5.1.6, equation (12), exponents 1 and −1 and equal relative uncertainties: √(1 + 1).
  return Math.SQRT2 * controlPercent
}

/**
 * The uncertainty of an index from the control batches of its laboratory tested before it.
 * @param steps of the control's own property at the index's condition and age, in order of date
 * @returns standard, in the index's unit; undefined without an earlier step
 * Notes: 1. batches of the test's own day do not count; 2. rests on the assumption of `indexScatter`, said in
 * the basis.
 */
export function pooledUncertainty(steps: readonly PooledStep[], result: Result): Uncertainty | undefined {
  const step = lastBefore(steps, result.tested)
  if (step === undefined) return undefined
  const [, cv, df] = step
  return {
    u: (Math.abs(result.value) * indexScatter(cv)) / 100,
    df,
    basis: { code: 'control-batches', params: { cvPercent: cv, df } },
  }
}

/** Steps are in order of date. */
function lastBefore(steps: readonly PooledStep[], tested: Moment): PooledStep | undefined {
  return steps[firstAtOrAfter(steps, ([after]) => after.day, tested.day) - 1]
}
