import { readAge } from '../../../src/core/measure/age.ts'
import { expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import { wordsOfVerdict } from '../../../src/edition/shape/verdict-words.ts'
import { verdictData } from '../../../src/edition/writers/verdict-data.ts'
import { evidenceOf, index, result, setOf } from '../../core/judging/fixture.ts'

const sai = { property: 'strength-activity-index', condition: 'c311', 'at-least': '75 %' } as const
const set = setOf([
  { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' },
  {
    clause: 'g',
    'any-of': [
      { ...sai, age: readAge('7 d') },
      { ...sai, age: readAge('28 d') },
    ],
  },
])
const edition = {
  criteria: new Map([[set.id, set]]),
  conditions: new Map(),
  announcedConditions: new Map(),
}

it('verdictData gives sentences and codes side by side, for every clause at any depth', () => {
  const verdict = judge(set, evidenceOf([result('loss-on-ignition', 6.1), index('28 d', 75)]))
  expect(verdictData(edition, verdict)).toMatchObject({
    reasons: [
      'fails 1 clause; meets the other one',
      'Loss on ignition: 6.1 % does not meet the limit, at most 6.0 %',
    ],
    reasonCodes: [
      { code: 'others-met', params: { outcome: 'does-not-meet', count: 1, others: 1 } },
      { code: 'decided-by', params: { clause: 'loi' } },
    ],
    clauses: [
      {
        id: 'loi',
        reason: '6.1 % does not meet the limit, at most 6.0 %',
        reasonCodes: [
          {
            code: 'compared-with-limit',
            params: {
              subject: 'value',
              compared: { value: 6.1, decimals: 1, unit: '%' },
              met: false,
              limit: { operator: 'at-most', written: ['6.0 %'] },
            },
          },
        ],
      },
      {
        id: 'g',
        clauses: [
          { id: 'g-1', reasonCodes: [{ code: 'no-result', params: {} }] },
          { id: 'g-2', reasonCodes: [{ code: 'compared-with-limit', params: { met: true } }] },
        ],
      },
    ],
  })
})

it('wordsOfVerdict refuses a verdict under a set that is not on record', () => {
  const verdict = judge(set, evidenceOf([]))
  expect(() => wordsOfVerdict({ ...edition, criteria: new Map() }, verdict)).toThrow(RangeError)
})
