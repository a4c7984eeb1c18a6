import { describe, expect, it } from 'vitest'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import { firstOfKey, syntaxFault } from '../../../src/records/yaml/syntax-words.ts'

/** Line, column and message of the fault of a text that is no YAML. */
function told(text: string): string {
  const parsed = parseYaml(text)
  if (!('fault' in parsed)) throw new RangeError(`a text that is no YAML was expected, got ${text}`)
  const { line, column, message } = syntaxFault(parsed.fault, text)
  return `${line}:${column} ${message}`
}

describe('syntaxFault(fault, text)', () => {
  it('finds the blank that is missing after a colon or a dash, on the line or the one above it', () => {
    expect(told('a: 1\nload:78 kN\nb: 2\n')).toBe(
      '2:5 a blank is missing after this colon, so that YAML sees no key',
    )
    expect(told('a:\n  -b: 2\n    c: 3\n')).toBe(
      '2:3 a blank is missing after this dash, so that YAML sees no list',
    )
  })
  it('takes no clock time, address or number below zero for such', () => {
    for (const line of ['  - 2026-03-11T09:20', '  - https://example.org', '  - -3'])
      expect(told(`a:\n${line}\nb: [1, 2\nc: 3\n`)).toBe('3:4 the [ that opens here is not closed')
  })
  it('finds the innermost bracket or quote that is open, and none in texts and remarks', () => {
    expect(told('a: { b: [1, 2 }\nc: 3\n')).toMatch(/^1:/)
    expect(told('a: { b: { c: 1 }\nd: 2\n')).toBe('1:4 the { that opens here is not closed')
    expect(told('a: "[ {"\nb: \'{ [\' # and [\nc: { d: 1\ne: 2\n')).toBe(
      '3:4 the { that opens here is not closed',
    )
    expect(told('a: "one\nb: 2\n')).toBe('1:4 the quote that opens here is not closed')
  })
  it('finds the second key of a line', () => {
    expect(told('age: 7 d within: 3 h\n')).toBe(
      '1:10 a second key stands on this line, or a text holds a colon and a blank',
    )
  })
  it('says what the parser says where it knows no better', () => {
    expect(told('a: { b: 1 c: 2 }\n')).toMatch(/^1:\d+ this is not YAML: /)
  })
})

describe('firstOfKey(text, line, column)', () => {
  it('finds the key above in the same column, or earlier on its own line', () => {
    expect(firstOfKey('a: 1\nb:\n  a: 2\na: 3\n', 4, 1)).toMatchObject([{ line: 1, column: 1, endColumn: 2 }])
    expect(firstOfKey('x: { w/cm: 1, b: 2, w/cm: 3 }\n', 1, 21)).toMatchObject([{ line: 1, column: 6 }])
  })
  it('finds nothing where the key is written in another way', () => {
    expect(firstOfKey('"a": 1\na: 2\n', 2, 1)).toEqual([])
    expect(firstOfKey('a: 1\n', 1, 3)).toEqual([])
  })
})
