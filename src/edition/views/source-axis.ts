/** The axis that a source's charts share: days of sampling, or its lots one after another. */
import { acrossOf, acrossOfPlace, type AxisTick, axisTicks, placeTicks } from '../../charts/panel-axis.ts'
import type { SourceLot } from './source-lots.ts'

/** What stands across: days of sampling, lots, or trucks. */
export type AxisKind = 'date' | 'lot' | 'shipment'

export interface SourceAxis {
  readonly kind: AxisKind
  /** Where a lot's mark stands, in thousandths of the width. */
  readonly of: (lot: SourceLot) => number
  /** Where what begins with a lot is drawn. */
  readonly before: (lot: SourceLot) => number
  /** Ends of what lasted from a day to a day; null where no place of the axis belongs to it. */
  readonly span: (from: number, to: number) => readonly [number, number] | null
  readonly ticks: readonly AxisTick[]
}

/**
 * @param lots in order of sampling, at least one
 * @param until day to which the axis runs at least
 * @param since day from which it does so; from the first lot where none is asked for
 */
export function dateAxis(
  lots: readonly SourceLot[],
  until: number,
  since = Number.POSITIVE_INFINITY,
): SourceAxis {
  const { from, last } = daysOf(lots)
  const days = { from: Math.min(since, from), to: Math.max(until, last) }
  const of = ({ row }: SourceLot) => acrossOf(days, row.sampled.day)
  return {
    kind: 'date',
    of,
    before: of,
    span: (first, end) =>
      end < days.from || days.to < first
        ? null
        : [acrossOf(days, Math.max(days.from, first)), acrossOf(days, Math.min(days.to, end))],
    ticks: axisTicks(days),
  }
}

/** Lots at even distances in order of sampling. @param lots at least one */
export function lotAxis(lots: readonly SourceLot[]): SourceAxis {
  return placedAxis('lot', lots, new Map(lots.map((lot, place) => [lot.row.id, [place - 0.5, place + 0.5]])))
}

/**
 * Trucks at even distances, lot by lot in order of sampling.
 * @param lots those with a shipment, at least one
 */
export function shipmentAxis(lots: readonly SourceLot[]): SourceAxis {
  let start = -0.5
  const ends = lots.map(({ row, shipments }): [string, readonly [number, number]] => {
    const own = [start, start + shipments.length] as const
    start = own[1]
    return [row.id, own]
  })
  return placedAxis('shipment', lots, new Map(ends))
}

function placedAxis(
  kind: AxisKind,
  lots: readonly SourceLot[],
  ends: ReadonlyMap<string, readonly number[]>,
): SourceAxis {
  const count = Math.round((ends.get(lots.at(-1)?.row.id ?? '')?.[1] ?? 0) + 0.5)
  const across = (place: number) => acrossOfPlace(place, count)
  const [start, end] = [0, 1].map((side) => (lot: SourceLot) => ends.get(lot.row.id)?.[side] ?? 0) as [
    (lot: SourceLot) => number,
    (lot: SourceLot) => number,
  ]
  const of = (lot: SourceLot) => across((start(lot) + end(lot)) / 2)
  return {
    kind,
    of,
    before: (lot) => across(start(lot)),
    span: (first, last) => {
      const inside = lots.filter(({ row }) => first <= row.sampled.day && row.sampled.day <= last)
      const [head, tail] = [inside[0], inside.at(-1)]
      return head === undefined || tail === undefined ? null : [across(start(head)), across(end(tail))]
    },
    ticks: placeTicks(lots.map((lot) => ({ x: of(lot), text: lot.row.number }))),
  }
}

function daysOf(lots: readonly SourceLot[]): { from: number; last: number } {
  const from = lots[0]?.row.sampled.day ?? 0
  return { from, last: lots.at(-1)?.row.sampled.day ?? from }
}
