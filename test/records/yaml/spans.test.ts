import { describe, expect, it } from 'vitest'
import { spansOf } from '../../../src/records/yaml/spans.ts'

/** The text that the span of a pointer covers, and that of its key. */
function marked(text: string, pointer: string): (string | undefined)[] {
  const span = spansOf(text).get(pointer)
  return [
    span === undefined ? undefined : text.slice(span.start, span.end),
    span?.key === undefined ? undefined : text.slice(span.key.start, span.key.end),
  ]
}

describe('spansOf', () => {
  const text =
    '\ufeffa: 1\r\nlist:\r\n  - x\r\n  - { b: "two words", c: }\r\n"d/e~": [1, 2]\r\nf: > 0.1 %\r\n'.replace(
      'f: > 0.1 %',
      'f: >\r\n  block',
    )

  it.each([
    ['/a', '1', 'a'],
    ['/list/0', 'x', undefined],
    ['/list/1/b', 'two words', 'b'],
    ['/d~1e~0/1', '2', undefined],
  ])('finds %s, in a text with a byte order mark and two-sign line ends', (pointer, value, key) => {
    expect(marked(text, pointer)).toEqual([value, key])
  })
  it('marks the beginning of a mapping or a list', () => {
    expect(marked(text, '/list/1')).toEqual(['{', undefined])
    expect(marked(text, '/d~1e~0')).toEqual(['[', 'd/e~'])
  })
  it('gives an empty value the place of its key', () => {
    expect(marked(text, '/list/1/c')).toEqual(['c', 'c'])
  })
  it('tells block text, of a key only, and what was written', () => {
    expect(spansOf(text).get('/f')).toMatchObject({ block: true })
    expect(spansOf('- >\n  block\n').get('/0')).toMatchObject({ block: false })
    expect(spansOf('a: 0x1F').get('/a')).toMatchObject({ block: false, written: '0x1F' })
  })
  it('gives the whole record an empty pointer', () => {
    expect(spansOf('7').get('')).toMatchObject({ start: 0, end: 1 })
  })
})
