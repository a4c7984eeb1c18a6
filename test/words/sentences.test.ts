import { describe, expect, it } from 'vitest'
import { fullSentence, plainSpaces, unbroken } from '../../src/words/sentences.ts'

describe('sentences', () => {
  it('begin large, end with one stop and hold a number to its unit', () => {
    expect(fullSentence('pending; all other clauses met')).toBe('Pending; all other clauses met.')
    expect(fullSentence('Done.')).toBe('Done.')
    expect(unbroken('50 %, 50 °C, w/cm 0.485, 28 d')).toBe('50\u00a0%, 50\u00a0°C, w/cm 0.485, 28\u00a0d')
    expect(unbroken('2 specimens')).toBe('2 specimens')
    expect(plainSpaces('due 4\u00a0July\u00a02026')).toBe('due 4 July 2026')
  })
})
