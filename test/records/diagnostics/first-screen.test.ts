import { describe, expect, it } from 'vitest'
import type { Diagnostic } from '../../../src/records/diagnostics/diagnostic.ts'
import { compactText, diagnosticText } from '../../../src/records/diagnostics/diagnostic-text.ts'
import { firstScreen } from '../../../src/records/diagnostics/first-screen.ts'

const fault = (own: Partial<Diagnostic> = {}): Diagnostic => ({
  ...{ code: 'date', severity: 'error', file: 'lots/a/A-1.yaml', line: 1, column: 1 },
  ...{ message: 'wrong', mend: 'mend it' },
  ...own,
})
/** No file of these is there: each takes two lines, and one that sets it apart. */
const NOWHERE = '/nowhere'

describe('firstScreen(diagnostics, folder, screen)', () => {
  const many = [
    fault({ file: 'a.yaml', severity: 'warning', code: 'schema' }),
    fault({ file: 'b.yaml', line: 2 }),
    fault({ file: 'b.yaml', line: 1 }),
    fault({ file: 'c.yaml', code: 'quantity' }),
  ]
  it('shows errors before warnings, each in the order of files and lines', () => {
    const text = firstScreen(many, NOWHERE, { diagnostics: 4 })
    expect(text.match(/^\w\.yaml:\d/gm)).toEqual(['b.yaml:1', 'b.yaml:2', 'c.yaml:1', 'a.yaml:1'])
    expect(text).not.toMatch(/not shown/)
  })
  it('says in one line which records await values, behind what is wrong', () => {
    const blank = (file: string) => fault({ file, code: 'value-blank', severity: 'warning' })
    const lots = ['a', 'b', 'c', 'd', 'e', 'f'].map((name) => blank(`lots/${name}.yaml`))
    expect(firstScreen([...lots, fault({ file: 'x.yaml' })], NOWHERE, { diagnostics: 4 })).toBe(
      [
        'x.yaml:1:1: wrong [date]\nfix: mend it',
        'still to be filled in: lots/a.yaml, lots/b.yaml, lots/c.yaml, lots/d.yaml and 2 other records; check --all shows what is blank',
      ].join('\n\n'),
    )
    expect(firstScreen(lots.slice(0, 2), NOWHERE, { diagnostics: 4 })).toBe(
      'still to be filled in: lots/a.yaml, lots/b.yaml; check --all shows what is blank',
    )
    expect(firstScreen(lots.slice(0, 1), NOWHERE, { diagnostics: 4 })).toMatch(/^lots\/a\.yaml:1:1/)
  })
  it('shows errors first where not all fit, and counts the others by code and file', () => {
    expect(firstScreen(many, NOWHERE, { diagnostics: 2 })).toMatchInlineSnapshot(`
      "b.yaml:1:1: wrong [date]
      fix: mend it

      b.yaml:2:1: wrong [date]
      fix: mend it

      2 further diagnostics are not shown; check --all shows every one
        by code: quantity 1, schema 1
        by file: a.yaml 1, c.yaml 1"
    `)
  })
  it('fills the lines of a terminal, the counts below included', () => {
    const text = firstScreen(many, NOWHERE, { lines: 12 })
    expect(text.match(/^fix/gm)).toHaveLength(2)
    expect(text.split('\n').length).toBeLessThanOrEqual(12)
  })
  it('shows one however small the terminal is', () => {
    expect(firstScreen(many, NOWHERE, { lines: 2 })).toMatch(
      /^b\.yaml:1:1: wrong \[date\]\nfix: mend it\n\n3 further/,
    )
  })
  it('names the most frequent codes and files and counts the rest of them', () => {
    const six = ['a', 'b', 'b', 'c', 'd', 'e', 'f'].map((name) => fault({ file: `${name}.yaml`, code: name }))
    expect(firstScreen([fault(), ...six], NOWHERE, { diagnostics: 1 })).toMatch(
      /by code: b 2, c 1, d 1, date 1 and 2 other codes\n/,
    )
  })
})

describe('compactText(diagnostic)', () => {
  it('is one line with place, severity, message and code', () => {
    expect(compactText(fault({ line: 14, column: 18, message: 'found\n"x"' }))).toBe(
      'lots/a/A-1.yaml:14:18: error: found\\n"x" [date]',
    )
    expect(compactText(fault({ severity: 'warning' }))).toBe('lots/a/A-1.yaml:1:1: warning: wrong [date]')
  })
})

describe('diagnosticText(diagnostic, textOf)', () => {
  it('shows each related place with its line below the fault, in whichever file it is', () => {
    const texts: Readonly<Record<string, string>> = { 'lots/a/A-1.yaml': 'b: 2', 'controls/K.yaml': 'a: 1' }
    const related = [{ file: 'controls/K.yaml', line: 1, column: 4, message: 'the other' }]
    expect(diagnosticText(fault({ related }), (file) => texts[file])).toMatchInlineSnapshot(`
      "lots/a/A-1.yaml:1:1: wrong [date]
        1 | b: 2
          | ^
      see controls/K.yaml:1:4: the other
        1 | a: 1
          |    ^
      fix: mend it"
    `)
  })
})
