import { readMoment } from '../../../src/core/measure/moment.ts'
import { defined } from '../../../src/core/measure/defined.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, result, setOf, statedUncertainty } from './fixture.ts'

const loss: WrittenClause = { clause: 'c', property: 'loss-on-ignition', 'at-most': '6.0 %' }
const activity: WrittenClause = {
  clause: 'c',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
}

function judged(written: WrittenClause, ...results: ReturnType<typeof result>[]) {
  const uncertaintyOf = () => statedUncertainty(2)
  return clauseOf(judge(setOf([written]), evidenceOf(results, { uncertaintyOf })), 'c')
}
const losses = (several: 'worst' | 'latest' | 'mean', ...values: (readonly [number, string])[]) =>
  judged(
    { ...loss, several },
    ...values.map(([value, tested], place) =>
      result('loss-on-ignition', value, { tested: readMoment(tested), key: `result ${place}` }),
    ),
  )

describe('several results', () => {
  it('judge takes the worst outcome, and of equal ones the value nearer to failing', () => {
    const worst = losses('worst', [2, '2026-03-01'], [4, '2026-03-01'], [3, '2026-03-01'])
    expect(worst).toMatchObject({ value: 4, result: 'result 1', outcome: 'meets' })
    expect(worst.reasons[1]).toEqual({ code: 'one-of-several', params: { which: 'worst', n: 3 } })
    expect(judged(activity, index('28 d', 80), index('28 d', 78), index('28 d', 79)).value).toBe(78)
    expect(losses('worst', [7, '2026-03-01'], [9, '2026-03-01'])).toMatchObject({
      value: 9,
      outcome: 'does-not-meet',
    })
  })

  it('judge measures the distance to a limit on a magnitude without regard to sign', () => {
    const bar: WrittenClause = { clause: 'c', property: 'autoclave-expansion', 'magnitude-at-most': '0.8 %' }
    const bars = [0.2, -0.5, 0.1].map((value) => result('autoclave-expansion', value))
    expect(judged(bar, ...bars).value).toBe(-0.5)
  })

  it('judge takes the last tested, and the later in the record of two tested at once', () => {
    expect(losses('latest', [2, '2026-03-02'], [4, '2026-03-01']).value).toBe(2)
    expect(losses('latest', [2, '2026-03-02'], [4, '2026-03-02'])).toMatchObject({
      value: 4,
      result: 'result 1',
    })
  })

  const mean = (...controls: (string | undefined)[]) =>
    judged(
      { ...activity, several: 'mean' },
      ...controls.map((control, place) =>
        index('28 d', [73, 74, 75, 78][place] ?? NaN, defined({ control })),
      ),
    )

  it('judge takes the mean, and names no single result', () => {
    expect(mean('A', 'B', 'C', 'D')).toMatchObject({ value: 75, result: null, outcome: 'meets' })
  })

  it('judge knows a mean the better by the root of the number only as far as controls differ', () => {
    // u 2 is √2 of one mortar: √(1/4 + 1/4), √(1/4 + 1), √(1/4 + 1/2), √(1/4 + 9/16 + 1/16) times √2.
    const found = [
      mean('A', 'B', 'C', 'D'),
      mean('A', 'A', 'A', 'A'),
      mean('A', 'B', 'B', 'A'),
      mean('A', 'A', 'B', 'A'),
    ]
    const expected = [0.5, 1.25, 0.75, 0.875].map((parts) => Math.SQRT2 * Math.sqrt(parts))
    for (const [place, clause] of found.entries())
      expect(clause.uncertainty?.u).toBeCloseTo(expected[place] ?? NaN, 12)
    expect(mean(undefined, undefined).uncertainty?.u).toBeCloseTo(Math.SQRT2 * Math.sqrt(1.5), 12)
    expect(found.map(({ reasons }) => reasons[1]?.params)).toEqual(
      [4, 1, 2, 2].map((controls) => ({ n: 4, controls })),
    )
  })

  it('judge knows the mean of results without a control the better by the root of their number', () => {
    const guarded = { guarded: 2, 'agreed-in': 'contract 7' }
    const four = [2, 3, 4, 5].map((value) => result('loss-on-ignition', value))
    const found = judged({ ...loss, several: 'mean', 'decision-rule': guarded }, ...four)
    expect(found).toMatchObject({ value: 3.5, uncertainty: { u: 1 } })
    expect(found.reasons[1]).toEqual({ code: 'mean-of-several', params: { n: 4 } })
  })

  it('judge takes the same mean to the last digit in any order of the record', () => {
    // Added from left to right 0.1 + 0.2 + 0.3 is 0.6000000000000001, from right to left 0.6.
    const values = [0.1, 0.2, 0.3].map((value) => result('loss-on-ignition', value))
    const found = [values, values.toReversed()].map(
      (some) => judged({ ...loss, several: 'mean' }, ...some).value,
    )
    expect(found[1]).toBe(found[0])
    expect(found[0]).toBeCloseTo(0.2, 15)
  })

  it('judge takes the value nearest to either limit of a range, or farthest beyond one', () => {
    const range: WrittenClause = { clause: 'c', property: 'SO3', between: ['2.0 %', '7.0 %'] }
    const of = (...values: number[]) => judged(range, ...values.map((value) => result('SO3', value))).value
    expect([of(2.2, 5, 6), of(3, 6.5), of(1.9, 8), of(0.5, 8)]).toEqual([2.2, 6.5, 8, 0.5])
  })

  it('judge has no mean of a value that is only known to lie below another', () => {
    const censored = result('loss-on-ignition', 1, { censored: 'below' })
    const found = judged({ ...loss, several: 'mean' }, result('loss-on-ignition', 2), censored)
    expect(found).toMatchObject({ outcome: 'not-reported', reasons: [{ code: 'no-mean-of-censored' }] })
  })

  it('judge adds nothing to the reason of a single result', () => {
    expect(losses('mean', [2, '2026-03-01']).reasons).toHaveLength(1)
    expect(losses('worst', [2, '2026-03-01']).reasons).toHaveLength(1)
  })

  it('judge puts a worse outcome before a value nearer to failing', () => {
    const range: WrittenClause = { clause: 'c', property: 'SO3', between: ['2.0 %', '7.0 %'] }
    const [low, within] = [result('SO3', 1), result('SO3', 5)]
    expect([judged(range, low, within).value, judged(range, within, low).value]).toEqual([1, 1])
  })

  it('judge keeps the same one of two that are equally near to failing, in any order', () => {
    const keyed = (property: 'SO3' | 'CaO' | 'autoclave-expansion', ...values: number[]) =>
      values.map((value, place) => result(property, value, { key: `result ${place}` }))
    const key = (written: Omit<WrittenClause, 'clause'>, ...results: ReturnType<typeof result>[]) =>
      [results, results.toReversed()].map((some) => judged({ clause: 'c', ...written }, ...some).result)
    expect([
      key({ property: 'SO3', 'at-most': '5.0 %' }, ...keyed('SO3', 3, 3)),
      key({ property: 'SO3', 'at-least': '2.0 %' }, ...keyed('SO3', 3, 3)),
      key(
        { property: 'autoclave-expansion', 'magnitude-at-most': '0.8 %' },
        ...keyed('autoclave-expansion', 0.5, -0.5),
      ),
    ]).toEqual(Array.from({ length: 3 }, () => ['result 0', 'result 0']))
  })

  it('judge takes the lowest over a strict lower limit, the highest of what is only reported, with its sign', () => {
    const above: WrittenClause = { clause: 'c', property: 'CaO', above: '18.0 %' }
    const report: WrittenClause = { clause: 'c', property: 'CaO', report: 'yes' }
    expect([
      judged(above, result('CaO', 20), result('CaO', 19), result('CaO', 21)).value,
      judged(report, result('CaO', 20), result('CaO', 21), result('CaO', 19)).value,
      judged(loss, result('loss-on-ignition', 0.2), result('loss-on-ignition', -0.5)).value,
    ]).toEqual([19, 21, 0.2])
  })
})
