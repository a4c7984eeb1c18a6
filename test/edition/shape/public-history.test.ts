import { describe, expect, it } from 'vitest'
import type { LaboratoryHistory } from '../../../src/core/history/laboratory-history.ts'
import { segmentOf } from '../../../src/core/history/segment.ts'
import type { PointOrigin, SourceHistory, SourceSeries } from '../../../src/core/history/source-history.ts'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { publicLaboratoryHistory, publicSourceHistory } from '../../../src/edition/shape/public-history.ts'
import { pointsOf } from '../../core/history/points-fixture.ts'

const NONE = { shown: false, reason: { code: 'no-limit', params: {} } } as const

/** Lots ash/0, ash/1, … of which the first nine are of one laboratory, those after of another. */
function history(): SourceHistory {
  const values = [80, 81, 79, 80, 82, 78, 80, 81, 79, 83, 84]
  const points = pointsOf(values).map((point, at) => ({ ...point, laboratory: at < 9 ? 'works' : 'quay' }))
  const context = { limits: [], phases: [], divertedWithoutResults: [] }
  const series: SourceSeries = {
    key: 'F|density|||',
    property: 'density',
    duty: 'composite',
    class: 'F',
    unit: 'g/cm3',
    decimals: 2,
    limits: [],
    points: points.map(({ place, value, sampled, laboratory }) => {
      const named: PointOrigin = { lot: `ash/${place}`, sample: 'C', sampled, laboratory, reasons: [] }
      return { place, value, status: 'valid', named }
    }),
    segments: [
      segmentOf({ points: points.slice(0, 9), begins: 'first' }, context),
      segmentOf({ points: points.slice(9), begins: 'laboratory' }, context),
    ],
    steps: [
      {
        event: { by: 'laboratory', date: points[9]?.sampled ?? null, from: 'works', to: 'quay' },
        figures: NONE,
      },
    ],
    months: NONE,
  }
  return {
    asOf: readMoment('2026-12-31'),
    series: [series],
    closest: NONE,
    uniformity: [
      {
        criterion: 'c',
        clause: 'u',
        property: 'density',
        half: 5,
        unit: '%',
        outside: 2,
        judged: 11,
        lots: ['ash/3', 'ash/10'],
      },
    ],
    predictions: [],
  }
}

const all = JSON.stringify(history())

describe('publicSourceHistory', () => {
  const isShown = (id: string) => !['ash/0', 'ash/9', 'ash/10'].includes(id)
  const open = publicSourceHistory(history(), isShown)

  it('lets the value of a lot that is not shown stand bare, in its place', () => {
    expect(open.series[0]?.points[0]).toEqual({ place: 0, value: 80, status: 'valid', named: null })
    expect(open.series[0]?.points[1]?.named?.lot).toBe('ash/1')
    expect(open.series[0]?.segments[0]?.places).toHaveLength(9)
  })

  it('holds neither id nor day of such a lot, nor a laboratory that only such lots know', () => {
    const text = JSON.stringify(open)
    for (const word of ['ash/0"', 'ash/9', 'ash/10', 'quay', '2026-01-01', momentOfDay(20_454 + 63).text]) {
      expect(all).toContain(word)
      expect(text).not.toContain(word)
    }
  })

  it('keeps count of what it does not name', () =>
    expect(open.uniformity[0]).toMatchObject({ outside: 2, lots: ['ash/3', null] }))

  it('leaves out a series of which no lot is shown', () =>
    expect(publicSourceHistory(history(), () => false).series).toEqual([]))

  it('changes nothing where all lots are shown', () =>
    expect(JSON.stringify(publicSourceHistory(history(), () => true))).toBe(all))
})

describe('publicLaboratoryHistory', () => {
  it('lets the value of a batch that is not shown stand bare, its cement unnamed', () => {
    const point = (place: number, cement: string) => ({
      place,
      value: 40,
      status: 'valid' as const,
      named: { batch: `K${place}`, cast: momentOfDay(20_454 + place), cement, reasons: [] },
      fromEarlierPercent: null,
      fromEarlierDeviations: null,
    })
    const segment = (place: number, cement: string) => ({
      places: [place],
      cements: [cement],
      begins: 'first' as const,
      chart: NONE,
      ewma: NONE,
      movingAverage: [],
      correlation: NONE,
      slope: NONE,
      cusum: NONE,
    })
    const whole = {
      laboratory: 'works',
      series: [{ points: [point(0, 'A'), point(1, 'B')], segments: [segment(0, 'A'), segment(1, 'B')] }],
    } as unknown as LaboratoryHistory
    const open = publicLaboratoryHistory(whole, (id) => id === 'K0')
    expect(open.series[0]?.points.map(({ named }) => named?.batch ?? null)).toEqual(['K0', null])
    expect(open.series[0]?.segments.map(({ cements }) => cements)).toEqual([['A'], []])
    expect(publicLaboratoryHistory(whole, () => false).series).toEqual([])
  })
})
