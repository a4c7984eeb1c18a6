import { describe, expect, it } from 'vitest'
import type { NewMaterial } from '../../src/core/studies/screening/new-material.ts'
import { dfText, newMaterialSentence, variationNotes, variedText } from '../../src/words/study-variation.ts'

const NEW: NewMaterial = {
  n: 6,
  logMean: Math.log(73),
  logDeviation: 0.04,
  df: 6.08,
  value: 73,
  interval: [66.4, 80.3],
}
const SAID = { class: 'inert', batches: 3, level: 0.95 } as const

describe('newMaterialSentence', () => {
  it('states the prediction, and beside it the bound of the count', () => {
    expect(
      newMaterialSentence({
        ...SAID,
        found: NEW,
        atThreshold: { threshold: 85, predicted: 0.004, atMost: 0.393 },
      }),
    ).toBe(
      'A new inert material, by the mean of 3 batches: 73.0 %, 66.4 to 80.3 % (prediction at 95 %, 6.1 degrees of freedom). At the threshold of 85 % that predicts that < 1 % of new inert materials pass; the count alone, with no distribution assumed, allows at most 39 %.',
    )
  })
  it('says why nothing is predicted', () => {
    expect(newMaterialSentence({ ...SAID, found: 'above-ceiling', atThreshold: null })).toBe(
      'Of a new inert material nothing is predicted: some of the class read above the ceiling.',
    )
  })
})

describe('variedText', () => {
  const figure = { part: 'laboratory', deviation: 0.0321, why: null, isNegative: false, df: 4 } as const
  it('prints a hundredfold deviation, nought below zero, or why there is none', () => {
    expect(variedText(figure)).toBe('3.2')
    expect(variedText({ ...figure, deviation: 0, isNegative: true })).toBe('0 (below zero as computed)')
    expect(variedText({ ...figure, deviation: null, why: 'one-laboratory' })).toBe(
      'not separable from the rest: one laboratory',
    )
  })
})

describe('dfText', () => {
  it('never prints degrees of freedom as none', () => {
    expect([dfText(null), dfText(0.02), dfText(5.25)]).toEqual(['–', 'hardly any', '5.2'])
  })
})

describe('variationNotes', () => {
  it('names what one laboratory, a component below zero and a ceiling mean', () => {
    const notes = variationNotes({
      figures: [{ part: 'batch', deviation: 0, why: null, isNegative: true, df: null }],
      laboratories: 1,
      aboveCeiling: ['R1', 'R2'],
      inert: 'no-scatter',
      reactive: 'no-scatter',
      level: 0.95,
    })
    expect(notes).toHaveLength(3)
    expect(notes[2]).toContain('R1 and R2')
  })
})
