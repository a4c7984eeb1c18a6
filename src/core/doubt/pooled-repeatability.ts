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
 * @param batches of one property, condition and age, in any order; means above zero
 * @returns one step for each day on which batches were tested, once two degrees of freedom are there
 * Method: variance of ln(mean) within groups, sums of squares over degrees of freedom; the root is the
 * coefficient of variation.
 * One-way components of variance with unequal groups (Searle 1971, Linear Models, chapter 10; from memory):
 * what is pooled holds
 * the scatter of specimens as far as it enters a mean.
 */
export function pooledSteps(batches: readonly Batch[]): PooledStep[] {
  const groups = new Map<string, { n: number; mean: number }>()
  let [squares, df] = [0, 0]
  const steps: PooledStep[] = []
  const ordered = batches.filter((batch) => 0 < batch.mean).toSorted(inOrder)
  for (const [place, batch] of ordered.entries()) {
    const group = groups.get(batch.group) ?? { n: 0, mean: 0 }
    groups.set(batch.group, group)
    // Welford 1962 (Technometrics 4, 419-420): sums of squares one value at a time.
    const value = Math.log(batch.mean)
    group.n += 1
    const delta = value - group.mean
    group.mean += delta / group.n
    squares += delta * (value - group.mean)
    df += group.n === 1 ? 0 : 1
    const next = ordered[place + 1]
    if (df < LEAST_DF || next?.tested.day === batch.tested.day) continue
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
 * The uncertainty of an index from repeated batches of single lots tested before it; undefined while they are
 * few.
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
 * Coefficient of variation of an index in per cent, from that of its control's means.
 * Note: test batches are taken to scatter as control batches do, so that the ratio of two means scatters by
 * √2 of one: own assumption.
 */
export function indexScatter(controlPercent: number): number {
  return Math.SQRT2 * controlPercent
}

/**
 * The uncertainty of an index from the control batches of its laboratory tested before it.
 * @param steps of the control's own property at the index's condition and age
 * Note: rests on the assumption of `indexScatter`, said in the basis.
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
