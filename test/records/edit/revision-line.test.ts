import { readMoment } from '../../../src/core/measure/moment.ts'
import { load } from 'js-yaml'
import { describe, expect, it } from 'vitest'
import { revisionLine, withRevisionLine } from '../../../src/records/edit/revision-line.ts'

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
  it.each([
    ['as YAML libraries write it', '- number: 0\n  by: A\n- number: 1\n  by: B'],
    ['one key a line, indented', '  - number: 0\n    by: A\n\n  # corrected\n  -   number: 1\n      by: B'],
    ['a dash alone', '-\n  number: 0\n  by: A\n-\n  number: 1'],
    ['far from the margin', '      - { number: 0, by: A }\n      - { number: 1, by: B }'],
    [
      'with a list and a folded text inside',
      '- number: 0\n  seen:\n  - A\n  by: >\n    A and\n    B\n- number: 1',
    ],
  ])('adds to a list that is written in another way: %s', (_, list) => {
    for (const after of ['', '\nsilo: S2\n']) {
      const text = `class: N\nrevisions:\n${list}\n${after}`
      const next = withRevisionLine(text, '  - { number: 2, by: C }')
      const read = (yaml: string) => (load(yaml) as { revisions: unknown[] }).revisions
      expect(read(next)).toEqual([...read(text), { number: 2, by: 'C' }])
      expect(next.replace(/^ *- \{ number: 2, by: C \}\n/m, '')).toBe(text)
    }
  })
  it('adds before the mark that ends a YAML document, with or without a list before it', () => {
    expect(withRevisionLine('class: N\n...\n', LINE)).toBe(`class: N\n\nrevisions:\n${LINE}\n...\n`)
    expect(withRevisionLine('revisions:\n  - { number: 0 }\n... # end', LINE)).toBe(
      `revisions:\n  - { number: 0 }\n${LINE}\n... # end`,
    )
  })
  it('takes a mark before the record for no end of it', () => {
    expect(withRevisionLine('# A lot\n...\nclass: N\n...\n', LINE)).toBe(
      `# A lot\n...\nclass: N\n\nrevisions:\n${LINE}\n...\n`,
    )
  })
  it('keeps the line endings of the file', () => {
    expect(withRevisionLine('class: N\r\n', LINE)).toBe(`class: N\r\n\r\nrevisions:\r\n${LINE}\r\n`)
  })
})

describe('revisionLine', () => {
  const issue = {
    revision: 1,
    date: readMoment('2026-04-10'),
    by: 'A. Moreau',
    function: 'quality manager',
    reason: 'first issue',
    withdrawn: false,
    replacedBy: null,
  }

  it('writes words plainly where YAML reads them back as they are', () => {
    expect(revisionLine(issue, 'sha256:00')).toBe(
      '  - { number: 1, date: 2026-04-10, by: A. Moreau, function: quality manager, reason: first issue, digest: sha256:00 }',
    )
  })
  it('tells a withdrawal and the lot that replaces it', () => {
    expect(revisionLine({ ...issue, withdrawn: true, replacedBy: 'tuff/T-2' }, 'sha256:00')).toContain(
      'withdrawn: yes, replaced-by: tuff/T-2, digest:',
    )
  })
  it.each([
    'yes',
    'null',
    '',
    'a: b',
    'no. 3 # see file',
    'k, l',
    '7',
    "d'Arc",
    'say "so"',
    ' led',
    'two\nlines',
    'é',
  ])('keeps the reason %j as the text it is', (reason) => {
    const [read] = load(revisionLine({ ...issue, reason }, 'sha256:00')) as { reason: unknown }[]
    expect(read?.reason).toBe(reason)
  })
})
