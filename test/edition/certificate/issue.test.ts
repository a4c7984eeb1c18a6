import { describe, expect, it } from 'vitest'
import { differences } from '../../../src/edition/certificate/compare-issued.ts'
import { withRevisionLine } from '../../../src/edition/certificate/issue.ts'

const LINE = '  - { number: 1 }'

describe('withRevisionLine', () => {
  it('adds a list at the end of a record that has none', () => {
    expect(withRevisionLine('class: N\nsilo: S2\n', LINE)).toBe(`class: N\nsilo: S2\n\nrevisions:\n${LINE}\n`)
  })
  it('adds to the list in place, before what follows it, and keeps comments', () => {
    const text = 'class: N\nrevisions: # issued\n  - { number: 0 }\n\n# the store\nsilo: S2\n'
    expect(withRevisionLine(text, LINE)).toBe(
      `class: N\nrevisions: # issued\n  - { number: 0 }\n${LINE}\n\n# the store\nsilo: S2\n`,
    )
  })
  it('adds to a list at the end, written without indentation', () => {
    expect(withRevisionLine('class: N\nrevisions:\n- { number: 0 }\n', '- { number: 1 }')).toBe(
      'class: N\nrevisions:\n- { number: 0 }\n- { number: 1 }\n',
    )
  })
  it('keeps the line endings of the file', () => {
    expect(withRevisionLine('class: N\r\n', LINE)).toBe(`class: N\r\n\r\nrevisions:\r\n${LINE}\r\n`)
  })
})

describe('differences', () => {
  it('names each leaf that differs, on either side', () => {
    expect(
      differences({ a: { b: '1', c: ['x', 'y'] }, d: 1 }, { a: { b: '2', c: ['x'] }, d: 1, e: null }),
    ).toEqual([
      { path: 'a › b', issued: '1', today: '2' },
      { path: 'a › c › 1', issued: 'y', today: 'nothing' },
      { path: 'e', issued: 'nothing', today: 'null' },
    ])
  })
  it('finds none between equal trees', () => {
    expect(differences({ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] })).toEqual([])
  })
})
