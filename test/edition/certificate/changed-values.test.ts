import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { changedValues, unstatedResults } from '../../../src/edition/certificate/changed-values.ts'
import type { IssuedDocument } from '../../../src/edition/shape/document.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'

const INDEX = { property: 'strength-activity-index', age: '7 d', value: 96.338 } as const
const DOCUMENT = {
  lot: { results: [{ laboratory: 'quay', sample: 'C', tested: '2026-03-07', values: { SO3: 2.1 } }] },
  data: {
    results: [
      { laboratory: 'quay', sample: 'C', condition: 'hot', tested: '2026-03-12', results: [INDEX] },
      {
        laboratory: 'quay',
        sample: 'C',
        condition: 'cold',
        tested: '2026-03-12',
        results: [{ ...INDEX, valid: false }],
      },
    ],
  },
} as unknown as IssuedDocument

const HEAD = { laboratory: 'quay', sample: 'C', role: 'producer', unit: '%', valid: true }
function index(value: number, more: Partial<Result> = {}): Result {
  const { property } = INDEX
  const of = { property, condition: 'hot', age: readAge('7 d'), value, decimals: 2 }
  return { ...HEAD, ...of, ...more } as Result
}
const SO3 = { ...HEAD, property: 'SO3', value: 2.1, decimals: 1 } as Result

const found = (...results: Result[]) =>
  changedValues(DOCUMENT, results, 'SI').map(({ property, issued, today }) => [
    property,
    plainSpaces(issued),
    today === null ? null : plainSpaces(today),
  ])

describe('changedValues', () => {
  it('finds none where each value prints as it did, or stands beside others', () => {
    expect(found(SO3, index(96.3381))).toEqual([])
    expect(found(SO3, index(96.338), index(95.88))).toEqual([])
  })
  it('finds the value that was tested again', () => {
    const change = ['strength-activity-index', '96.34 %', '95.88 %']
    expect(found(SO3, index(96.338, { valid: false }), index(95.88))).toEqual([change])
  })
  it('finds the value that counts no more', () => {
    expect(found({ ...SO3, valid: false }, index(96.338))).toEqual([['SO3', '2.1 %', null]])
  })
  it('leaves out what was not valid at issue, what has no result, and verification', () => {
    expect(found(index(96.338), index(90, { condition: 'cold' }))).toEqual([])
    expect(found({ ...SO3, value: 2.4, role: 'verification' }, index(96.338))).toEqual([])
  })
})

describe('unstatedResults', () => {
  const keyed = (key: string, age: string, more: Partial<Result> = {}) =>
    index(90, { key, age: readAge(age), ...more })
  it('names what the document does not state, whenever it was tested', () => {
    expect(unstatedResults(DOCUMENT, [keyed('old', '7 d'), keyed('new', '28 d')])).toEqual(['new'])
  })
  it('leaves out what it states as not valid, what is not valid, and verification', () => {
    const others = [
      keyed('cold', '7 d', { condition: 'cold' }),
      keyed('spoilt', '28 d', { valid: false }),
      keyed('agency', '28 d', { role: 'verification' }),
      SO3,
    ]
    expect(unstatedResults(DOCUMENT, others)).toEqual([])
  })
})
