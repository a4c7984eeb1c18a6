/**
 * Lots as steps over their shipments: one result a step, a dot for each truck. Across in thousandths of the width,
 * down in pixels; nothing is computed from the number of trucks.
 */
import { extent, scaleLinear } from 'd3'
import { acrossOfPlace } from './panel-axis.ts'
import { type MarginLabel, marginLabels } from './panel-margin.ts'
import { rounded } from './plot.ts'

export interface StepLot {
  readonly id: string
  readonly label: string
  /** null while the result is awaited. */
  readonly value: number | null
  readonly failed: boolean
  /** One a truck, in order of leaving: whether the result was known. */
  readonly trucks: readonly boolean[]
}

export interface StepsInput {
  readonly lots: readonly StepLot[]
  readonly limits: readonly { readonly value: number; readonly label: string }[]
  readonly height: number
}

export interface StepsModel {
  readonly height: number
  readonly steps: string
  /** Trucks that left once the result was known, and before. */
  readonly known: string
  readonly before: readonly { readonly x: number; readonly y: number }[]
  readonly lots: readonly {
    readonly id: string
    readonly label: string
    readonly x: number
    readonly from: number
    readonly to: number
    readonly failed: boolean
    /** Has room for its label. */
    readonly labelled: boolean
  }[]
  readonly limits: readonly number[]
  readonly ticks: readonly { readonly y: number; readonly value: number }[]
  readonly margin: readonly MarginLabel[]
}

const [TOP, FOOT] = [10, 44]
/** Least distance between two labels of lots, in thousandths. */
const APART = 130

/** null without a truck or without a value. */
export function shipmentSteps({ lots, limits, height }: StepsInput): StepsModel | null {
  const count = lots.reduce((sum, { trucks }) => sum + trucks.length, 0)
  const values = lots.flatMap(({ value }) => value ?? [])
  const [low, high] = extent([...values, ...limits.map(({ value }) => value)])
  if (count === 0 || values.length === 0 || low === undefined || high === undefined) return null
  const room = Math.max((high - low) * 0.08, 0.5)
  const scale = scaleLinear([low - room, high + room], [height - FOOT, TOP])
  const y = (value: number | null) => (value === null ? height - FOOT + 6 : rounded(scale(value), 1))
  const drawn = placed(lots, count)
  const trucks = drawn.flatMap(({ lot, start }) =>
    lot.trucks.map((known, place) => ({ x: acrossOfPlace(start + place, count), y: y(lot.value), known })),
  )
  return {
    height,
    steps: drawn.map(({ lot, from, to }) => `M${from},${y(lot.value)}H${to}`).join(''),
    known: trucks
      .filter(({ known }) => known)
      .map((truck) => `M${truck.x},${truck.y}h0`)
      .join(''),
    before: trucks.filter(({ known }) => !known).map(({ x, y: at }) => ({ x, y: at })),
    lots: labelled(drawn),
    limits: limits.map(({ value }) => y(value)),
    ticks: scale.ticks(4).map((value) => ({ value, y: y(value) })),
    margin: marginLabels(
      limits.map(({ value, label }) => ({ y: y(value), text: label, kind: 'limit' })),
      height - FOOT + 14,
    ),
  }
}

interface PlacedLot {
  readonly lot: StepLot
  readonly start: number
  readonly from: number
  readonly to: number
}

function placed(lots: readonly StepLot[], count: number): PlacedLot[] {
  let start = 0
  return lots.map((lot) => {
    const own = {
      lot,
      start,
      from: acrossOfPlace(start - 0.4, count),
      to: acrossOfPlace(start + lot.trucks.length - 0.6, count),
    }
    start += lot.trucks.length
    return own
  })
}

function labelled(lots: readonly PlacedLot[]): StepsModel['lots'] {
  let last = Number.NEGATIVE_INFINITY
  return lots.map(({ lot, from, to }) => {
    const x = rounded((from + to) / 2, 1)
    const free = APART <= x - last
    if (free) last = x
    return { id: lot.id, label: lot.label, x, from, to, failed: lot.failed, labelled: free }
  })
}
