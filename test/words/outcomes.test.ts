import { describe, expect, it } from 'vitest'
import { OUTCOMES } from '../../src/core/criteria/outcome.ts'
import { isHeadlineOfAnother, outcomeWords, verdictHeadline } from '../../src/words/outcomes.ts'

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

  it('of a set without a class for the lot says so, since no result is missing', () => {
    const headline = verdictHeadline(
      { outcome: 'not-reported', class: null, edition: '2006' },
      { title: 'Slag', noClass: true },
    )
    expect(headline).toBe('No class for this lot in Slag, edition 2006')
    expect(isHeadlineOfAnother(headline, 'not-reported')).toBe(false)
    expect(isHeadlineOfAnother(headline, 'meets')).toBe(true)
  })
  it('says where no clause could be evaluated, which is no other outcome', () => {
    const set = { title: 'Coal fly ash', designation: 'ASTM C618', unevaluated: true } as const
    const headline = verdictHeadline({ outcome: 'insufficient-history', class: 'F', edition: '12a' }, set)
    expect(headline).toBe('No clause of ASTM C618, edition 12a, class F can be evaluated yet')
    expect(isHeadlineOfAnother(headline, 'insufficient-history')).toBe(false)
    expect(isHeadlineOfAnother(headline, 'not-applicable')).toBe(true)
  })
})
