import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../../src/commands/program.ts'
import { editYaml } from '../../../src/records/edit/edit-yaml.ts'
import type { Plain } from '../../../src/records/edit/write-yaml.ts'
import {
  addedItem,
  addedKey,
  detailedEdits,
  keyOrder,
  typedEdits,
} from '../../../src/records/form/form-edits.ts'
import { faultsByPlace } from '../../../src/records/form/place-of-fault.ts'
import { fieldsOf, type FormField, type FormPart } from '../../../src/records/form/form-parts.ts'
import { lotForm } from '../../../src/records/form/lot-form.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import { LOT_TEXTS } from './lot-texts.ts'

const SHEET = `# Bench sheet 14
samples:
  - { id: C, kind: composite } # two jars
tests:
  - sample: C
    condition: c311
    control: K-1
    laboratory: quay
    cast: 2026-03-11T09:20
    strength:
      - { age: 7 d, tested: 2026-03-18T10:05, specimens: { a: 78.40 kN, b: 80.1 kN } }
`

function fields(text: string): FormField[] {
  const form = lotForm(text)
  if ('fault' in form) throw new RangeError(form.fault.message)
  return fieldsOf(form.sections)
}

function field(text: string, ...path: (string | number)[]): FormField {
  const found = fields(text).find((one) => one.path.join('/') === path.join('/'))
  if (found === undefined) throw new RangeError(`no field at ${path.join('/')}`)
  return found
}

function record(text: string): Plain {
  const parsed = parseYaml(text)
  if ('fault' in parsed) throw new RangeError(parsed.fault.message)
  return parsed.value as Plain
}

function typed(text: string, path: (string | number)[], by: string): string {
  return editYaml(text, typedEdits(field(text, ...path), by, record(text)), { order: keyOrder })
}

/** Whether all of a text but one stretch stands in another. */
function differsInOneStretch(a: string, b: string, longest: number): boolean {
  let from = 0
  while (from < a.length && a[from] === b[from]) from += 1
  let back = 0
  while (back < a.length - from && a.at(-1 - back) === b.at(-1 - back)) back += 1
  return a.length - from - back <= longest
}

describe('lotForm', () => {
  it('asks of an empty text what every lot needs', () => {
    const asked = fields('').map(({ path, required }) => [path.join('/'), required])
    expect(asked).toEqual([
      ['produced/from', true],
      ['produced/to', true],
      ['quantity', true],
      ['silo', false],
    ])
  })

  it('has the digits of every value as they are written, and a third cube that stands ready', () => {
    const strength = fields(SHEET).filter(({ path }) => path.includes('specimens'))
    expect(strength.map(({ path, text }) => [path.at(-1), text])).toEqual([
      ['a', '78.40 kN'],
      ['b', '80.1 kN'],
      ['c', ''],
    ])
  })

  it('names what tells one of a list from the others', () => {
    const form = lotForm(SHEET)
    const legends = (parts: readonly FormPart[]): string[] =>
      parts.flatMap((part) =>
        part.kind === 'field'
          ? []
          : [part.legend, ...legends(part.kind === 'list' ? part.items : part.parts)],
      )
    expect('sections' in form && legends(form.sections)).toEqual(
      expect.arrayContaining(['Sample C, composite', 'Mortar C, c311', 'Mixture', 'Casting', 'Strength 7 d']),
    )
  })

  it('tells where a text cannot be read', () => {
    expect(lotForm('a: [1')).toHaveProperty('fault')
  })

  it('has a field for every plain value of every lot of the demo but its revisions', () => {
    const folder = resolve(ROOT, 'content/lots')
    const plain = (value: Plain): number =>
      typeof value === 'object' && value !== null
        ? Object.values(value).reduce<number>((sum, member) => sum + plain(member), 0)
        : 1
    for (const source of readdirSync(folder))
      for (const name of readdirSync(join(folder, source)).filter((_, place) => place % 6 === 0)) {
        const text = readFileSync(join(folder, source, name), 'utf8')
        const { revisions = [], ...rest } = record(text) as { [key: string]: Plain }
        const shown = fields(text).filter((one) => one.text !== '')
        expect(shown.length, name).toBe(plain(rest))
        expect(Array.isArray(revisions)).toBe(true)
      }
  })
})

describe('typedEdits', () => {
  it('leaves a text byte for byte when each field is typed as it stands, in any structure', () => {
    fc.assert(
      fc.property(LOT_TEXTS, (text) => {
        const value = record(text)
        const edits = fields(text).flatMap((one) => typedEdits(one, one.text, value))
        expect(edits).toEqual([])
        expect(editYaml(text, edits)).toBe(text)
      }),
      { numRuns: 60, seed: 311 },
    )
  })

  it('changes nothing but the one value, comments, order and digits of the others included, in any structure', () => {
    let changed = 0
    fc.assert(
      fc.property(LOT_TEXTS, fc.nat(), (text, chosen) => {
        const written = fields(text).filter((one) => one.text !== '' && one.fixed === undefined)
        const one = written[chosen % Math.max(1, written.length)]
        if (one === undefined || one.choices !== undefined) return
        const by = one.number ? '7' : 'exchanged'
        const edited = editYaml(text, typedEdits(one, by, record(text)), { order: keyOrder })
        expect(field(edited, ...one.path).text).toBe(by)
        expect(differsInOneStretch(text, edited, one.text.length + 2 + 12)).toBe(true)
        expect(edited.match(/# (?:as read|between)/g)).toEqual(text.match(/# (?:as read|between)/g))
        changed += 1
      }),
      { numRuns: 60, seed: 618 },
    )
    expect(changed).toBeGreaterThan(30)
  })

  it('types a further cube beside the others and takes it out again', () => {
    const place = ['tests', 0, 'strength', 0, 'specimens', 'c']
    const three = typed(SHEET, place, '79.3 kN')
    expect(three).toBe(SHEET.replace('b: 80.1 kN }', 'b: 80.1 kN, c: 79.3 kN }'))
    expect(typed(three, place, '')).toBe(SHEET)
  })

  it('takes a mapping out with its last entry where the record can do without it', () => {
    const one = SHEET.replace(', b: 80.1 kN', '')
    expect(typed(one, ['tests', 0, 'strength', 0, 'specimens', 'a'], '')).toBe(
      one.replace(', specimens: { a: 78.40 kN }', ''),
    )
  })

  it('keeps the key of a value that must be written', () => {
    expect(typed(SHEET, ['samples', 0, 'id'], '')).toBe(SHEET.replace('id: C', 'id: ""'))
  })

  it('writes a count as a number and text that looks like one in quotes', () => {
    const increments = SHEET.replace('kind: composite }', 'kind: composite, increments: 12 }')
    expect(typed(increments, ['samples', 0, 'increments'], '18')).toContain('increments: 18 }')
    expect(typed(SHEET, ['samples', 0, 'id'], '18')).toContain('id: "18"')
  })
})

describe('addedItem', () => {
  it('adds a mortar with the sample, condition, control and laboratory of the one before', () => {
    const edited = editYaml(SHEET, addedItem(['tests'], record(SHEET)), { order: keyOrder })
    expect(edited.startsWith(SHEET.trimEnd())).toBe(true)
    expect(record(edited)).toMatchObject({
      tests: [{}, { sample: 'C', condition: 'c311', control: 'K-1', laboratory: 'quay', cast: '' }],
    })
  })

  it('begins a list that the text does not have', () => {
    const edited = editYaml(SHEET, addedItem(['shipments'], record(SHEET)), { order: keyOrder })
    expect(record(edited)).toMatchObject({ shipments: [{ bill: '', date: '', mass: '' }] })
  })
})

describe('addedKey', () => {
  it('puts a key where the schema has it', () => {
    const edited = editYaml(SHEET, addedKey(['tests', 0, 'note']), { order: keyOrder })
    expect(edited).toMatch(/specimens.*\n {4}note: ""\n$/)
  })
})

describe('detailedEdits', () => {
  it('writes a load out, so that its cube can be measured', () => {
    const edits = detailedEdits(field(SHEET, 'tests', 0, 'strength', 0, 'specimens', 'a'))
    expect(editYaml(SHEET, edits)).toBe(SHEET.replace('a: 78.40 kN', 'a: { load: 78.40 kN }'))
  })

  it('writes a stated strength out as such', () => {
    const stated = SHEET.replace('a: 78.40 kN', 'a: 31.4 MPa')
    const edits = detailedEdits(field(stated, 'tests', 0, 'strength', 0, 'specimens', 'a'))
    expect(editYaml(stated, edits)).toContain('a: { strength: 31.4 MPa }')
  })
})

describe('faultsByPlace', () => {
  it('finds the value that a diagnostic marks, and the record where it marks none', () => {
    const at = { code: 'x', severity: 'error', file: '', message: '', mend: '' } as const
    const [line, column] = [11, SHEET.split('\n')[10]?.indexOf('80.1') ?? 0]
    const found = faultsByPlace(SHEET, [
      { ...at, line, column: column + 1 },
      { ...at, line: 1, column: 1 },
    ])
    expect([...found.keys()]).toEqual(['/tests/0/strength/0/specimens/b', ''])
  })
})
