/** A laboratory's scatter between batches, pooled from its own earlier work where it states none. */
import { compareTexts } from '../measure/compare-texts.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import { compareMoments, momentOfDay, type Moment } from '../measure/moment.ts'
import { knownSince, type Result } from '../result/result.ts'
import { toSignificant } from '../measure/rounding.ts'

/**
 * One batch's mean: batches of a group were made alike (one cement lot, one material lot) and should agree.
 */
export interface Batch {
  readonly group: string
  readonly tested: Moment
  readonly mean: number
  /** Day from which it stood so, since 1970-01-01, where not from that of its test. */
  readonly from?: number
  /** Day from which it no longer did: a retest replaced it, or a specimen was excluded. */
  readonly until?: number
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
 * @returns one step for each day on which batches became known or changed, once two degrees of freedom are
 * there; coefficients of variation to six significant digits
 * Notes: 1. batches with a mean of zero or below are left out; 2. batches of a group were made alike, and
 * only their scatter about the group's own mean counts; 3. what is pooled holds the scatter of specimens as
 * far as it enters a mean; 4. the standard deviation of ln(mean) stands for the coefficient of variation, to
 * first order: 20 % for 20.2 %; 5. a step never changes by what became known later.
 * Source: pooled by degrees of freedom, JCGM 100:2008, 4.2.4; sums of squares by Welford 1962, Technometrics
 * 4, 419-420.
 */
export function pooledSteps(batches: readonly Batch[]): PooledStep[] {
  const pool = new Pool()
  const steps: PooledStep[] = []
  const changes = changesOf(batches.filter((batch) => 0 < batch.mean))
  for (const [place, { day, batch, stands }] of changes.entries()) {
    if (stands) pool.add(batch)
    else pool.remove(batch)
    // A step with fewer degrees of freedom is told only where it ends one with more.
    const few = pool.df < LEAST_DF && steps.length === 0
    if (few || changes[place + 1]?.day === day) continue
    steps.push([momentOfDay(day), toSignificant(pool.percent(), 6), pool.df])
  }
  return steps
}

/** Means of batches by group, with the scatter within groups. */
class Pool {
  df = 0
  #squares = 0
  readonly #groups = new Map<string, { values: number[]; mean: number }>()

  add({ group, mean }: Batch): void {
    const own = this.#groups.get(group) ?? { values: [], mean: 0 }
    this.#groups.set(group, own)
    // Welford 1962: S += (x − mean before) (x − mean after).
    const value = Math.log(mean)
    own.values.push(value)
    const delta = value - own.mean
    own.mean += delta / own.values.length
    this.#squares += delta * (value - own.mean)
    this.df += own.values.length === 1 ? 0 : 1
  }

  /** Takes out a batch that was added. */
  remove({ group, mean }: Batch): void {
    const own = this.#groups.get(group)
    const place = own?.values.indexOf(Math.log(mean)) ?? -1
    if (own === undefined || place < 0) return
    // The same step backwards: x goes out of its group's mean.
    const [value = 0] = own.values.splice(place, 1)
    const n = own.values.length
    const after = n === 0 ? 0 : own.mean - (value - own.mean) / n
    this.#squares -= (value - own.mean) * (n === 0 ? 0 : value - after)
    own.mean = after
    this.df -= n === 0 ? 0 : 1
  }

  /** JCGM 100:2008, 4.2.4: pooled by degrees of freedom. */
  percent(): number {
    return this.df === 0 ? 0 : 100 * Math.sqrt(Math.max(0, this.#squares) / this.df)
  }
}

interface Change {
  readonly day: number
  readonly batch: Batch
  /** Whether the batch stands from that day on, or no longer does. */
  readonly stands: boolean
}

/** Day by day, so that the steps are; within a day what ends before what begins, by moment, group and mean. */
function changesOf(batches: readonly Batch[]): Change[] {
  return batches
    .flatMap((batch) => [
      { day: batch.from ?? batch.tested.day, batch, stands: true },
      ...(batch.until === undefined ? [] : [{ day: batch.until, batch, stands: false }]),
    ])
    .sort(
      (a, b) =>
        a.day - b.day ||
        Number(a.stands) - Number(b.stands) ||
        compareMoments(a.batch.tested, b.batch.tested) ||
        compareTexts(a.batch.group, b.batch.group) ||
        a.batch.mean - b.batch.mean,
    )
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
 * The uncertainty of an index from repeated batches of single lots known before it.
 * @param steps of the index at its condition and age, in order of date
 * @returns standard, in the index's unit; undefined while batches are few
 * Note: batches of the day on which the index became known do not count.
 */
export function repeatedUncertainty(steps: readonly PooledStep[], result: Result): Uncertainty | undefined {
  const step = lastBefore(steps, result)
  if (step === undefined || step[2] < DIRECT_DF) return undefined
  const [, cv, df] = step
  return {
    u: (Math.abs(result.value) * cv) / 100,
    df,
    basis: { code: 'repeated-batches', params: { cvPercent: cv, df } },
  }
}

/** Key of a pooled series within a laboratory; "72 h" and "3 d" are one age. */
export function pooledKey({
  property,
  condition,
  age,
}: Pick<Result, 'property' | 'condition' | 'age'>): string {
  return [property, condition ?? '', age?.hours ?? ''].join('|')
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
 * The uncertainty of an index from the control batches of its laboratory known before it.
 * @param steps of the control's own property at the index's condition and age, in order of date
 * @returns standard, in the index's unit; undefined without an earlier step
 * Notes: 1. batches of the day on which the index became known do not count; 2. rests on the assumption of `indexScatter`, said in
 * the basis.
 */
export function pooledUncertainty(steps: readonly PooledStep[], result: Result): Uncertainty | undefined {
  const step = lastBefore(steps, result)
  if (step === undefined || step[2] < LEAST_DF) return undefined
  const [, cv, df] = step
  return {
    u: (Math.abs(result.value) * indexScatter(cv)) / 100,
    df,
    basis: { code: 'control-batches', params: { cvPercent: cv, df } },
  }
}

/** Steps are in order of date; of a result counts what was known before it was. */
function lastBefore(steps: readonly PooledStep[], result: Result): PooledStep | undefined {
  return steps[firstAtOrAfter(steps, ([after]) => after.day, knownSince(result).day) - 1]
}
