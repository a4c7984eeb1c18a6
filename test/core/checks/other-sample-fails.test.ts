import { expect, it } from 'vitest'
import { otherSampleFindings } from '../../../src/core/checks/other-sample-fails.ts'
import type { ClauseOutcome, Verdict } from '../../../src/core/criteria/verdict.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

/** A set with one clause that split S at 74 % would not meet. @param layer the set that gives its limit */
function verdict(criterion: string, layer: string, written = '75 %'): Verdict {
  const other = {
    result: 'sai|S',
    sample: 'S',
    sampleKind: 'split',
    duty: 'regular',
    value: 74,
    unit: '%',
    decimals: 0,
    outcome: 'does-not-meet',
  }
  const clause = {
    id: 'at-7',
    property: 'strength-activity-index',
    information: false,
    limit: { operator: 'at-least', written: [written], layer },
    others: [other],
  }
  return { criterion, clauses: [clause as unknown as ClauseOutcome] } as unknown as Verdict
}

const said = (...verdicts: Verdict[]) =>
  otherSampleFindings({ id: 'vale/V-1', verdicts }).flatMap((finding) => {
    const { sentence, evidence } = wordedFinding(finding, PLAIN_NAMES)
    return [sentence.replace(/^.*, which /, ''), ...evidence]
  })

it('otherSampleFindings tells once a clause that a supplement takes from the set it rests on', () => {
  expect(said(verdict('base', 'base'), verdict('county', 'base'))).toEqual([
    'would not meet the limit; the lot is judged on another sample',
    'base: at-7, at least 75 %; so in county',
  ])
})

it('otherSampleFindings counts clauses of which a supplement sets its own limit, or whose set is not among them', () => {
  expect(said(verdict('base', 'base'), verdict('county', 'county', '80 %'))).toEqual([
    'would not meet the limits of 2 clauses; the lot is judged on another sample',
    'base: at-7, at least 75 %',
    'county: at-7, at least 80 %',
  ])
  expect(said(verdict('county', 'base'))[0]).toBe(
    'would not meet the limit; the lot is judged on another sample',
  )
})
