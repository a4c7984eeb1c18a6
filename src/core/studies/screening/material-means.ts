/** A material's index at one condition: the mean of its batches on the log scale, since the unit is the material. */
import { mean } from '../../statistics/descriptive.ts'
import { quantile } from '../../statistics/distributions.ts'
import { pooledVariance } from '../../statistics/pooled-variance.ts'
import { censoredLogMean, censoredLogNormal, type Reading, wholeReadings } from './censored-mean.ts'

/** What a material is known to be, from elsewhere than the indices judged here. */
export type MaterialClass = 'inert' | 'weak' | 'reactive'

export interface MaterialBatches {
  readonly material: string
  readonly class: MaterialClass
  /** An index for each batch, %, above zero. */
  readonly batches: readonly Reading[]
}

export interface MaterialMean {
  readonly material: string
  readonly class: MaterialClass
  readonly n: number
  /** Geometric mean of the batches, %; where all are above a bound, the largest bound. */
  readonly value: number
  /** All batches are above a bound: the material ranks on top, and a threshold above `value` is undecided for it. */
  readonly above: boolean
  /** Some, not all, batches are above a bound. */
  readonly censored: number
  /** Batches that the mean rests on: all of them, less what those above a bound leave open. */
  readonly restsOn: number
  /** Between batches, at the level asked for; null for one that is above a bound, and where nothing can be pooled. */
  readonly interval: readonly [number, number] | null
}

export interface ConditionMeans {
  readonly means: readonly MaterialMean[]
  /** Between batches of a material, of the natural logarithms, pooled over materials; null without two batches of any. */
  readonly between: { readonly deviation: number; readonly df: number } | null
  readonly level: number
}

/**
 * Means of all materials at one condition, with intervals from the scatter between batches pooled over them.
 * @param materials each with one batch at least
 * @param level of the intervals, between 0 and 1
 * @returns in the order given
 * Note: batches above a bound give no scatter; a material with some of them takes its mean by the censored likelihood with the
 * scatter pooled over the others, and with its own only where nothing can be pooled; its interval is the wider for what a bound
 * does not tell.
 */
export function conditionMeans(materials: readonly MaterialBatches[], level: number): ConditionMeans {
  const between = pooledBetween(materials)
  return {
    level,
    between,
    means: materials.map(({ material, class: own, batches }) => {
      const censored = batches.filter(({ above }) => above).length
      const above = censored === batches.length
      const log = above ? Math.max(...batches.map(({ value }) => Math.log(value))) : logMean(batches, between)
      const rests = above || between === null ? batches.length : restsOn(batches, log, between)
      const half =
        above || between === null
          ? null
          : (quantile((1 + level) / 2, between.df) * between.deviation) / Math.sqrt(rests)
      return {
        material,
        class: own,
        n: batches.length,
        // A bound keeps its own digits: a threshold at the bound is decided.
        value: above ? Math.max(...batches.map(({ value }) => value)) : Math.exp(log),
        above,
        censored: above ? 0 : censored,
        restsOn: rests,
        interval: half === null ? null : ([Math.exp(log - half), Math.exp(log + half)] as const),
      }
    }),
  }
}

function logMean(batches: readonly Reading[], between: ConditionMeans['between']): number {
  if (batches.every(({ above }) => !above)) return mean(batches.map(({ value }) => Math.log(value)))
  if (between !== null && 0 < between.deviation) return censoredLogMean(batches, between.deviation)
  // Without a likelihood to maximize, one value and bounds below it: the value says most.
  return censoredLogNormal(batches)?.mean ?? Math.max(...batches.map(({ value }) => Math.log(value)))
}

/** Batches that a mean rests on; without a scatter nothing tells how much less one above a bound says. */
function restsOn(
  batches: readonly Reading[],
  log: number,
  { deviation }: NonNullable<ConditionMeans['between']>,
): number {
  return deviation === 0 ? batches.length : wholeReadings(batches, log, deviation)
}

function pooledBetween(materials: readonly MaterialBatches[]): ConditionMeans['between'] {
  const whole = materials.filter(({ batches }) => batches.every(({ above }) => !above))
  const pooled = pooledVariance(whole.map(({ batches }) => batches.map(({ value }) => Math.log(value))))
  return pooled && { deviation: Math.sqrt(pooled.meanSquare), df: pooled.df }
}
