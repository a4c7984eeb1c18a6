import { describe, expect, it } from 'vitest'
import { keySuggestions, valueSuggestions } from '../../../src/records/form/suggestions.ts'
import { textPlace } from '../../../src/records/form/text-place.ts'

/** The place of the bar in a text. */
function at(marked: string) {
  const place = textPlace(marked.replace('|', ''), marked.indexOf('|'))
  return place === null ? null : `${place.awaits} ${place.path.join('/')} ${place.typed}`.trim()
}

describe('textPlace', () => {
  it.each([
    ['qua|', 'key  qua'],
    ['quantity: 9|', 'value quantity 9'],
    ['produced:\n  fr|', 'key produced fr'],
    ['samples:\n  - i|', 'key samples/0 i'],
    ['samples:\n  - id: C\n    ki|', 'key samples/0 ki'],
    ['samples:\n  - id: C\n  - id: D\n    kind: gr|', 'value samples/1/kind gr'],
    ['samples:\n  - { id: C, ki|', 'key samples/0 ki'],
    ['samples:\n  - { id: C, kind: comp|', 'value samples/0/kind comp'],
    ['samples:\n  - { id: C, taken: { from: 2026-03-02, t|', 'key samples/0/taken t'],
    [
      'tests:\n  - sample: C\n    strength:\n      - age: 7 d\n        specimens: { a: 1 kN, b|',
      'key tests/0/strength/0/specimens b',
    ],
    ['tests:\n  - sample: C\n    strength:\n      - { age: 7 d }\n    not|', 'key tests/0 not'],
    ['tests:\n- sample: C\n  con|', 'key tests/0 con'],
    ['seals: [A, B|', 'value seals/1 B'],
    ['samples:\n  - id: C\nquan|', 'key  quan'],
    ['# a rem|', null],
    ['note: "a: |', null],
  ])('finds %j', (text, expected) => {
    expect(at(text)?.replace(/\s+/g, ' ')).toBe(expected?.replace(/\s+/g, ' '))
  })

  it('knows the keys that stand above, so that none is offered twice', () => {
    expect(textPlace('samples:\n  - { id: C, kind: grab, ', 33)?.taken).toEqual(['id', 'kind'])
  })
})

const NAMES = { sample: ['C'], laboratory: ['quay'], condition: ['c311'], control: ['K-1'], source: ['ash'] }

describe('keySuggestions', () => {
  it('offers the keys of a place with what they are called and what they are for', () => {
    expect(keySuggestions(['tests', 0]).map(({ text }) => text)).toContain('cast: ')
    expect(keySuggestions(['analyses', 0, 'results'])).toContainEqual(
      expect.objectContaining({ text: 'SiO2: ', label: 'Silicon dioxide' }),
    )
    expect(keySuggestions(['nowhere'])).toEqual([])
  })
})

describe('valueSuggestions', () => {
  it('offers records of the site, words of a list, or an example', () => {
    const texts = (...path: (string | number)[]) => valueSuggestions(path, NAMES).map(({ text }) => text)
    expect(texts('tests', 0, 'control')).toEqual(['K-1'])
    expect(texts('samples', 0, 'kind')).toContain('composite')
    expect(texts('tests', 0, 'cast')).toEqual(['2026-03-11T09:20'])
  })
})
