/** Points of a chart: what each stands for, which of them a line joins, and the valid ones as dots. */

/** What is known of a result: only a valid one is joined by the line. */
export type PointStatus = 'valid' | 'not-valid' | 'pending' | 'withdrawn'

/** What a point means for the line: it joins, is passed over, or breaks it. */
export type Joint = 'joined' | 'passed-over' | 'break'

/** The runs of points that a line joins, in their order; empty runs are left out. */
export function runs<Point>(points: readonly Point[], joint: (point: Point) => Joint): Point[][] {
  const found: Point[][] = [[]]
  for (const point of points) {
    const kind = joint(point)
    if (kind === 'joined') found.at(-1)?.push(point)
    else if (kind === 'break') found.push([])
  }
  return found.filter((run) => 0 < run.length)
}

/** Dots as one path of no length, for round caps: thousands of elements would make a page heavy. */
export function dotsPath(middles: readonly { readonly x: number; readonly y: number }[]): string {
  return middles.map(({ x, y }) => `M${x},${y}h0`).join('')
}
