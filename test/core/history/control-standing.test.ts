import { describe, expect, it } from 'vitest'
import { batchStandings, CONTROL_RATE } from '../../../src/core/checks/control-batches.ts'
import { controlStandings, indexAtMean } from '../../../src/core/history/control-standing.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'
import { activityIndex } from '../../../src/core/strength/activity-index.ts'
import { batchesOf } from './batches-fixture.ts'

const cementsOf = (cements: string) => (at: number) => cements[at] ?? 'A'
const last = (values: readonly number[], cements = '') => {
  const batches = batchesOf(values, cementsOf(cements))
  return controlStandings(batches).get(`K${values.length - 1}`)?.[0]
}

describe('controlStandings', () => {
  it('takes an index against the mean of earlier batches of the same cement, hand-worked', () => {
    // Test 33 MPa over 44: 75 %. Earlier 39 and 41, mean 40: the control stands 10 % above it, and 33 over 40
    // is 82.5 %.
    const found = last([39, 99, 41, 44], 'ABAA')
    expect(found).toMatchObject({ mean: 40, batches: 2, percent: expect.closeTo(10, 10), scatter: null })
    expect(found && indexAtMean(75, found)).toBe(activityIndex(33, 40))
  })

  it('looks back ten batches and no further', () =>
    expect(last([1, ...Array.from({ length: 10 }, () => 40), 40])).toMatchObject({ mean: 40, batches: 10 }))

  it('knows nothing of the first batch of a cement', () => expect(last([39, 41, 40], 'ABC')).toBeUndefined())

  it('takes batches tested on one day as made at once: neither is before the other', () => {
    const [first, second, third] = batchesOf([40, 42, 41])
    if (first === undefined || second === undefined || third === undefined) throw new Error('three batches')
    const tested = first.results[0]?.tested
    const sameDay = { ...second, results: second.results.map((result) => ({ ...result, tested }) as Result) }
    const standings = controlStandings([third, sameDay, first])
    expect([standings.get('K0'), standings.get('K1')]).toEqual([undefined, undefined])
    expect(standings.get('K2')?.[0]).toMatchObject({ mean: 41, batches: 2 })
  })

  it('counts a test made again in place of the one before it', () => {
    const [first, second] = batchesOf([40, 44])
    if (first === undefined || second === undefined) throw new Error('two batches')
    const again = first.results.map((result) => ({ ...result, value: 42, tested: momentOfDay(20_485) }))
    const standings = controlStandings([{ ...first, results: [...first.results, ...again] }, second])
    expect(standings.get('K1')?.[0]?.mean).toBe(42)
  })

  it('says of a batch what was known before it: later batches change nothing', () => {
    const values = Array.from({ length: 40 }, (_, at) => 40 + ((at * 7) % 5) / 2)
    const cements = cementsOf('ABABABABABABABABABAB')
    const [all, until] = [values, values.slice(0, 25)].map((list) =>
      controlStandings(batchesOf(list, cements)),
    )
    expect(all?.get('K24')).toEqual(until?.get('K24'))
    expect(all?.get('K24')?.[0]?.scatter).not.toBeNull()
  })

  it('scatters by logarithms about the means of the cements, by hand', () => {
    // Two cements, each twice e^−0.1, e^0, e^0.1 about its level: squares 4 × 0.01 × 2 about either mean, 2 × 5 degrees.
    const level = [40, 50]
    const values = Array.from(
      { length: 12 },
      (_, at) => (level[at % 2] ?? 0) * Math.exp([-0.1, 0, 0.1][Math.floor(at / 2) % 3] ?? 0),
    )
    const found = last([...values, 40], 'ABABABABABABA')
    expect(found?.scatter).toMatchObject({
      percent: expect.closeTo(100 * Math.sqrt(0.08 / 10), 10),
      degreesOfFreedom: 10,
    })
    const centre = (2 * 40 * (1 + 2 * Math.cosh(0.1))) / 6
    expect(found?.mean).toBeCloseTo(centre, 10)
    expect(found?.scatter?.deviations).toBeCloseTo(
      Math.log(40 / centre) / (Math.sqrt(0.08 / 10) * Math.sqrt(7 / 6)),
      10,
    )
  })
})

describe('batchStandings', () => {
  const controlOf = ({ id, results, cast }: ReturnType<typeof batchesOf>[number]) => {
    const record = { laboratory: 'works', condition: 'c311', cast, cement: { lot: 'A' } }
    return { id, results, record }
  }
  const values = Array.from({ length: 12 }, (_, at) => 40 * Math.exp([-0.03, 0, 0.03][at % 3] ?? 0))
  const held = (value: number) => batchStandings(batchesOf([...values, value]).map(controlOf)).get('K12')?.[0]

  it('calls far what lies beyond 10 % and beyond what chance does in 3 of 1000 batches', () => {
    // Standard deviation √(8 × 0.0009/11), 2.56 %; 11 degrees: 3.81 × √1.1 of it are 10.2 %, so that reach decides.
    const deviation = Math.sqrt((8 * 0.0009) / 11)
    const reach = quantile(1 - CONTROL_RATE / 2, 11) * deviation * Math.sqrt(1.1)
    expect(reach).toBeGreaterThan(0.1)
    const centre = held(40)?.mean ?? 0
    expect(held(centre * Math.exp(reach + 1e-6))?.isFar).toBe(true)
    expect(held(centre * Math.exp(reach - 1e-6))?.isFar).toBe(false)
  })

  it('says nothing while fewer than four batches of the cement went before', () =>
    expect(batchStandings(batchesOf([40, 41, 39, 30]).map(controlOf)).size).toBe(0))
})
