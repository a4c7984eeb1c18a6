import { describe, expect, it } from 'vitest'
import { admitted } from '../../src/core/criteria/decision-rule.ts'
import { doubtOfOutcome } from '../../src/core/judging/doubt-of-outcome.ts'
import { basisWords, doubtWords } from '../../src/words/uncertainty.ts'

/** Of a value against at least 75 %. */
function words(value: number, u: number): string {
  return doubtWords(doubtOfOutcome(value, admitted('at-least', [75]), { u, unit: '%', decimals: 1 }))
}

describe('doubtWords', () => {
  it('says how far clear a value is, in points and in its own uncertainty', () => {
    expect(words(83, 2.8)).toBe('8.0 points clear of the limit, 2.9 standard uncertainties')
    expect(words(65, 2.8)).toBe('10.0 points beyond the limit, 3.6 standard uncertainties')
  })

  it('says when the uncertainty is larger than the distance, and what would decide', () => {
    expect(words(76.4, 2.8)).toBe(
      '1.4 points clear of the limit, less than its uncertainty of 2.8 points; the mean of 11 batches would decide',
    )
    expect(words(74.4, 2.8)).toBe(
      '0.6 points beyond the limit, less than its uncertainty of 2.8 points; the mean of 59 batches would decide',
    )
  })

  it('says that nothing decides a value on the limit', () => {
    expect(words(75, 2.8)).toBe(
      '0.0 points clear of the limit, less than its uncertainty of 2.8 points; no number of batches decides',
    )
  })

  it('between one and 1.645 uncertainties still names the batches', () => {
    expect(words(78, 2.5)).toBe(
      '3.0 points clear of the limit, 1.2 standard uncertainties; the mean of 2 batches would decide',
    )
  })

  it('says the distance alone where the value is known without doubt', () => {
    expect([words(76, 0), words(75, 0)]).toEqual([
      '1.0 points clear of the limit',
      '0.0 points clear of the limit',
    ])
  })

  it('prints the sign of a unit', () => {
    const found = doubtOfOutcome(2.61, admitted('at-most', [2.6]), { u: 0.02, unit: 'g/cm3', decimals: 2 })
    expect(doubtWords(found)).toBe(
      '0.01 g/cm³ beyond the limit, less than its uncertainty of 0.02 g/cm³; the mean of 11 batches would decide',
    )
  })

  it('names no unit where there is none', () => {
    const found = doubtOfOutcome(1.25, admitted('at-most', [1]), { u: 0.125, unit: '', decimals: 2 })
    expect(doubtWords(found)).toBe('0.25 beyond the limit, 2.0 standard uncertainties')
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
