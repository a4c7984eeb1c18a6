import { describe, expect, it } from 'vitest'
import { differences } from '../../../src/edition/certificate/compare-issued.ts'

describe('differences', () => {
  it('names each leaf that differs, on either side', () => {
    expect(
      differences({ a: { b: '1', c: ['x', 'y'] }, d: 1 }, { a: { b: '2', c: ['x'] }, d: 1, e: null }),
    ).toEqual([
      { path: ['a', 'b'], issued: '1', today: '2' },
      { path: ['a', 'c', '1'], issued: 'y', today: null },
      { path: ['e'], issued: null, today: 'null' },
    ])
  })
  it('finds none between equal trees', () => {
    expect(differences({ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] })).toEqual([])
  })
})
