import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../../src/core/criteria/outcome.ts'
import type { Verdict } from '../../../src/core/criteria/verdict.ts'
import { changesBetween, compareLot } from '../../../src/core/judging/compare-sets.ts'

const verdict = (outcome: Outcome) => ({ outcome }) as Verdict
const lot = (...outcomes: (Outcome | null)[]) =>
  compareLot(
    outcomes.join(),
    outcomes.map((outcome) => (outcome === null ? null : verdict(outcome))),
  )

describe('compareLot', () => {
  it('compareLot changes where the sets that judge the lot give more than one outcome', () => {
    expect([
      lot('meets', 'meets').changes,
      lot('meets', 'pending').changes,
      lot(null, 'pending', 'pending').changes,
      lot(null, 'pending', 'meets').changes,
      lot(null, null).changes,
      lot('meets', 'not-applicable').changes,
    ]).toEqual([false, true, false, true, false, false])
  })
})

describe('changesBetween', () => {
  it('changesBetween counts each pair of outcomes, and apart from them lots that only one set judges', () => {
    const lots = [
      lot('meets', 'meets'),
      lot('meets', 'does-not-meet'),
      lot('meets', 'does-not-meet'),
      lot('does-not-meet', 'meets'),
      lot('pending', 'pending'),
      lot(null, 'meets'),
      lot('meets', null),
      lot('not-applicable', 'does-not-meet'),
      lot('not-applicable', 'not-applicable'),
    ]
    expect(changesBetween(lots, 0, 1)).toEqual({
      alike: 2,
      oneSided: 3,
      changes: [
        { from: 'meets', to: 'does-not-meet', count: 2 },
        { from: 'does-not-meet', to: 'meets', count: 1 },
      ],
    })
    expect(changesBetween([], 0, 1)).toEqual({ alike: 0, oneSided: 0, changes: [] })
  })
})
