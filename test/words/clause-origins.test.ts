import { describe, expect, it } from 'vitest'
import { everyClause } from '../../src/core/criteria/criterion.ts'
import { documentsOf, mainSourceWords, originWords } from '../../src/words/clause-origins.ts'
import { setOf } from '../core/judging/fixture.ts'

const limit = (clause: string, basis: { read: string } | { memory: string }) => ({
  clause,
  property: 'SO3' as const,
  'at-most': '5.0 %',
  basis,
})
const set = setOf(
  [
    limit('a', { read: 'S1' }),
    limit('b', { read: 'S1' }),
    limit('c', { read: 'S1 for the limit, S3 for the rest' }),
    limit('d', { memory: 'unchanged from edition 12a (S1)' }),
  ],
  { id: 'set', sources: { S1: 'VALE 1, tables; alike in S3', S3: 'VALE 1 of 2017, notes' } },
)
const origins = [...everyClause(set.clauses)].map((clause) => originWords(clause, set))

describe('where limits were read', () => {
  it('is said once for a set, in full', () => {
    expect(mainSourceWords('set', set)).toBe('VALE 1, tables; alike in VALE 1 of 2017')
    expect(origins.slice(0, 2)).toEqual([null, null])
  })
  it('is said by a clause that was read elsewhere or recalled, by document and never by code', () => {
    expect(origins.slice(2)).toEqual([
      'read in VALE 1 for the limit, VALE 1 of 2017 for the rest',
      'from memory, to be confirmed: unchanged from edition 12a (VALE 1)',
    ])
  })
  it('lists the documents', () => {
    expect(documentsOf('set', set)).toEqual([
      'VALE 1, tables; alike in VALE 1 of 2017',
      'VALE 1 of 2017, notes',
    ])
  })
})
