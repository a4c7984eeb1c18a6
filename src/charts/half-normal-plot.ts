/** Effects against half-normal scores: what lies off the line through the small ones stands out. Pixels. */
import { max, scaleLinear } from 'd3'
import { LEFT, type Plot, RIGHT, rounded } from './plot.ts'

export interface HalfNormalModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly points: readonly {
    readonly x: number
    readonly y: number
    readonly factor: number
    readonly standsOut: boolean
  }[]
  /** Where effects without a cause would lie, from nought to the edge; null without an error. */
  readonly line: { readonly x: number; readonly y: number } | null
  readonly xTicks: readonly { readonly value: number; readonly x: number }[]
  readonly yTicks: readonly { readonly value: number; readonly y: number }[]
}

const WIDTH = 380
const HEIGHT = 230

/**
 * @param points smallest effect first
 * @param standardError of an effect, which is the slope of the line; null draws none
 */
export function halfNormalPlot(
  points: readonly {
    readonly factor: number
    readonly size: number
    readonly score: number
    readonly standsOut: boolean
  }[],
  standardError: number | null,
): HalfNormalModel | null {
  if (points.length === 0) return null
  const plot = { left: LEFT, right: WIDTH - RIGHT - 110, top: 12, bottom: HEIGHT - 26 }
  const x = scaleLinear([0, (max(points, ({ score }) => score) ?? 1) * 1.08], [plot.left, plot.right])
  const y = scaleLinear(
    [0, (max(points, ({ size }) => size) ?? 1) * 1.05 || 1],
    [plot.bottom, plot.top],
  ).nice(4)
  const [, right = 1] = x.domain()
  const [, top = 1] = y.domain()
  const reach = standardError === null ? null : Math.min(right, top / standardError)
  return {
    width: WIDTH,
    height: HEIGHT,
    plot,
    points: points.map(({ factor, size, score, standsOut }) => ({
      x: rounded(x(score)),
      y: rounded(y(size)),
      factor,
      standsOut,
    })),
    line:
      reach === null || standardError === null
        ? null
        : { x: rounded(x(reach)), y: rounded(y(reach * standardError)) },
    xTicks: x.ticks(4).map((value) => ({ value, x: rounded(x(value)) })),
    yTicks: y.ticks(4).map((value) => ({ value, y: rounded(y(value)) })),
  }
}
