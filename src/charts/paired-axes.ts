/** Axes of a paired chart: one index across, evenly, the other upwards, logarithmically. */
import { extent, range, type ScaleContinuousNumeric, scaleLinear, scaleLog, ticks } from 'd3'

type Scale = ScaleContinuousNumeric<number, number>

/** Smallest share of the plot on either side of a limit that parts it: its corner must hold a word. */
const SIDE = 0.3
/** Marks keep this far from the ends of the axis across, in pixels. */
const INSET = 12

/** Moves the ends apart so that a value between them leaves at least a share of the whole on either side. */
function withSides([low, high]: readonly [number, number], part: number | undefined): [number, number] {
  if (part === undefined) return [low, high]
  const from = Math.min(low, (part - SIDE * high) / (1 - SIDE))
  return [from, Math.max(high, (part - SIDE * from) / (1 - SIDE))]
}

function spread(values: readonly number[], room: number): [number, number] {
  const [low = 0, high = 0] = extent(values)
  return low === high ? [low - room, high + room] : [low, high]
}

interface Across {
  readonly left: number
  readonly right: number
  /** The limit that parts the plot, if one does. */
  readonly part: number | undefined
}

export function acrossScale(values: readonly number[], { left, right, part }: Across): Scale {
  const inner = scaleLinear(withSides(spread(values, 5), part), [left + INSET, right - INSET])
  return scaleLinear([inner.invert(left), inner.invert(right)], [left, right])
}

interface Upward {
  readonly top: number
  readonly bottom: number
  /** Marks stay off the rows of the corners' words at top and bottom. */
  readonly inset: number
  readonly part: number | undefined
}

/** @param values all above zero */
export function upwardScale(values: readonly number[], { top, bottom, inset, part }: Upward): Scale {
  const logs = withSides(
    spread(values.map(Math.log10), 0.1),
    part === undefined ? undefined : Math.log10(part),
  )
  const inner = scaleLinear(logs, [bottom - inset, top + inset])
  return scaleLog([10 ** inner.invert(bottom), 10 ** inner.invert(top)], [bottom, top])
}

/** 1, 2 and 5 of each decade; even steps where the axis is too short for three of those. */
export function logTicks([low, high]: readonly [number, number]): number[] {
  const decades = range(Math.floor(Math.log10(low)), Math.floor(Math.log10(high)) + 1)
  const coarse = decades
    .flatMap((decade) => [1, 2, 5].map((digit) => Number(`${digit}e${decade}`)))
    .filter((value) => low <= value && value <= high)
  return 3 <= coarse.length ? coarse : ticks(low, high, 5).filter((value) => 0 < value)
}
