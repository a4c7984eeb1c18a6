/** Fewer points where a panel has more than it has pixels: the lowest and highest of each stretch stay. */

interface Thinnable {
  readonly x: number
  readonly value: number | null
  readonly status: string
  readonly outside: boolean
  readonly breaks: boolean
  readonly off?: boolean
}

/** Points up to which all are drawn, and stretches beyond. */
const ALL = 400
const STRETCHES = 180

/**
 * Every point of a short series; of a long one the lowest and highest of each stretch of the axis, with all that
 * stand out and the last.
 */
export function thinned<Point extends Thinnable>(points: readonly Point[]): Point[] {
  if (points.length <= ALL) return [...points]
  const kept = new Set<Point>(points.filter(standsOut))
  const stretches = Map.groupBy(points, ({ x }) => Math.floor((x / 1000) * STRETCHES))
  for (const own of stretches.values()) for (const point of ends(own)) kept.add(point)
  const last = points.at(-1)
  if (last !== undefined) kept.add(last)
  return points.filter((point) => kept.has(point))
}

function standsOut({ status, outside, breaks, off }: Thinnable): boolean {
  return status !== 'valid' || outside || breaks || off === true
}

function ends<Point extends Thinnable>(points: readonly Point[]): Point[] {
  const known = points.filter(({ value }) => value !== null)
  const [first] = known
  if (first === undefined) return []
  const lower = (a: Point, b: Point) => ((b.value ?? 0) < (a.value ?? 0) ? b : a)
  const higher = (a: Point, b: Point) => ((a.value ?? 0) < (b.value ?? 0) ? b : a)
  return [known.reduce(lower, first), known.reduce(higher, first)]
}
