/** Fewer marks where a scatter has more than it can show: of marks that would cover one another, one is drawn. */

interface Pair {
  readonly strength: number
  readonly resistivity: number
}

/** Marks up to which all are drawn; cells across and upwards beyond, each about as large as a mark. */
const ALL = 400
const [ACROSS, UP] = [80, 40]

/**
 * The last of the points in each cell, in their order; all of few.
 * @param points both values above zero; the second is drawn on a logarithmic axis
 */
export function withoutCovered<Point extends Pair>(points: readonly Point[]): readonly Point[] {
  if (points.length <= ALL) return points
  const across = cellsOf(
    points.map(({ strength }) => strength),
    ACROSS,
  )
  const up = cellsOf(
    points.map(({ resistivity }) => Math.log(resistivity)),
    UP,
  )
  const kept = new Map(
    points.map((point) => [across(point.strength) * (UP + 1) + up(Math.log(point.resistivity)), point]),
  )
  const shown = new Set(kept.values())
  return points.filter((point) => shown.has(point))
}

function cellsOf(values: readonly number[], count: number): (value: number) => number {
  const low = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const high = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  return (value) => Math.floor((count * (value - low)) / Math.max(high - low, Number.MIN_VALUE))
}
