import { describe, expect, it } from 'vitest'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import {
  type Observed,
  observationsOf,
  observedOver,
  resultsOn,
} from '../../../src/core/result/observation.ts'
import type { Result } from '../../../src/core/result/result.ts'

function result(value: number, tested: string, more: Partial<Result> = {}): Result {
  return {
    key: 'SO3|lab|C',
    property: 'SO3',
    laboratory: 'lab',
    sample: 'C',
    sampleKind: 'composite',
    role: 'producer',
    value,
    unit: '%',
    decimals: 2,
    n: 1,
    tested: readMoment(tested),
    valid: true,
    reasons: [],
    working: () => [],
    ...more,
  }
}
const day = (text: string) => readMoment(text).day

// 80 of 8 March counts until its retest of 20 March; 2.5 of 10 March stays; 60 of 25 March is added.
const [first, retest] = [result(80, '2026-03-08'), result(90, '2026-03-20')]
const replaced = { ...first, valid: false }
const [stays, added] = [result(2.5, '2026-03-10'), result(60, '2026-03-25')]
const then = (date: { readonly day: number }) =>
  date.day < day('2026-03-20') ? [first, stays] : [replaced, retest, stays]
const now = [replaced, retest, stays, added]
const spans = [
  { result: first, from: day('2026-03-08'), until: day('2026-03-20') },
  { result: stays, from: day('2026-03-10') },
  { result: replaced, from: day('2026-03-20') },
  { result: retest, from: day('2026-03-20') },
  { result: added, from: day('2026-03-25') },
]

describe('observedOver', () => {
  it('ends what changed on the day and begins what took its place; the rest stands from when it was known', () => {
    expect(observedOver([day('2026-03-20')], then, now)).toEqual(spans)
  })
  it('asks as of the day before each day of change, and of no other', () => {
    const asked: string[] = []
    observedOver(
      [day('2026-03-20'), day('2026-03-25')],
      (date) => {
        asked.push(date.text)
        return then(date)
      },
      now,
    )
    expect(asked).toEqual(['2026-03-19', '2026-03-24'])
  })
  it('is nothing where no day disrupts, and where a day changed nothing after all', () => {
    expect(observedOver([], then, now)).toBeUndefined()
    expect(observedOver([day('2026-03-20')], () => [stays], [stays, added])).toBeUndefined()
  })
  it('keeps two results that nothing tells apart, and ends one of them where one goes', () => {
    const twice = observedOver([day('2026-03-20')], () => [stays, stays], [stays])
    expect(twice?.map(({ until }) => until)).toEqual([day('2026-03-20'), undefined])
  })
})

describe('resultsOn', () => {
  const values = (observed: Observed, date: string) =>
    resultsOn(observed, readMoment(date)).map(({ value, valid }) => [value, valid])

  it('gives what stood on the date', () => {
    const observed = { results: now, observations: spans }
    expect(values(observed, '2026-03-07')).toEqual([])
    expect(values(observed, '2026-03-19')).toEqual([
      [80, true],
      [2.5, true],
    ])
    expect(values(observed, '2026-03-20')).toEqual([
      [2.5, true],
      [80, false],
      [90, true],
    ])
  })
  it('goes by when each became known where nothing changed', () => {
    const late = result(3, '2026-03-08', { known: readMoment('2026-03-12') })
    expect(values({ results: [late] }, '2026-03-11')).toEqual([])
    expect(values({ results: [late] }, '2026-03-12')).toEqual([[3, true]])
    expect(observationsOf({ results: [late] })).toEqual([{ result: late, from: day('2026-03-12') }])
  })
  it('takes the last day of a span in, and the day on which it ends out', () => {
    const observed = { results: [], observations: [{ result: stays, from: 10, until: 12 }] }
    const stood = [9, 10, 11, 12].map((number) => resultsOn(observed, momentOfDay(number)).length)
    expect(stood).toEqual([0, 1, 1, 0])
  })
})
