import { expect, it } from 'vitest'
import type { Outcome } from '../../../src/core/criteria/outcome.ts'
import type { ClauseOutcome, Verdict } from '../../../src/core/criteria/verdict.ts'
import { verdictStanding } from '../../../src/core/criteria/verdict-standing.ts'

/** A verdict with clauses of these outcomes, the last for information. */
function verdict(outcome: Outcome, ...clauses: readonly Outcome[]): Verdict {
  const reasons = [{ code: 'no-result', params: {} }]
  const own = clauses.map(
    (one, place) =>
      ({ id: `c${place}`, outcome: one, information: false, reasons }) as unknown as ClauseOutcome,
  )
  const told = { id: 'i', outcome: 'meets', information: true, reasons } as unknown as ClauseOutcome
  return { outcome, decidedBy: ['c0'], clauses: [...own, told] } as unknown as Verdict
}

it('verdictStanding says that nothing was evaluated where no clause is met for want of a history', () => {
  expect(verdictStanding(verdict('insufficient-history', 'insufficient-history'))).toEqual({
    unevaluated: true,
  })
  expect(verdictStanding(verdict('insufficient-history', 'insufficient-history', 'reported'))).toEqual({
    unevaluated: true,
  })
  expect(verdictStanding(verdict('insufficient-history', 'insufficient-history', 'meets'))).toEqual({})
  expect(verdictStanding(verdict('not-reported', 'not-reported'))).toEqual({})
})
