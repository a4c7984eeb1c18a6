/** Histories of the demonstration content, and what the public may see of them. */
import { describe, expect, it } from 'vitest'
import type { Shown } from '../../../src/core/history/not-shown.ts'
import { mean } from '../../../src/core/statistics/descriptive.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { loadRecords } from '../../../src/records/load.ts'

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })

function shown<Figure>(figure: Shown<Figure> | undefined): Figure {
  if (figure?.shown !== true) throw new Error(`not shown: ${JSON.stringify(figure)}`)
  return figure
}

describe('laboratoryHistory', () => {
  it('finds the control batch that is 12 % low, though its cement is too new for a chart', () => {
    const series = edition
      .laboratoryHistory('north-quay')
      .series.find(
        ({ property, condition }) => property === 'bulk-resistivity' && condition === 'modified-50c',
      )
    const low = series?.points.find(({ named }) => named?.batch === 'NQ-2026-0304-50')
    expect(low?.fromEarlierPercent).toBeLessThan(-11)
    expect(low?.fromEarlierPercent).toBeGreaterThan(-14)
    expect(low?.fromEarlierDeviations).toBeLessThan(-2)
    const others = series?.points.filter(({ named }) => named?.batch !== 'NQ-2026-0304-50') ?? []
    expect(Math.min(...others.map((point) => point.fromEarlierPercent ?? 0))).toBeGreaterThan(-11)
  })

  it('cuts a series where the control cement changes, and gives every valid batch to one segment', () => {
    for (const id of edition.laboratories.keys())
      for (const { points, segments } of edition.laboratoryHistory(id).series) {
        const places = segments.flatMap((segment) => [...segment.places]).sort((a, b) => a - b)
        expect(places).toEqual(points.filter(({ status }) => status === 'valid').map(({ place }) => place))
        for (const { places: own, cements } of segments)
          expect(new Set(own.map((place) => points[place]?.named?.cement))).toEqual(new Set(cements))
      }
  })

  it('is made once', () =>
    expect(edition.laboratoryHistory('north-quay')).toBe(edition.laboratoryHistory('north-quay')))
})

describe('the history of each source', () => {
  it('gives every valid point to one segment, and a moving average of five to it', () => {
    for (const id of edition.sources.keys())
      for (const { points, segments } of edition.source(id).history().series) {
        const places = segments.flatMap((segment) => [...segment.places]).sort((a, b) => a - b)
        expect(places).toEqual(points.filter(({ status }) => status === 'valid').map(({ place }) => place))
        for (const segment of segments) {
          const values = segment.places.map((place) => points[place]?.value ?? Number.NaN)
          const last = segment.movingAverage.at(-1)
          if (last !== undefined) expect(last.value).toBeCloseTo(mean(values.slice(-5)), 10)
        }
      }
  })

  it('never mixes laboratories within a segment', () => {
    for (const id of edition.sources.keys())
      for (const { points, segments } of edition.source(id).history().series)
        for (const { places, laboratory } of segments)
          expect(new Set(places.map((place) => points[place]?.named?.laboratory))).toEqual(
            new Set([laboratory]),
          )
  })

  it('counts uniformity as the verdicts of its lots do, without those withdrawn, as the head of the page', () => {
    for (const id of edition.sources.keys())
      for (const count of edition.source(id).history().uniformity) {
        const outcomes = edition
          .lotsOf(id)
          .filter(({ state }) => state !== 'withdrawn')
          .map((lot) => edition.lot(lot.id).verdicts[0])
          .filter((verdict) => verdict?.criterion === count.criterion)
          .flatMap((verdict) => verdict?.clauses.filter((clause) => clause.id === count.clause) ?? [])
          .map(({ outcome }) => outcome)
        expect(outcomes.filter((outcome) => outcome === 'does-not-meet')).toHaveLength(count.outside)
        expect(count.lots).toHaveLength(count.outside)
        expect(outcomes.filter((outcome) => ['meets', 'does-not-meet'].includes(outcome))).toHaveLength(
          count.judged,
        )
      }
  })

  it('takes the limit as the ends of what is admitted before rounding: 74.5 for 75 %', () => {
    const series = edition
      .source('skarnmere-ash')
      .history()
      .series.find(({ property, age }) => property === 'strength-activity-index' && age?.text === '28 d')
    expect(series?.limits.map(({ low, high }) => [low, high])).toContainEqual([74.5, null])
    const [margin] = series?.segments.at(-1)?.margins ?? []
    const last = series?.points[margin?.last.place ?? -1]
    expect(margin?.last.margin).toBeCloseTo((last?.value ?? Number.NaN) - 74.5, 10)
  })

  it('names the step of a new laboratory, and that the control cement changed with it', () => {
    const series = edition
      .source('skarnmere-ash')
      .history()
      .series.find(({ property }) => property === 'strength-activity-index')
    const step = series?.steps.find(({ event }) => event.by === 'event' && event.kind === 'laboratory-change')
    expect(shown(step?.figures).alsoChanged).toContain('laboratory')
  })

  it('is made once', () =>
    expect(edition.source('skarnmere-ash').history()).toBe(edition.source('skarnmere-ash').history()))
})
