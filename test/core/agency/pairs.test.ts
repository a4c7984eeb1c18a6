import { describe, expect, it } from 'vitest'
import { areOpposite, isBeyond, pairsOfLot } from '../../../src/core/agency/pairs.ts'
import { precisionRow } from '../../../src/core/agency/precision.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { result, setOf } from '../judging/fixture.ts'
import { agencys, lotOf } from './fixture.ts'

const ROWS = [
  precisionRow({
    property: 'loss-on-ignition',
    laboratories: 'several',
    'standard-deviation': '0.20 percentage points',
    source: 'round robin',
  }),
].flatMap((row) => row ?? [])

describe('pairsOfLot', () => {
  it('pairsOfLot holds 6.00 % against the agency’s 6.55 %: within 0.57 points and on opposite sides of 6.0 %', () => {
    const lot = lotOf(1, [result('loss-on-ignition', 6), agencys('loss-on-ignition', 6.55)])
    const [pair, ...others] = pairsOfLot(lot, ROWS)
    expect(others).toEqual([])
    expect(pair?.difference).toBeCloseTo(0.55, 10)
    expect(pair && isBeyond(pair)).toBe(false)
    expect(pair?.sides.map(({ producer, agency }) => [producer, agency])).toEqual([
      ['meets', 'would-not-meet'],
    ])
    expect(pair && areOpposite(pair)).toBe(true)
  })

  it('pairsOfLot judges each side at the edge where rounding changes the outcome', () => {
    // 6.04 rounds to 6.0 and meets; 6.06 rounds to 6.1.
    const lot = lotOf(1, [result('loss-on-ignition', 6.04), agencys('loss-on-ignition', 6.06)])
    expect(pairsOfLot(lot, []).map(areOpposite)).toEqual([true])
    const alike = lotOf(1, [result('loss-on-ignition', 6.01), agencys('loss-on-ignition', 6.04)])
    expect(pairsOfLot(alike, []).map(areOpposite)).toEqual([false])
  })

  it('pairsOfLot lets a difference of exactly the limit pass, and not one of a hundredth more', () => {
    const beyond = (value: number) =>
      pairsOfLot(lotOf(1, [result('loss-on-ignition', 2), agencys('loss-on-ignition', value)]), ROWS).map(
        isBeyond,
      )
    expect(beyond(2.566)).toEqual([false])
    expect(beyond(2.576)).toEqual([true])
    expect(beyond(1.42)).toEqual([true])
  })

  it('pairsOfLot holds an independent sample against no limit of difference', () => {
    const own = agencys('loss-on-ignition', 9, { sample: 'I', sampleKind: 'independent' })
    const [pair] = pairsOfLot(lotOf(1, [result('loss-on-ignition', 2), own]), ROWS)
    expect(pair).toMatchObject({ kind: 'independent', difference: 7 })
    expect(pair?.allowed).toBeUndefined()
    expect(pair && isBeyond(pair)).toBeNull()
  })

  it('pairsOfLot compares an index only at its own condition and age', () => {
    const at = (age: string) => ({ condition: 'c311', age: readAge(age) })
    const results = [
      result('strength-activity-index', 80, at('7 d')),
      result('strength-activity-index', 90, at('28 d')),
      agencys('strength-activity-index', 84, at('28 d')),
      agencys('strength-activity-index', 70, { condition: 'modified-50c', age: readAge('28 d') }),
    ]
    expect(pairsOfLot(lotOf(1, results), []).map(({ difference }) => difference)).toEqual([-6])
  })

  it('pairsOfLot takes the producer’s result that stands in its history: valid, composite, latest', () => {
    const results = [
      result('loss-on-ignition', 1, { sampleKind: 'grab', sample: 'G' }),
      result('loss-on-ignition', 2),
      result('loss-on-ignition', 3, { tested: readMoment('2026-03-12') }),
      result('loss-on-ignition', 4, { tested: readMoment('2026-03-20'), valid: false }),
      agencys('loss-on-ignition', 5),
      agencys('loss-on-ignition', 9, { valid: false, tested: readMoment('2026-03-20') }),
    ]
    expect(pairsOfLot(lotOf(1, results), []).map(({ difference }) => difference)).toEqual([2])
  })

  it('pairsOfLot takes the kind that the record states before that of the sample', () => {
    const results = [
      result('loss-on-ignition', 2),
      agencys('loss-on-ignition', 3, { sample: 'C', sampleKind: 'composite' }),
    ]
    const kind = (more: object) => pairsOfLot(lotOf(1, results, more), ROWS).map((pair) => pair.kind)
    expect(kind({ statedKind: () => 'split' })).toEqual(['split'])
    expect(kind({})).toEqual(['independent'])
  })

  it('pairsOfLot says no difference of a value known only within bounds, but on which side it lies', () => {
    const low = agencys('loss-on-ignition', 0.5, {
      censored: 'below',
      bounds: { low: 0, high: 0.5, open: 'high' },
    })
    const [pair] = pairsOfLot(lotOf(1, [result('loss-on-ignition', 7), low]), ROWS)
    expect(pair?.difference).toBeNull()
    expect(pair && areOpposite(pair)).toBe(true)
  })

  it('pairsOfLot leaves a withdrawn lot, and one without results of both sides, out', () => {
    const both = [result('loss-on-ignition', 2), agencys('loss-on-ignition', 3)]
    expect(pairsOfLot(lotOf(1, both, { withdrawn: readMoment('2026-03-30') }), ROWS)).toEqual([])
    expect(pairsOfLot(lotOf(1, both.slice(1)), ROWS)).toEqual([])
    expect(pairsOfLot(lotOf(1, both.slice(0, 1)), ROWS)).toEqual([])
  })

  it('pairsOfLot asks no side of a clause on another class, a deviation, a statistic or a wish', () => {
    const set = setOf(
      [
        { clause: 'n', property: 'loss-on-ignition', 'at-most': '1 %', classes: ['N'] },
        { clause: 'wish', property: 'loss-on-ignition', 'at-most': '1 %', optional: 'yes' },
        { clause: 'other', property: 'SO3', 'at-most': '1 %' },
      ],
      { classes: ['F', 'N'] },
    )
    const both = [result('loss-on-ignition', 2), agencys('loss-on-ignition', 3)]
    expect(pairsOfLot(lotOf(1, both, { criterion: set }), []).map(({ sides }) => sides)).toEqual([[]])
    expect(pairsOfLot(lotOf(1, both, { criterion: undefined }), []).map(({ sides }) => sides)).toEqual([[]])
  })
})
