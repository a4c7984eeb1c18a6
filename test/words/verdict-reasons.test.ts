import { expect, it } from 'vitest'
import type { VerdictReason } from '../../src/core/criteria/reason.ts'
import { verdictReasonWords } from '../../src/words/verdict-reasons.ts'

const clauses = { titleOf: (id: string) => `Clause ${id}`, reasonOf: (id: string) => `because of ${id}` }

it.each<[string, VerdictReason]>([
  ['no clause of the set gives a limit for this lot', { code: 'no-clause-applies', params: {} }],
  ['meets the one clause that applies', { code: 'all-met', params: { count: 1 } }],
  ['meets all 2 clauses that apply', { code: 'all-met', params: { count: 2 } }],
  [
    'meets all 2 clauses that apply, some by approval',
    { code: 'all-met-some-by-approval', params: { count: 2 } },
  ],
  [
    'meets all clauses that can be evaluated; uniformity not yet evaluable',
    { code: 'history-lacking', params: { uniformityAlone: true } },
  ],
  [
    'meets all clauses that can be evaluated; the rest not yet evaluable',
    { code: 'history-lacking', params: { uniformityAlone: false } },
  ],
  ['does not meet', { code: 'others-met', params: { outcome: 'does-not-meet', others: 0 } }],
  ['pending; all other clauses met', { code: 'others-met', params: { outcome: 'pending', others: 1 } }],
  ['0 of 1 clause met so far', { code: 'met-so-far', params: { met: 0, of: 1 } }],
  ['2 of 3 clauses met so far', { code: 'met-so-far', params: { met: 2, of: 3 } }],
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
