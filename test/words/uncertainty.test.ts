import { describe, expect, it } from 'vitest'
import { doubtOfOutcome } from '../../src/core/judging/doubt-of-outcome.ts'
import { basisWords, doubtWords } from '../../src/words/uncertainty.ts'

/** Of a value against at least 75 %. */
function words(value: number, u: number): string {
  return doubtWords(
    { ...doubtOfOutcome(value, { low: { at: 75, step: 0 } }, { u }), unit: '%', decimals: 1 },
    {},
  )
}

describe('doubtWords', () => {
  it('says how far clear a value is, in points and in its own uncertainty', () => {
    expect(words(83, 2.8)).toBe('8.0 points above the limit, 2.9 standard uncertainties')
    expect(words(65, 2.8)).toBe('10.0 points below the limit, 3.6 standard uncertainties')
  })

  it('says when the uncertainty is larger than the distance, and what would decide', () => {
    expect(words(76.4, 2.8)).toBe(
      '1.4 points above the limit, less than its uncertainty of 2.8 points; the mean of 11 batches would decide',
    )
    expect(words(74.4, 2.8)).toBe(
      '0.6 points below the limit, less than its uncertainty of 2.8 points; more batches than can be made would be needed to decide',
    )
  })

  it('says that nothing decides a value on the limit', () => {
    expect(words(75, 2.8)).toBe(
      'on the limit, less than its uncertainty of 2.8 points; no number of batches decides',
    )
  })

  it('between one and 1.645 uncertainties still names the batches', () => {
    expect(words(78, 2.5)).toBe(
      '3.0 points above the limit, 1.2 standard uncertainties; the mean of 2 batches would decide',
    )
  })

  it('says the distance alone where the value is known without doubt', () => {
    expect([words(76, 0), words(75, 0)]).toEqual(['1.0 points above the limit', 'on the limit'])
  })

  it('prints the sign of a unit', () => {
    const found = doubtOfOutcome(2.61, { high: { at: 2.6, step: 0 } }, { u: 0.02 })
    expect(doubtWords({ ...found, unit: 'g/cm3', decimals: 2 }, {})).toBe(
      '0.01 g/cm³ above the limit, less than its uncertainty of 0.02 g/cm³; the mean of 11 batches would decide',
    )
  })

  it('names no unit where there is none', () => {
    const found = doubtOfOutcome(1.25, { high: { at: 1, step: 0 } }, { u: 0.125 })
    expect(doubtWords({ ...found, unit: '', decimals: 2 }, {})).toBe(
      '0.25 above the limit, 2.0 standard uncertainties',
    )
  })
})

describe('doubtWords of a value that is rounded first', () => {
  const rounded = (value: number, u: number, of = {}) =>
    doubtWords(
      { ...doubtOfOutcome(value, { low: { at: 74.5, step: 1 } }, { u }), unit: '%', decimals: 1 },
      of,
    )

  it('measures from where rounding begins to admit it, and says so', () => {
    expect(rounded(74.8, 0.1)).toBe(
      '0.3 points above 74.5 % (the limit before rounding), 3.0 standard uncertainties',
    )
    expect(rounded(74.5, 0.1)).toContain('on 74.5 % (the limit before rounding)')
  })

  it('shows the first digit of a small distance', () => {
    expect(rounded(74.503, 0)).toBe('0.003 points above 74.5 % (the limit before rounding)')
  })

  it('asks for a control of its own for each batch of an index, and for no more than twenty batches', () => {
    expect(rounded(75.5, 2, { property: 'strength-activity-index' })).toMatch(
      /; the mean of 11 batches, each with its own control, would decide$/,
    )
    // (1.6449 × 2 / 0.72)² = 20.9, and at 0.74 19.8.
    expect(rounded(75.22, 2)).toMatch(/; more batches than can be made would be needed to decide$/)
    expect(rounded(75.24, 2)).toMatch(/; the mean of 20 batches would decide$/)
  })
})

describe('basisWords', () => {
  it('leaves a laboratory’s own text as it is', () => {
    expect(basisWords({ code: 'stated', params: { basis: '24 batches' } })).toBe('24 batches')
  })

  it('says that fewer than ten degrees of freedom are few', () => {
    const of = (df: number) => basisWords({ code: 'repeated-batches', params: { cvPercent: 2.35, df } })
    expect(of(9)).toBe(
      'pooled from the laboratory’s earlier repeated batches of one lot, 2.4 % between batches with 9 degrees of freedom, which are few',
    )
    expect(of(10)).not.toContain('few')
  })

  it('says that test batches are taken to scatter as control batches do', () => {
    expect(basisWords({ code: 'control-batches', params: { cvPercent: 3, df: 12 } })).toBe(
      'pooled from the laboratory’s earlier control batches, 3.0 % between batches with 12 degrees of freedom; test batches taken to scatter alike',
    )
  })
})
