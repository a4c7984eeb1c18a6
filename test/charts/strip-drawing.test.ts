import { describe, expect, it } from 'vitest'
import { stripDrawing } from '../../src/charts/strip-drawing.ts'

const at = (value: number) => ({ value, from: 75 })

describe('stripDrawing', () => {
  it('draws the mark in the shape of its outcome', () => {
    expect(stripDrawing(at(80), 'meets')?.mark).toMatchObject({ form: 'dot' })
    expect(stripDrawing(at(80), 'meets-by-approval')?.mark).toMatchObject({ form: 'dot' })
    expect(stripDrawing(at(70), 'does-not-meet')?.mark).toMatchObject({ form: 'path' })
    for (const outcome of ['inconclusive', 'not-valid', 'insufficient-history'] as const)
      expect(stripDrawing(at(80), outcome)?.mark).toMatchObject({ form: 'ring' })
  })
  it('draws an arrow whatever the outcome where the value lies beyond the line', () => {
    const far = stripDrawing(at(1500), 'meets')?.mark
    expect(far).toEqual(stripDrawing(at(1500), 'does-not-meet')?.mark)
    expect(far).toMatchObject({ form: 'path' })
  })
  it('draws the limit alone without a value, and an interval only with an uncertainty', () => {
    expect(stripDrawing({ from: 75 }, 'pending')).toMatchObject({ mark: null, interval: null })
    expect(stripDrawing({ ...at(80), u: 1 }, 'meets')?.interval).toMatch(/^M[\d.]+ 4\.5V11\.5M/)
  })
  it('is null without a limit to draw', () => expect(stripDrawing({ value: 3 }, 'reported')).toBeNull())
})
