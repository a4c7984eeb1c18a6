/** How much each factor moves a result between its low and its high level, and whether that is more than error. */
import { mean } from '../../statistics/descriptive.ts'
import { cumulative, quantile } from '../../statistics/distributions.ts'
import { median } from '../../statistics/median.ts'
import { pooledVariance } from '../../statistics/pooled-variance.ts'
import type { Run } from './design.ts'

/** A run with its results: one, or replicates made from new batches. */
export interface RunResults extends Run {
  readonly values: readonly number[]
}

export interface Effect {
  /** Place of the factor, from 0. */
  readonly factor: number
  /** Mean at the high level less mean at the low one, in the unit of the results. */
  readonly effect: number
  /** Half width of its interval; null where there is no error to hold it against, and for a dummy column that is the error. */
  readonly half: number | null
  /** Two-sided chance of an effect as large without a cause; null likewise. */
  readonly p: number | null
}

export interface Ruggedness {
  readonly mean: number
  readonly effects: readonly Effect[]
  /** What the error of an effect was taken from: replicates of the runs, columns without a factor, or the small effects themselves. */
  readonly error: {
    readonly from: 'replicates' | 'dummy-columns' | 'small-effects'
    /** Of one effect. */
    readonly standardError: number
    readonly df: number
  } | null
  /** Between replicates of a run; null without replicates. */
  readonly repeatability: number | null
  readonly level: number
}

/**
 * Effects of a two-level design.
 * @param runs of a design without a fault (`designFaults`), each with one result at least; its mean counts
 * @param level of the intervals, between 0 and 1
 * @param dummies places of columns that stand for no factor
 * @returns effects in the order of the factors; without error where replicates agree wholly and all effects are nought
 * Notes: 1. with replicates the error is theirs, pooled over runs; 2. without them it is the root mean square of the dummy
 * columns' effects, with as many degrees of freedom, which holds parts of interactions as well; 3. without either it is Lenth's, from
 * the effects that stand out least, which assumes that most factors do nothing; 4. an effect is that of the factor and of the
 * interactions mixed up with it (`aliases`).
 * Source: ASTM E1169 and C1067 (from memory); dummy columns: IUPAC 2016, PAC 88, 407, "Plackett-Burman design" (read); effects as in Box, Hunter and Hunter 1978, chapter 12 (its example is checked);
 * Lenth 1989, Technometrics 31, 469-473.
 */
export function ruggedness(
  runs: readonly RunResults[],
  level: number,
  dummies: readonly number[] = [],
): Ruggedness {
  const means = runs.map(({ values }) => mean(values))
  const factors = runs[0]?.levels.length ?? 0
  const effects = Array.from({ length: factors }, (_, factor) => effectOf(runs, means, factor))
  const replicates = replicateError(runs)
  const error =
    replicates?.error ?? (dummies.length === 0 ? lenthError(effects) : dummyError(effects, dummies))
  const isHeld = (factor: number) => error?.from !== 'dummy-columns' || !dummies.includes(factor)
  const reach = error === null ? 0 : quantile((1 + level) / 2, error.df) * error.standardError
  return {
    mean: mean(means),
    effects: effects.map((effect, factor) => ({
      factor,
      effect,
      half: error === null || !isHeld(factor) ? null : reach,
      p:
        error === null || !isHeld(factor)
          ? null
          : 2 * cumulative(-Math.abs(effect) / error.standardError, error.df),
    })),
    error,
    repeatability: replicates?.repeatability ?? null,
    level,
  }
}

function effectOf(runs: readonly Run[], means: readonly number[], factor: number): number {
  const at = (level: number) => mean(means.filter((_, run) => runs[run]?.levels[factor] === level))
  return at(1) - at(-1)
}

function replicateError(
  runs: readonly RunResults[],
): { error: NonNullable<Ruggedness['error']>; repeatability: number } | null {
  const pooled = pooledVariance(runs.map(({ values }) => values))
  if (pooled === null || pooled.meanSquare === 0) return null
  const { meanSquare: variance, df } = pooled
  // An effect is 2/N Σ ± means: its variance 4/N² Σ σ²/n.
  const inverse = runs.reduce((total, { values }) => total + 1 / values.length, 0)
  return {
    error: { from: 'replicates', standardError: (2 / runs.length) * Math.sqrt(variance * inverse), df },
    repeatability: Math.sqrt(variance),
  }
}

/** Root mean square of the effects of columns that stand for no factor. */
function dummyError(effects: readonly number[], dummies: readonly number[]): Ruggedness['error'] {
  const square = mean(dummies.map((place) => (effects[place] ?? 0) ** 2))
  return square === 0 ? null : { from: 'dummy-columns', standardError: Math.sqrt(square), df: dummies.length }
}

/** Lenth 1989: 1.5 times the median of the effects, again without those beyond 2.5 times that; a third of them as df. */
function lenthError(effects: readonly number[]): Ruggedness['error'] {
  const sizes = effects.map(Math.abs)
  const first = 1.5 * median(sizes)
  const standardError = 1.5 * median(sizes.filter((size) => size < 2.5 * first))
  return 0 < standardError ? { from: 'small-effects', standardError, df: effects.length / 3 } : null
}

/**
 * Where effects without a cause would lie on half-normal paper.
 * @param effects in any unit
 * @returns smallest first, each with the factor it is of and its score: the normal quantile at ½ + (i − ½)/2m
 * Source: Daniel 1959, Technometrics 1, 311-341 (from memory); scores checked.
 */
export function halfNormal(
  effects: readonly number[],
): { readonly factor: number; readonly size: number; readonly score: number }[] {
  return effects
    .map((effect, factor) => ({ factor, size: Math.abs(effect) }))
    .toSorted((a, b) => a.size - b.size || a.factor - b.factor)
    .map((entry, place) => ({ ...entry, score: quantile(0.5 + (place + 0.5) / (2 * effects.length)) }))
}
