/** The mean of the preceding results on a trend, with the band that results may lie in around it. */
import { area, line } from 'd3'
import { rounded } from './plot.ts'
import type { ValueScale } from './trend-axes.ts'

export interface TrendBand {
  readonly half: number
  readonly relative: boolean
}

interface WithMean {
  readonly mean?: number
}

/** One edge of the band around a mean; the mean itself without a band. */
function bandEdge(mean: number, sign: 1 | -1, band: TrendBand | undefined): number {
  if (band === undefined) return mean
  return mean + sign * (band.relative ? (Math.abs(mean) * band.half) / 100 : band.half)
}

/** The axis takes the band in, so that it is never drawn over the edge of the plot. */
export function bandEdges(points: readonly WithMean[], band: TrendBand | undefined): number[] {
  return points.flatMap(({ mean }) =>
    mean === undefined ? [] : [bandEdge(mean, -1, band), bandEdge(mean, 1, band)],
  )
}

interface Drawing<Point> {
  readonly x: (point: Point) => number
  readonly y: ValueScale
  readonly band: TrendBand | undefined
}

/** Paths of the mean and of the band around it; empty texts for what is not there. */
export function meanPaths<Point extends WithMean>(
  points: readonly Point[],
  { x, y, band }: Drawing<Point>,
): { mean: string; band: string } {
  const known = points.filter((point) => point.mean !== undefined)
  const edge = (sign: 1 | -1) => (point: Point) => rounded(y(bandEdge(point.mean ?? 0, sign, band)))
  const middle = (point: Point) => rounded(y(point.mean ?? 0))
  return {
    mean: line<Point>(x, middle).digits(2)(known) ?? '',
    band: band === undefined ? '' : (area<Point>(x, edge(-1), edge(1)).digits(2)(known) ?? ''),
  }
}
