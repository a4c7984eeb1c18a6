import { expect, it } from 'vitest'
import type { VerdictReason } from '../../src/core/criteria/reason.ts'
import { verdictReasonWords } from '../../src/words/verdict-reasons.ts'

const clauses = { titleOf: (id: string) => `Clause ${id}`, reasonOf: (id: string) => `because of ${id}` }

it.each<[string, VerdictReason]>([
  ['no clause of this specification sets a limit for this lot', { code: 'no-clause-applies', params: {} }],
  ['meets the only clause that applies', { code: 'all-met', params: { count: 1 } }],
  ['meets all 2 clauses that apply', { code: 'all-met', params: { count: 2 } }],
  [
    'meets all 2 clauses that apply, some by approval',
    { code: 'all-met-some-by-approval', params: { count: 2 } },
  ],
  [
    'meets all clauses that can be evaluated; uniformity cannot be evaluated yet',
    { code: 'history-lacking', params: { uniformityAlone: true } },
  ],
  [
    'meets all clauses that can be evaluated; the rest cannot be evaluated yet',
    { code: 'history-lacking', params: { uniformityAlone: false } },
  ],
  [
    'fails the only clause that applies',
    { code: 'others-met', params: { outcome: 'does-not-meet', count: 1, others: 0 } },
  ],
  [
    'fails all 2 clauses that apply',
    { code: 'others-met', params: { outcome: 'does-not-meet', count: 2, others: 0 } },
  ],
  [
    'fails 2 clauses; meets the other 8',
    { code: 'others-met', params: { outcome: 'does-not-meet', count: 2, others: 8 } },
  ],
  [
    'pending for 1 clause; meets the other one',
    { code: 'others-met', params: { outcome: 'pending', count: 1, others: 1 } },
  ],
  [
    'a test is not valid for 1 clause; meets the other 3',
    { code: 'others-met', params: { outcome: 'not-valid', count: 1, others: 3 } },
  ],
  [
    'fails 1 clause so far; meets the other 9',
    { code: 'others-met', params: { outcome: 'does-not-meet', count: 1, others: 9, soFar: 1 } },
  ],
  [
    'fails 2 clauses, 1 of them only so far; meets the other one',
    { code: 'others-met', params: { outcome: 'does-not-meet', count: 2, others: 1, soFar: 1 } },
  ],
  [
    'Clause b, overdue since 9\u00a0December 2026, can still meet Clause a',
    { code: 'late-routes-of', params: { clause: 'a', routes: [{ clause: 'b', since: '2026-12-09' }] } },
  ],
  ['0 of 1 clause met so far', { code: 'met-so-far', params: { met: 0, failed: 0, of: 1 } }],
  ['2 of 3 clauses met so far', { code: 'met-so-far', params: { met: 2, failed: 0, of: 3 } }],
  [
    'fails 1 and meets 2 of 5 clauses; the others are still open',
    { code: 'met-so-far', params: { met: 2, failed: 1, of: 5 } },
  ],
  [
    'fails 1 of 3 clauses; the others are still open',
    { code: 'met-so-far', params: { met: 0, failed: 1, of: 3 } },
  ],
  ['Clause a: because of a', { code: 'decided-by', params: { clause: 'a' } }],
  [
    'also not reported: Clause a and Clause b',
    { code: 'also-open', params: { outcome: 'not-reported', clauses: ['a', 'b'] } },
  ],
  [
    'judged under edition 12a, which is superseded by ASTM C618, edition 19',
    { code: 'edition-superseded', params: { edition: '12a', by: 'ASTM C618, edition 19' } },
  ],
])('verdictReasonWords says "%s"', (words, reason) => {
  expect(verdictReasonWords(reason, clauses)).toBe(words)
})
