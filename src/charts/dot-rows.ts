/** Rows of dots on one logarithmic scale: what each condition reads, by class. Across in thousandths of the width, down in pixels. */
import { extent, scaleLog } from 'd3'
import { rounded } from './plot.ts'

export type DotShape = 'disc' | 'triangle' | 'square' | 'up'

export interface Dot {
  readonly value: number
  readonly low: number | null
  readonly high: number | null
  readonly shape: DotShape
  /** Named beside its mark. */
  readonly name: string | null
}

export interface DotRow {
  /** Lanes from the top, each drawn in its own line. */
  readonly lanes: readonly (readonly Dot[])[]
  /** Ground between two values. */
  readonly ground: { readonly from: number; readonly to: number; readonly is: 'gap' | 'overlap' } | null
  readonly mark: number | null
}

export interface DotRowModel {
  readonly top: number
  readonly height: number
  readonly ground: { readonly x: number; readonly width: number; readonly is: 'gap' | 'overlap' } | null
  readonly mark: number | null
  readonly intervals: readonly { readonly from: number; readonly to: number; readonly y: number }[]
  readonly dots: readonly {
    readonly x: number
    readonly y: number
    readonly shape: DotShape
    readonly name: string | null
    /** Baseline of the name: above the first lane, below any other, where no dot stands. */
    readonly nameY: number
  }[]
}

export interface DotRowsModel {
  readonly height: number
  readonly base: number
  readonly rows: readonly DotRowModel[]
  readonly ticks: readonly { readonly x: number; readonly value: number }[]
}

const LANE = 12
const ROW_GAP = 10
const FOOT = 24
/** Room about the outermost values, as a share of the scale. */
const MARGIN = 1.06

/**
 * @param rows in order from the top
 * @returns null without a value
 */
export function dotRows(rows: readonly DotRow[]): DotRowsModel | null {
  const values = rows.flatMap(({ lanes }) =>
    lanes.flat().flatMap(({ value, low, high }) => [value, low ?? value, high ?? value]),
  )
  const [least, most] = extent(values)
  if (least === undefined || most === undefined) return null
  const x = scaleLog([least / MARGIN, most * MARGIN], [0, 1000])
  const across = (value: number) => rounded(x(value), 1)
  // Names above the first row need as much room as between rows.
  let top = ROW_GAP
  const drawn = rows.map(({ lanes, ground, mark }): DotRowModel => {
    const height = lanes.length * LANE
    const own = { top, height }
    top += height + ROW_GAP
    const placed = lanes.flatMap((lane, place) =>
      lane.map((dot) => {
        const y = own.top + (place + 0.5) * LANE
        return { dot, y, nameY: place === 0 ? y - 7 : y + 16 }
      }),
    )
    return {
      ...own,
      ground:
        ground === null
          ? null
          : { x: across(ground.from), width: rounded(x(ground.to) - x(ground.from), 1), is: ground.is },
      mark: mark === null ? null : across(mark),
      intervals: placed.flatMap(({ dot, y }) =>
        dot.low === null || dot.high === null ? [] : [{ from: across(dot.low), to: across(dot.high), y }],
      ),
      dots: placed.map(({ dot: { value, shape, name }, y, nameY }) => ({
        x: across(value),
        y,
        shape,
        name,
        nameY,
      })),
    }
  })
  const base = top
  return {
    height: base + FOOT,
    base,
    rows: drawn,
    ticks: ticksOf(least, most).map((value) => ({ value, x: across(value) })),
  }
}

/** Round values within a decade: 1, 2, 5 where the scale is long, and every ten where it is short. */
function ticksOf(least: number, most: number): number[] {
  const [from, to] = [least / MARGIN, most * MARGIN]
  const long = 3 < most / least
  const steps = long ? [1, 2, 5] : [1, 1.2, 1.5, 2, 3, 4, 5, 6, 7, 8, 9]
  const decades = Array.from({ length: 12 }, (_, power) => 10 ** (power - 3))
  return decades
    .flatMap((decade) => steps.map((step) => step * decade))
    .filter((value) => from <= value && value <= to)
}
