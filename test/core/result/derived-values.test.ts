import { describe, expect, it } from 'vitest'
import { derivedOnDemand } from '../../../src/core/result/derived-values.ts'
import { result } from '../judging/fixture.ts'

const figures = (found: ReturnType<typeof derivedOnDemand>) =>
  found.map(({ property, value, unit, decimals }) => [property, value, unit, decimals])

describe('derivedOnDemand', () => {
  it('turns a residue into what passes, and back, with the decimals of the result: 100 − 17.25', () => {
    const residue = result('residue-45um', 17.25, { decimals: 2 })
    expect(figures(derivedOnDemand('passing-45um', [residue]))).toEqual([['passing-45um', 82.75, '%', 2]])
    const passing = result('passing-45um', 82.75, { decimals: 1 })
    expect(figures(derivedOnDemand('residue-45um', [passing]))).toEqual([['residue-45um', 17.25, '%', 1]])
  })
  it('keeps whose result it was, and drops how that was written and on which basis', () => {
    const residue = result('residue-45um', 17.2, {
      written: '17.2 %',
      basis: 'dry',
      method: 'sieve',
      valid: false,
      reasons: [{ code: 'value-excluded', params: { why: 'torn sieve' } }],
    })
    const [passing] = derivedOnDemand('passing-45um', [residue])
    expect(passing).toMatchObject({
      key: residue.key,
      method: 'sieve',
      valid: false,
      reasons: residue.reasons,
    })
    expect(passing).not.toHaveProperty('written')
    expect(passing).not.toHaveProperty('basis')
  })
  it('multiplies loss and residue of one sample and laboratory alone: 3 × 20', () => {
    const residue = result('residue-45um', 20)
    const loss = result('loss-on-ignition', 3)
    expect(figures(derivedOnDemand('multiple-factor', [loss, residue]))).toEqual([
      ['multiple-factor', 60, '', 0],
    ])
    expect(derivedOnDemand('multiple-factor', [{ ...loss, sample: 'G' }, residue])).toEqual([])
    expect(derivedOnDemand('multiple-factor', [{ ...loss, laboratory: 'other' }, residue])).toEqual([])
    expect(derivedOnDemand('multiple-factor', [residue])).toEqual([])
  })
  it('makes one product of each pair', () => {
    const losses = [result('loss-on-ignition', 3), result('loss-on-ignition', 4)]
    expect(
      derivedOnDemand('multiple-factor', [...losses, result('residue-45um', 20)]).map(({ value }) => value),
    ).toEqual([60, 80])
  })
  it('takes nothing from a value known only as below a bound', () => {
    const below = { censored: 'below' as const }
    expect(derivedOnDemand('passing-45um', [result('residue-45um', 0.1, below)])).toEqual([])
    expect(derivedOnDemand('residue-45um', [result('passing-45um', 0.1, below)])).toEqual([])
    expect(
      derivedOnDemand('multiple-factor', [
        result('residue-45um', 20),
        result('loss-on-ignition', 0.1, below),
      ]),
    ).toEqual([])
  })
  it('knows no other property', () => {
    expect(derivedOnDemand('density', [result('residue-45um', 20), result('density', 2.4)])).toEqual([])
  })
})
