import { describe, expect, it } from 'vitest'
import {
  type ReadBatch,
  scatterSmall,
  specimensExcluded,
  unevenLastDigits,
} from '../../../src/core/checks/raw-readings.ts'
import { chanceOf } from '../../../src/demo/chance.ts'

const RULES = [
  { of: 3, rangePercent: 8.7 },
  { of: 2, rangePercent: 7.6 },
]

function batch(loads: readonly number[], decimals = 1, more: object = {}): ReadBatch {
  const specimens = loads.map((written) => ({ written, unit: 'kN', decimals, ...more }))
  return { lot: 'vale/V-1', laboratory: 'quay', condition: 'c311', of: 'strength', rules: RULES, specimens }
}

/** Three cubes a batch, by chance, in steps of `step`. */
function batches(count: number, { percent = 2.5, step = 0.1, decimals = 1, seed = 0.4 } = {}): ReadBatch[] {
  const chance = chanceOf(seed)
  return Array.from({ length: count }, () => {
    const centre = 40 + 60 * chance.uniform()
    const loads = [1, 2, 3].map(() => {
      const load = centre * (1 + (percent / 100) * chance.normal())
      return Number((Math.round(load / step) * step).toFixed(decimals))
    })
    return batch(loads, decimals)
  })
}

const noDevice = () => undefined

describe('unevenLastDigits', () => {
  it('finds fifty readings that nobody reads to the last digit', () => {
    // Digits 0 and 5 alone in tenths are no coarser step where a third of them lies between.
    const loads = Array.from({ length: 60 }, (_, place) => 60 + place / 2 + (place % 30 === 0 ? 0.1 : 0))
    const { findings, looked } = unevenLastDigits('vale', [batch(loads)], noDevice)
    expect(looked).toBe(1)
    expect(findings[0]?.id).toBe('uneven-last-digits/vale/quay/kN/0.1')
    const reason = findings[0]?.reason
    expect(reason?.code === 'uneven-last-digits' && reason.params.counts).toEqual([
      28, 2, 0, 0, 0, 30, 0, 0, 0, 0,
    ])
  })
  it('takes what are all multiples of five, ten or more steps for a device of that step', () => {
    const loads = batches(30, { step: 0.5 })
    expect(unevenLastDigits('vale', loads, noDevice)).toMatchObject({ looked: 1, findings: [] })
  })
  it('takes the step of the device where the laboratory states it', () => {
    const loads = batches(30, { step: 0.5 })
    expect(unevenLastDigits('vale', loads, () => 0.5)).toMatchObject({ looked: 1, findings: [] })
  })
  it('asks nothing of fewer than fifty readings, or of readings within a few steps', () => {
    expect(unevenLastDigits('vale', batches(16), noDevice).looked).toBe(0)
    const close = Array.from({ length: 60 }, (_, place) => 60 + (place % 7) / 10)
    expect(unevenLastDigits('vale', [batch(close)], noDevice).looked).toBe(0)
  })
  it('raises a flag on about one clean source in a hundred', () => {
    const flags = Array.from({ length: 300 }, (_, trial) =>
      unevenLastDigits('vale', batches(40, { seed: (trial + 0.5) / 300 }), noDevice),
    ).filter(({ findings }) => 0 < findings.length)
    // A binomial count of 300 at 1 % is 0 to 8 in 99.6 of 100 cases.
    expect(flags.length).toBeLessThanOrEqual(8)
  })
})

describe('scatterSmall', () => {
  it('compares with half of what the range rule stands for: 8.7 % of three are 2.63 %, half 1.31 %', () => {
    const [finding] = scatterSmall('vale', batches(12, { percent: 0.3 })).findings
    const reason = finding?.reason
    expect(finding?.id).toBe('scatter-small/vale/quay/c311')
    expect(reason?.code === 'scatter-small' && reason.params).toMatchObject({
      batches: 12,
      degreesOfFreedom: 24,
    })
    expect(reason?.code === 'scatter-small' && reason.params.comparedPercent).toBeCloseTo(1.314, 3)
  })
  it('leaves an ordinary and a careful laboratory alone, and one with few batches', () => {
    expect(scatterSmall('vale', batches(40))).toMatchObject({ looked: 1, findings: [] })
    expect(scatterSmall('vale', batches(40, { percent: 1.4 }))).toMatchObject({ looked: 1, findings: [] })
    expect(scatterSmall('vale', batches(9, { percent: 0.3 }))).toMatchObject({ looked: 0, findings: [] })
  })
  it('pools the batches: of 60, 62 and 61, 63 kN the deviation is 2.30 %', () => {
    // s² / mean² of 60, 62: 2 / 3721; of 61, 63: 2 / 3844; root of their mean 2.30 %.
    const pairs = [batch([60, 62]), batch([61, 63])]
    const ten = [...pairs, ...pairs, ...pairs, ...pairs, ...pairs].map((one) => ({
      ...one,
      rules: [{ of: 2, rangePercent: 40 }],
    }))
    const reason = scatterSmall('vale', ten).findings[0]?.reason
    expect(reason?.code === 'scatter-small' && reason.params.percent).toBeCloseTo(2.2997, 3)
  })
})

describe('specimensExcluded', () => {
  it('asks where more than one specimen in twenty was left out', () => {
    const kept = batches(7)
    expect(
      specimensExcluded('vale', [...kept, batch([60], 1, { excluded: 'capped badly' })]).findings,
    ).toEqual([])
    const two = [...kept, batch([60, 61], 1, { excluded: 'capped badly' })]
    expect(specimensExcluded('vale', two).findings[0]?.reason.params).toMatchObject({
      excluded: 2,
      specimens: 23,
    })
  })
})
