/** The index beside a reference reactivity of the same materials: order, line, and who disagrees. */
import { type TwoErrorLine, twoErrorLine } from '../../statistics/errors-in-variables.ts'
import { rankCorrelation } from '../../statistics/rank-correlation.ts'
import type { MaterialMean } from './material-means.ts'

/** A material with its index and its reference value. */
export interface Referenced {
  readonly mean: MaterialMean
  /** In the unit of the reference. */
  readonly reference: number
}

/** A material on one side by its index, on the other by its reference. */
export interface Disagreement {
  readonly material: string
  readonly index: 'above' | 'below'
}

export interface AgainstReference {
  readonly n: number
  /** Spearman's; materials above a bound rank on top. */
  readonly rankCorrelation: number | null
  /** The same of the reactive materials alone, without the step between the classes. */
  readonly amongReactive: { readonly n: number; readonly rankCorrelation: number | null }
  /** Of the natural logarithms of both; null where it cannot be drawn. */
  readonly line: TwoErrorLine | null
  /** Left out of the line: index known only as above a bound, or a reference of zero. */
  readonly offLine: readonly string[]
  readonly highestInert: number | null
  readonly lowestReactive: number | null
  /** Halfway from the highest inert to the lowest reactive reference; null where the classes overlap in it, or one is missing. */
  readonly boundary: number | null
  /** Null without a boundary or a threshold. */
  readonly disagreements: readonly Disagreement[] | null
  /** Above a bound that lies below the threshold: nobody can say on which side. */
  readonly undecided: readonly string[]
}

/** Error variance of ln index over that of ln reference: both taken to scatter alike, as ratios. */
export const REFERENCE_ERROR_RATIO = 1

/**
 * An index against a reference reactivity.
 * @param all materials that have both, weak ones too
 * @param threshold of the index, %; null without one
 * Notes: 1. a material passes at its threshold, and is above the boundary at the boundary; 2. the boundary takes the classes as
 * given, so that inert and reactive materials lie on their own side of it; 3. nothing here says why two measures disagree.
 */
export function againstReference(all: readonly Referenced[], threshold: number | null): AgainstReference {
  const of = (own: MaterialMean['class']) => all.filter(({ mean }) => mean.class === own)
  const [inert, reactive] = [of('inert'), of('reactive')]
  const highestInert = inert.length === 0 ? null : Math.max(...inert.map(({ reference }) => reference))
  const lowestReactive =
    reactive.length === 0 ? null : Math.min(...reactive.map(({ reference }) => reference))
  const boundary =
    highestInert === null || lowestReactive === null || lowestReactive <= highestInert
      ? null
      : (highestInert + lowestReactive) / 2
  const onLine = all.filter(({ mean, reference }) => !mean.above && 0 < reference)
  return {
    n: all.length,
    rankCorrelation: ordered(all),
    amongReactive: { n: reactive.length, rankCorrelation: ordered(reactive) },
    line: twoErrorLine(
      onLine.map(({ reference }) => Math.log(reference)),
      onLine.map(({ mean }) => Math.log(mean.value)),
      REFERENCE_ERROR_RATIO,
    ),
    offLine: all.filter((one) => !onLine.includes(one)).map(({ mean }) => mean.material),
    highestInert,
    lowestReactive,
    boundary,
    ...sides(all, boundary, threshold),
  }
}

function sides(
  all: readonly Referenced[],
  boundary: number | null,
  threshold: number | null,
): Pick<AgainstReference, 'disagreements' | 'undecided'> {
  if (boundary === null || threshold === null) return { disagreements: null, undecided: [] }
  const open = all.filter(({ mean }) => mean.above && mean.value < threshold)
  return {
    undecided: open.map(({ mean }) => mean.material),
    disagreements: all
      .filter((one) => !open.includes(one))
      .filter(({ mean, reference }) => threshold <= mean.value !== boundary <= reference)
      .map(({ mean }) => ({
        material: mean.material,
        index: threshold <= mean.value ? 'above' : 'below',
      })),
  }
}

function ordered(all: readonly Referenced[]): number | null {
  return rankCorrelation(
    all.map(({ reference }) => reference),
    all.map(({ mean }) => (mean.above ? Number.POSITIVE_INFINITY : mean.value)),
  )
}
