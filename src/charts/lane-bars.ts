/** Bars from nought in groups, such as h and k by material and laboratory. Across in thousandths of the width, down in pixels. */
import { extent, scaleBand, scaleLinear } from 'd3'
import { rounded } from './plot.ts'

export interface BarGroup {
  readonly name: string
  readonly bars: readonly { readonly name: string; readonly value: number; readonly beyond: boolean }[]
}

export interface LaneBarsModel {
  readonly height: number
  readonly zero: number
  readonly groups: readonly { readonly name: string; readonly x: number }[]
  readonly bars: readonly {
    readonly x: number
    readonly width: number
    readonly top: number
    readonly height: number
    readonly beyond: boolean
    readonly name: string
  }[]
  readonly limits: readonly number[]
  readonly ticks: readonly { readonly y: number; readonly value: number }[]
}

const HEIGHT = 150
const FOOT = 22
const TOP = 8

/** @param limits drawn across, in the unit of the values */
export function laneBars(groups: readonly BarGroup[], limits: readonly number[]): LaneBarsModel | null {
  const values = groups.flatMap(({ bars }) => bars.map(({ value }) => value))
  if (values.length === 0) return null
  const [low = 0, high = 1] = extent([0, ...values, ...limits])
  const y = scaleLinear([low, high], [HEIGHT - FOOT, TOP]).nice(4)
  const x = scaleBand(
    groups.map(({ name }) => name),
    [0, 1000],
  )
    .paddingInner(0.18)
    .paddingOuter(0.06)
  const zero = rounded(y(0), 1)
  return {
    height: HEIGHT,
    zero,
    groups: groups.map(({ name }) => ({ name, x: rounded((x(name) ?? 0) + x.bandwidth() / 2, 1) })),
    bars: groups.flatMap(({ name, bars }) => {
      const step = x.bandwidth() / Math.max(1, bars.length)
      return bars.map((bar, place) => {
        const at = rounded(y(bar.value), 1)
        return {
          x: rounded((x(name) ?? 0) + place * step + step * 0.12, 1),
          width: rounded(step * 0.76, 1),
          top: Math.min(at, zero),
          height: rounded(Math.max(0.5, Math.abs(at - zero)), 1),
          beyond: bar.beyond,
          name: bar.name,
        }
      })
    }),
    limits: limits.map((limit) => rounded(y(limit), 1)),
    ticks: y.ticks(4).map((value) => ({ value, y: rounded(y(value), 1) })),
  }
}
