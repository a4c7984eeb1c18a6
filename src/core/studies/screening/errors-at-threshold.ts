/** How often a threshold would judge a material wrongly. */
import { mean } from '../../statistics/descriptive.ts'
import { cumulative } from '../../statistics/distributions.ts'
import { largestShare } from '../../statistics/share-bounds.ts'
import type { ConditionMeans, MaterialMean } from './material-means.ts'

/** Errors of one class at a threshold. */
export interface ClassErrors {
  readonly n: number
  /** Materials on the wrong side: inert ones that pass, reactive ones that fail. */
  readonly wrong: readonly string[]
  /** Materials known only as above a bound that lies below the threshold: nobody can say. */
  readonly undecided: readonly string[]
  /** Largest share of new materials of the class that the count allows, one-sided; undecided ones count as wrong. */
  readonly newMaterial: number
  /**
   * Mean chance that a further mean of so many batches of these materials falls on the wrong side; null without a scatter
   * between batches, and where one of them is undecided. It says nothing of other materials.
   */
  readonly furtherBatches: number | null
}

export interface ErrorsAtThreshold {
  /** Index, %. */
  readonly threshold: number
  readonly inert: ClassErrors
  readonly reactive: ClassErrors
}

export interface ErrorsAsked {
  /** Batches whose mean is to be judged. */
  readonly batches: number
  /** One-sided level of the bounds, between 0 and 1. */
  readonly level: number
}

/**
 * Errors at a threshold: a material passes where its index is at or above it.
 * @param means of all materials at the condition; weak ones stand aside
 * @param threshold index, %, above zero
 * @throws RangeError where one of the classes has no material
 * Notes: 1. the bound for a new material takes the study's materials as a sample of all such materials, which is an
 * assumption; 2. that for further batches adds what is not known of a material's own mean, and keeps it between Student's tails;
 * a material known only as above a bound is taken as sure to pass a threshold up to it.
 */
export function errorsAt(means: ConditionMeans, threshold: number, asked: ErrorsAsked): ErrorsAtThreshold {
  const of = (own: 'inert' | 'reactive') => means.means.filter((one) => one.class === own)
  return {
    threshold,
    inert: classErrors(of('inert'), { means, threshold, asked, wrongAbove: 1 }),
    reactive: classErrors(of('reactive'), { means, threshold, asked, wrongAbove: -1 }),
  }
}

interface Judging {
  readonly means: ConditionMeans
  readonly threshold: number
  readonly asked: ErrorsAsked
  /** 1 where passing is the error, −1 where failing is. */
  readonly wrongAbove: 1 | -1
}

function classErrors(own: readonly MaterialMean[], judging: Judging): ClassErrors {
  const { threshold, asked, wrongAbove } = judging
  if (own.length === 0) throw new RangeError('errorsAt needs a material of each class, got none of one')
  const undecided = own.filter(({ above, value }) => above && value < threshold)
  const wrong = own.filter((one) => !undecided.includes(one) && threshold <= one.value === (wrongAbove === 1))
  return {
    n: own.length,
    wrong: wrong.map(({ material }) => material),
    undecided: undecided.map(({ material }) => material),
    newMaterial: largestShare(wrong.length + undecided.length, own.length, asked.level),
    furtherBatches: undecided.length === 0 ? furtherBatches(own, judging) : null,
  }
}

function furtherBatches(
  own: readonly MaterialMean[],
  { means, threshold, asked, wrongAbove }: Judging,
): number | null {
  const { between } = means
  if (between === null || between.deviation === 0) return null
  const chances = own.map(({ value, restsOn, above }) => {
    if (above) return wrongAbove === 1 ? 1 : 0
    // The mean of m further batches scatters by √(1/m + 1/n) about the mean found, which rests on n.
    const reach = between.deviation * Math.sqrt(1 / asked.batches + 1 / restsOn)
    return cumulative((wrongAbove * (Math.log(value) - Math.log(threshold))) / reach, between.df)
  })
  return mean(chances)
}
