import { describe, expect, it } from 'vitest'
import { OUTCOMES } from '../../src/core/criteria/outcome.ts'
import { outcomeWords, verdictHeadline } from '../../src/words/outcomes.ts'

describe('outcomeWords', () => {
  it('have a word for every outcome, each its own', () => {
    expect(new Set(OUTCOMES.map(outcomeWords)).size).toBe(OUTCOMES.length)
  })
})

describe('verdictHeadline', () => {
  it('verdictHeadline never gives a class without its edition', () => {
    expect(
      verdictHeadline(
        { outcome: 'meets', class: 'F', edition: '12a' },
        { title: 'Coal fly ash', designation: 'ASTM C618' },
      ),
    ).toBe('Meets ASTM C618, edition 12a, class F')
    expect(
      verdictHeadline({ outcome: 'pending', class: null, edition: '1' }, { title: 'Resistivity option' }),
    ).toBe('Pending under Resistivity option, edition 1')
  })
})
