/** Clauses over the lots of a source, and the limit that its results stand nearest to. */
import { mean, standardDeviation } from '../../core/statistics/descriptive.ts'
import type { JudgedValue, SourceLot } from './source-lots.ts'

/** One clause over the lots of a period, oldest first. */
export interface JudgedSeries {
  readonly clause: string
  readonly title: string
  readonly values: readonly { readonly lot: SourceLot; readonly judged: JudgedValue }[]
}

/** Lots that a mean distance in standard deviations asks for. */
const ENOUGH = 3

/** Each clause over the lots, oldest first. */
export function judgedSeries(lots: readonly SourceLot[]): JudgedSeries[] {
  const values = lots
    .filter(({ row }) => row.state !== 'withdrawn')
    .flatMap((lot) => lot.judged.map((judged) => ({ lot, judged })))
  return [...Map.groupBy(values, ({ judged }) => judged.clause)].map(([clause, own]) => ({
    clause,
    title: own.at(-1)?.judged.title ?? clause,
    values: own,
  }))
}

/**
 * The plain limit that the mean of the results stands nearest to, in their own standard deviations; where no series has
 * any yet, the limit that a result stands nearest to in shares of the limit itself.
 */
export function closestToLimit(series: readonly JudgedSeries[]): JudgedSeries | null {
  const plain = series.filter(({ values }) => values.every(({ judged }) => judged.kind === 'value'))
  const ranked = plain
    .flatMap((own) => {
      const distance = distanceOf(own.values)
      return distance === null ? [] : [{ own, distance }]
    })
    .sort((a, b) => a.distance - b.distance)
  return ranked[0]?.own ?? plain.toSorted((a, b) => leastShare(a) - leastShare(b))[0] ?? null
}

function leastShare({ values }: JudgedSeries): number {
  return Math.min(
    ...values.map(({ judged: { inside, ends } }) => inside / Math.max(...ends.map((end) => Math.abs(end)))),
  )
}

/** Mean distance of the values from their limit, in their own standard deviations; null for few, or all alike. */
export function distanceOf(values: JudgedSeries['values']): number | null {
  const margins = values.map(({ judged }) => judged.inside)
  const scatter = ENOUGH <= margins.length ? standardDeviation(margins) : 0
  return 0 < scatter ? mean(margins) / scatter : null
}
