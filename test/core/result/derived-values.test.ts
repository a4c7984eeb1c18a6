import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
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
  it('carries the bounds: less than 1 % retained is more than 99 % passing', () => {
    const retained = result('residue-45um', 1, {
      censored: 'below',
      bounds: { low: 0, high: 1, open: 'high' },
    })
    const [passing] = derivedOnDemand('passing-45um', [retained])
    expect(passing).toMatchObject({ value: 99, bounds: { low: 99, high: 100, open: 'low' } })
    expect(passing).not.toHaveProperty('censored')
    const passed = result('passing-45um', 60, {
      censored: 'below',
      bounds: { low: 0, high: 60, open: 'high' },
    })
    expect(derivedOnDemand('residue-45um', [passed])[0]?.bounds).toEqual({ low: 40, high: 100, open: 'low' })
    // 0 × 20 to 0.5 × 20.
    const loss = result('loss-on-ignition', 0.5, { bounds: { low: 0, high: 0.5, open: 'high' } })
    expect(derivedOnDemand('multiple-factor', [result('residue-45um', 20), loss])[0]).toMatchObject({
      value: 10,
      bounds: { low: 0, high: 10, open: 'high' },
    })
  })
  it('turns the control’s value with its own, and multiplies those of a product', () => {
    const residue = result('residue-45um', 20, { controlValue: 15 })
    expect(derivedOnDemand('passing-45um', [residue])[0]).toMatchObject({ value: 80, controlValue: 85 })
    const bounded = { ...residue, controlBounds: { low: 0, high: 15, open: 'high' as const } }
    expect(derivedOnDemand('passing-45um', [bounded])[0]?.controlBounds).toEqual({
      low: 85,
      high: 100,
      open: 'low',
    })
    const loss = result('loss-on-ignition', 3, { controlValue: 2 })
    expect(derivedOnDemand('multiple-factor', [residue, loss])[0]).toMatchObject({ controlValue: 30 })
    expect(
      derivedOnDemand('multiple-factor', [residue, result('loss-on-ignition', 3)])[0],
    ).not.toHaveProperty('controlValue')
  })
  it('makes a product that is valid only where both parts are, known when the later of them was', () => {
    const residue = result('residue-45um', 20, { tested: readMoment('2026-03-10') })
    const reasons = [{ code: 'value-excluded', params: { why: 'crucible broke' } }] as const
    const loss = result('loss-on-ignition', 3, {
      valid: false,
      reasons,
      tested: readMoment('2026-03-12'),
      known: readMoment('2026-03-15'),
    })
    expect(derivedOnDemand('multiple-factor', [residue, loss])[0]).toMatchObject({
      valid: false,
      reasons,
      tested: readMoment('2026-03-12'),
      known: readMoment('2026-03-15'),
    })
    expect(
      derivedOnDemand('multiple-factor', [{ ...residue, valid: false }, result('loss-on-ignition', 3)])[0]
        ?.valid,
    ).toBe(false)
  })
  it('knows no other property', () => {
    expect(derivedOnDemand('density', [result('residue-45um', 20), result('density', 2.4)])).toEqual([])
  })
})
