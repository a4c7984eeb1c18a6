/** A later age of an index foretold from an earlier one, from past pairs of the same source and laboratory. */
import { lineThrough, predicted } from '../statistics/least-squares.ts'
import { LEVEL, notShown, type Shown } from './not-shown.ts'
import type { AgeFit } from './source-history.ts'

/** A mortar at an earlier age, and at the later one where it is known. */
export interface AgePair {
  readonly lot: string
  readonly early: number
  /** Absent while it is awaited. */
  readonly late?: number
}

/** Fewer pairs foretell nothing: own choice. */
const LEAST = 10

/**
 * The line of later on earlier results, and what it says of lots that await the later one.
 * @param pairs of one laboratory, condition and class, in order of sampling
 * @returns with the interval that a single later result falls into
 * Note: pairs that share a control are taken as independent, which makes the interval a little too narrow.
 */
export function ageFit(pairs: readonly AgePair[]): Shown<AgeFit> {
  const past = pairs.filter((pair): pair is AgePair & { late: number } => pair.late !== undefined)
  if (past.length < LEAST) return notShown({ code: 'too-few', params: { n: past.length, needed: LEAST } })
  const early = past.map((pair) => pair.early)
  const [least, most] = [early.reduce((a, b) => Math.min(a, b)), early.reduce((a, b) => Math.max(a, b))]
  if (least === most) return notShown({ code: 'no-scatter', params: {} })
  const line = lineThrough(
    early,
    past.map(({ late }) => late),
  )
  return {
    shown: true,
    pairs: past.length,
    intercept: line.meanY - line.slope * line.meanX,
    slope: line.slope,
    standardDeviation: line.residualDeviation,
    r: line.r ?? 0,
    open: pairs
      .filter(({ late }) => late === undefined)
      .map(({ lot, early: x }) => {
        const { value, half } = predicted(line, x, LEVEL)
        const interval = { low: value - half, high: value + half, level: LEVEL, df: line.n - 2 }
        return { lot, early: x, predicted: value, interval, extrapolated: x < least || most < x }
      }),
  }
}
