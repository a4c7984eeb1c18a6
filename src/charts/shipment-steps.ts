/**
 * Lots as steps over their shipments: one result a step, a dot for each truck. Across in thousandths of the width,
 * down in pixels; nothing is computed from the number of trucks.
 */
import { extent, scaleLinear } from 'd3'
import { type MarginLabel, marginLabels } from './panel-margin.ts'
import { rounded } from './plot.ts'
import type { ReadPoint } from './read-point.ts'

export interface StepLot {
  /** null while the result is awaited, or without one that counts. */
  readonly value: number | null
  /** Beyond a limit of the governing set. */
  readonly outside: boolean
  /** Beyond it, and yet the lot does not fail by it. */
  readonly alone: boolean
  /** The lot does not meet, by this result or another. */
  readonly failed: boolean
  /** What is read out at it. */
  readonly words: string
  /** Where it begins and ends, in thousandths of the width. */
  readonly from: number
  readonly to: number
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
  /** A level line for each lot with a result. */
  readonly steps: string
  /** Trucks that left once the result was known, and before. */
  readonly known: string
  readonly before: readonly { readonly x: number; readonly y: number }[]
  /** Lots that do not meet. */
  readonly failed: readonly { readonly from: number; readonly to: number }[]
  /** Steps beyond a limit. */
  readonly outside: readonly { readonly x: number; readonly y: number; readonly alone: boolean }[]
  readonly readings: readonly ReadPoint[]
  readonly limits: readonly number[]
  readonly ticks: readonly { readonly y: number; readonly value: number }[]
  readonly margin: readonly MarginLabel[]
}

const TOP = 10
/** Room at the foot, where trucks stand whose result is awaited. */
const FOOT = 24
const FLOAT = 7

/** null without a truck or without a value. */
export function shipmentSteps({ lots, limits, height }: StepsInput): StepsModel | null {
  const values = lots.flatMap(({ value }) => value ?? [])
  const [low, high] = extent([...values, ...limits.map(({ value }) => value)])
  if (lots.every(({ trucks }) => trucks.length === 0) || low === undefined || high === undefined) return null
  const room = Math.max((high - low) * 0.08, Math.abs(high) * 0.005)
  const scale = scaleLinear([low - room, high + room], [height - FOOT, TOP])
  const y = (value: number | null) => (value === null ? height - FLOAT : rounded(scale(value), 1))
  const middle = ({ from, to }: StepLot) => rounded((from + to) / 2, 1)
  const trucks = lots.flatMap((lot) => trucksOf(lot, y(lot.value)))
  return {
    height,
    steps: lots
      .filter(({ value }) => value !== null)
      .map(({ from, to, value }) => `M${from},${y(value)}H${to}`)
      .join(''),
    known: trucks
      .filter(({ known }) => known)
      .map((truck) => `M${truck.x},${truck.y}h0`)
      .join(''),
    before: trucks.filter(({ known }) => !known).map(({ x, y: at }) => ({ x, y: at })),
    failed: lots.filter(({ failed }) => failed).map(({ from, to }) => ({ from, to })),
    outside: lots
      .filter(({ outside }) => outside)
      .map((lot) => ({ x: middle(lot), y: y(lot.value), alone: lot.alone })),
    readings: lots.map((lot) => ({ x: middle(lot), y: y(lot.value), words: lot.words })),
    limits: limits.map(({ value }) => y(value)),
    ticks: scale.ticks(height < 130 ? 3 : 4).map((value) => ({ value, y: y(value) })),
    margin: marginLabels(
      limits.map(({ value, label }) => ({ y: y(value), text: label, kind: 'limit' })),
      height,
    ),
  }
}

/** Trucks of a lot at even distances over its step. */
function trucksOf({ from, to, trucks }: StepLot, y: number): { x: number; y: number; known: boolean }[] {
  return trucks.map((known, place) => ({
    x: rounded(from + ((place + 0.5) * (to - from)) / trucks.length, 1),
    y,
    known,
  }))
}
