/** Sentences of clause reasons that the tests of judging do not ask for in words. */
import { describe, expect, it } from 'vitest'
import type { AgreedRule } from '../../src/core/criteria/decision-rule.ts'
import type { AddedReason, ClauseReason } from '../../src/core/criteria/reason.ts'
import { clauseReasonWords } from '../../src/words/clause-reasons.ts'

const said = (first: ClauseReason, ...added: AddedReason[]) =>
  clauseReasonWords([first, ...added], (id) => `Clause ${id}`)

const atLeast = { operator: 'at-least' as const, written: ['75 %'] }
const outer = { operator: 'at-most' as const, written: ['12.0 %'] }
const percent = (value: number, decimals = 0) => ({ value, decimals, unit: '%' })
const rule: AgreedRule = { rule: 'probability', p: 0.95, agreedIn: 'provision 7' }
const plain: ClauseReason = {
  code: 'compared-with-limit',
  params: { subject: 'value', compared: percent(9, 1), met: false, limit: outer },
}

describe('clauseReasonWords, limits', () => {
  it('clauseReasonWords says what is compared, with a true minus sign', () => {
    const deviation: ClauseReason = {
      code: 'compared-with-limit',
      params: {
        subject: 'deviation',
        compared: { value: -5.1, decimals: 1, unit: '%' },
        unrounded: -5.0641025641,
        met: true,
        limit: { operator: 'magnitude-at-most', written: ['5 %'] },
      },
    }
    const plainly = {
      code: 'compared-with-limit' as const,
      params: {
        subject: 'value' as const,
        compared: { value: 0.04, decimals: 2, unit: '%' },
        unrounded: 0.040000001,
        met: true,
        limit: { operator: 'at-most' as const, written: ['0.05 %'] },
      },
    }
    expect(said(plainly)).toBe('0.04 % meets the limit, at most 0.05 %')
    expect(said(deviation)).toBe(
      'deviation −5.1 % (−5.0641 before rounding) meets the limit, at most 5 % in magnitude',
    )
  })

  it('clauseReasonWords says of a censored result what it decides', () => {
    const censored = (answer: 'met' | 'not-met' | 'cannot-decide') =>
      said({ code: 'censored-with-limit', params: { below: percent(40), answer, limit: atLeast } })
    expect([censored('met'), censored('not-met'), censored('cannot-decide')]).toEqual([
      'reported as below 40 %, which meets the limit, at least 75 %',
      'reported as below 40 %, which does not meet the limit, at least 75 %',
      'reported as below 40 %, which leaves open whether it meets the limit, at least 75 %',
    ])
  })

  it('clauseReasonWords names the rule and where it was agreed', () => {
    const under = (outcome: 'meets' | 'does-not-meet' | 'inconclusive') =>
      said({
        code: 'under-rule',
        params: { value: 78.96, u: 2, unit: '%', outcome, limit: atLeast, rule, df: 4, probability: 0.9438 },
      })
    const end =
      'the limit, at least 75 %, under the probability of conformity of at least 0.95 agreed in provision 7; probability of conformity 0.944 with 4 degrees of freedom'
    expect([under('meets'), under('does-not-meet'), under('inconclusive')]).toEqual([
      `78.96 % with a standard uncertainty of 2.0 points meets ${end}`,
      `78.96 % with a standard uncertainty of 2.0 points does not meet ${end}`,
      `78.96 % with a standard uncertainty of 2.0 points neither meets nor fails ${end}`,
    ])
    expect(said({ code: 'no-uncertainty', params: { rule, asSpecified: plain } })).toBe(
      'no uncertainty stated, which the decision rule needs; as specified, 9.0 % does not meet the limit, at most 12.0 %',
    )
  })

  it.each<[string, AddedReason]>([
    [
      '; the guard band of 2 standard uncertainties is not agreed in writing, so judged as specified',
      { code: 'rule-not-agreed', params: { rule: { rule: 'guarded', k: 2 } } },
    ],
    [
      ', under the probability of conformity of at least 0.95 agreed in provision 7',
      { code: 'rule-applied', params: { rule } },
    ],
    [
      '; the outer limit, at most 12.0 %, needs an approval on evidence (records); no approval is on record',
      { code: 'approval-lacking', params: { limit: outer, evidence: 'records' } },
    ],
    [
      ', but is within the outer limit, at most 12.0 %, approved by the agency from 1\u00a0January 2026 on evidence: report 3',
      {
        code: 'approval-granted',
        params: { limit: outer, by: 'the agency', from: '2026-01-01', evidence: 'report 3' },
      },
    ],
    [
      '; the outer limit, at most 12.0 %, applies where the source declares its value, and it declares none',
      { code: 'declaration-lacking', params: { limit: outer } },
    ],
    [
      '; the declared value of 8.0 % does not cover it, and the outer limit, at most 12.0 %, needs one that does',
      { code: 'declaration-exceeded', params: { limit: outer, declared: '8.0 %' } },
    ],
    [
      ', but is within the declared value of 9.0 % and the outer limit, at most 12.0 %',
      { code: 'declaration-covers', params: { limit: outer, declared: '9.0 %' } },
    ],
    [
      '; the declared value of 2.43 g/cm³ does not cover it, and the outer limit, at most 2.40 g/cm³, needs one that does',
      {
        code: 'declaration-exceeded',
        params: { limit: { operator: 'at-most', written: ['2.40 g/cm3'] }, declared: '2.43 g/cm3' },
      },
    ],
    [
      ', but is within the declared value of 44.0 Ω·m and the outer limit, at most 12.0 %',
      { code: 'declaration-covers', params: { limit: outer, declared: '44.0 ohm m' } },
    ],
    [
      '; mean of 1 preceding result 2.337 g/cm³',
      {
        code: 'deviation-reference',
        params: { from: 'preceding', n: 1, reference: { value: 2.337, decimals: 3, unit: 'g/cm3' } },
      },
    ],
    [
      '; mean of 10 preceding results 9.25 %',
      { code: 'deviation-reference', params: { from: 'preceding', n: 10, reference: percent(9.25, 2) } },
    ],
    [
      '; declared value 9.00 %',
      { code: 'deviation-reference', params: { from: 'declared', n: 1, reference: percent(9, 2) } },
    ],
    [
      '; control 9.00 %',
      { code: 'deviation-reference', params: { from: 'control', n: 1, reference: percent(9, 2) } },
    ],
    ['; the last 5 results', { code: 'rolling-mean', params: { n: 5 } }],
    [
      '; mean 9.00 %, standard deviation 0.50 %, factor 1.926 for 20 results',
      {
        code: 'estimate-of',
        params: { n: 20, mean: percent(9, 2), standardDeviation: percent(0.5, 2), factor: 1.92586 },
      },
    ],
    ['; latest of 2 results', { code: 'one-of-several', params: { which: 'latest', n: 2 } }],
    ['; mean of 3 results', { code: 'mean-of-several', params: { n: 3 } }],
  ])('clauseReasonWords adds "%s"', (words, added) => {
    expect(said(plain, added)).toBe(`9.0 % does not meet the limit, at most 12.0 %${words}`)
  })
})

describe('clauseReasonWords, what is not compared', () => {
  const fact = { code: 'fact-otherwise' as const, params: { fact: 'air-entrained', is: ['yes', 'partly'] } }
  const where = [{ property: 'CaO' as const, age: '7 d', limits: [outer, atLeast] }, fact.params]
  const demand =
    'calcium oxide at 7 d is at most 12.0 % and at least 75 % and “air entrained” is yes or partly'

  it.each<[string, ClauseReason]>([
    [
      'applies only where “air entrained” is yes or partly',
      { code: 'premise-not-met', params: { because: fact } },
    ],
    [
      'whether it applies depends on a result reported as a bound, which leaves open on which side of the band’s limit it lies',
      { code: 'premise-not-determined', params: { because: { code: 'band-on-both-sides', params: {} } } },
    ],
    [
      'the class depends on the material and cannot be determined: calcium oxide, which cannot be decided: no result is reported',
      {
        code: 'class-not-determined',
        params: {
          because: {
            code: 'property-not-determined',
            params: { property: 'CaO', reason: { code: 'no-result', params: {} } },
          },
        },
      },
    ],
    ['does not apply to class N', { code: 'other-class', params: { class: 'N' } }],
    ['applies to other kinds of material', { code: 'other-material', params: {} }],
    ['optional; not requested by the purchaser', { code: 'not-requested', params: {} }],
    [
      `deemed to satisfy without a test, since ${demand}`,
      { code: 'deemed-to-satisfy', params: { premises: where } },
    ],
    [
      `class C accepted as F, since ${demand}`,
      { code: 'class-accepted', params: { class: 'C', as: 'F', where } },
    ],
    [
      'whether class C is accepted as F depends on “air entrained” is yes or partly',
      { code: 'class-acceptance-not-determined', params: { class: 'C', as: 'F', because: fact } },
    ],
    [
      '“test letter” has been void since 1\u00a0February 2026: New mill',
      { code: 'document-void', params: { document: 'test-letter', since: '2026-02-01', event: 'New mill' } },
    ],
    [
      '“source approval” on record: paving, by the agency',
      {
        code: 'document-on-record',
        params: { document: 'source-approval', standing: { scope: 'paving', by: 'the agency' } },
      },
    ],
    [
      '“letter” on record: Letter 7',
      { code: 'document-on-record', params: { document: 'letter', standing: { title: 'Letter 7' } } },
    ],
    [
      'tested at least every 400 t for a new source',
      { code: 'sampled-often-enough', params: { every: '400 t', newSource: true } },
    ],
    [
      'density: 2 tests in 2.0 d and 500 t since the source’s records began; a test is due every 400 t',
      {
        code: 'sampled-too-seldom',
        params: {
          gaps: [{ property: 'density', hours: 48, tonnes: 500, tests: 2 }],
          every: '400 t',
          newSource: false,
        },
      },
    ],
    [
      '2 of 20 results beyond the limit, at least 75 %; at most 1 allowed',
      { code: 'results-beyond-limit', params: { beyond: 2, n: 20, allowed: 1, limits: [atLeast] } },
    ],
    [
      'moving average of five 9.0 %; standard deviation 0.5 % of 6 results; testing error 0.3 % from 1 pair; corrected for it 0.4 %',
      {
        code: 'variability',
        params: {
          movingAverage: 9,
          standardDeviation: 0.5,
          n: 6,
          testing: { error: 0.3, corrected: 0.4, pairs: 1 },
          decimals: 1,
          unit: '%',
        },
      },
    ],
    ['1 result of the 5 that the clause needs', { code: 'too-few-results', params: { n: 1, atLeast: 5 } }],
    [
      'test recorded, result due 3\u00a0April 2026',
      { code: 'result-awaited', params: { due: '2026-04-03T09:20' } },
    ],
    [
      'result overdue since 8\u00a0March 2026',
      { code: 'result-overdue', params: { since: '2026-03-08T12:20' } },
    ],
    ['the test is not valid', { code: 'test-not-valid', params: { reasons: [] } }],
    [
      'only results by A count, but those on record are by B and an unstated method',
      { code: 'other-methods', params: { method: 'A', used: ['B', null] } },
    ],
    [
      'awaiting Clause a and Clause b',
      { code: 'by-members', params: { outcome: 'pending', members: ['a', 'b'], others: [] } },
    ],
    [
      'met by Clause a; one is enough (Clause b: not met; Clause c: awaited)',
      {
        code: 'by-members',
        params: {
          outcome: 'meets',
          members: ['a'],
          others: [
            { clause: 'b', outcome: 'does-not-meet' },
            { clause: 'c', outcome: 'pending' },
          ],
        },
      },
    ],
    ['no member applies', { code: 'no-member-applies', params: {} }],
  ])('clauseReasonWords says "%s"', (words, reason) => {
    expect(said(reason)).toBe(words)
  })
})

describe('clauseReasonWords, late routes', () => {
  it('clauseReasonWords says which overdue results can still meet a clause that is not met', () => {
    const failed: ClauseReason = {
      code: 'by-members',
      params: { outcome: 'does-not-meet', members: ['7d'], others: [] },
    }
    const routes = [{ clause: '28d', since: '2026-12-09' }]
    expect(said(failed, { code: 'late-routes', params: { routes } })).toBe(
      'not met by Clause 7d; Clause 28d, overdue since 9\u00a0December 2026, can still meet this clause',
    )
  })
})
