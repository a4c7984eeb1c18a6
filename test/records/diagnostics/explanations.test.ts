import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type {
  Example,
  ImportExample,
  NameExample,
} from '../../../src/records/diagnostics/explained/explanation.ts'
import { explanationText } from '../../../src/records/diagnostics/explanation-text.ts'
import {
  EXPLAINED_CODES,
  type ExplainedCode,
  explanationOf,
  FAMILIES,
  titleOf,
} from '../../../src/records/diagnostics/explanations.ts'
import { readCsv } from '../../../src/records/import/csv.ts'
import { differenceFault, planImport, recordFault } from '../../../src/records/import/plan-import.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { mapOf, ORIGIN } from '../import/imported.ts'

const FOLDER = resolve(import.meta.dirname, '../../diagnostics')
const ALL = Object.keys(EXPLAINED_CODES) as ExplainedCode[]

/** The records that the cases spoil, with those that only an example needs. */
function sound(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'explained-')), 'content')
  cpSync(join(FOLDER, 'base'), folder, { recursive: true })
  cpSync(join(FOLDER, 'explained'), folder, { recursive: true })
  return folder
}

/** Codes of the sound records with one side of an example in its place. */
function codesWith(example: Example | NameExample | ImportExample, side: 'wrong' | 'right'): string[] {
  if ('of' in example) return codesOfImport(example, side)
  const folder = sound()
  if ('copied' in example) {
    mkdirSync(dirname(join(folder, example[side])), { recursive: true })
    cpSync(join(folder, example.copied), join(folder, example[side]))
  } else {
    const path = join(folder, example.file)
    const text = readFileSync(path, 'utf8')
    const place = example.instead ?? example.right
    expect(text.split(place).length).toBeLessThan(3)
    expect(example.instead === undefined || text.includes(place)).toBe(true)
    writeFileSync(
      path,
      text.includes(place)
        ? text.replace(place, () => example[side])
        : `${text.trimEnd()}\n${example[side]}\n`,
    )
  }
  return loadRecords(folder).diagnostics.map(({ code }) => code)
}

/** Faults of the disk, and of what lies between a record and its issued document: no text shows them. */
const WITHOUT_EXAMPLE: readonly ExplainedCode[] = [
  'file-unreadable',
  'file-missing',
  'revision-order',
  'issued-missing',
  'issued-altered',
  'issued-mismatch',
  'issued-part',
  'issued-part-unused',
  'issued-unrecorded',
  'issued-stray',
  'import-hidden',
]

const MAP = `every: { source: tuff, laboratory: quay, sample: C }
tables:
  - holds: analyses
    sheet: March
    columns: { Lot: lot, Tested: tested, R45: { to: residue-45um, unit: "%" } }
`

/** Codes of an import into the sound records with one side of an example in its place. */
function codesOfImport({ of, right, ...example }: ImportExample, side: 'wrong' | 'right'): string[] {
  const folder = sound()
  const shown = { ...example, right }[side]
  const sheet = of === 'sheet' ? shown : 'Lot;Tested;R45\nT-1;2026-03-10;8.4'
  const map = of === 'map' ? MAP.replace(right, shown) : MAP
  const read = mapOf(map)
  const plan = planImport({
    sheets: [{ ...readCsv(Buffer.from(sheet), read).sheet, name: 'March' }],
    map: read,
    origin: ORIGIN,
    textAt: (path) => (existsSync(join(folder, path)) ? readFileSync(join(folder, path), 'utf8') : null),
    replace: false,
  })
  const changed = new Map(plan.changes.map(({ path, text }) => [path, text]))
  const { diagnostics } = loadRecords(folder, undefined, { changed })
  const ofRecords = plan.changes.flatMap((change) =>
    diagnostics.filter(({ file }) => file === change.path).map((one) => recordFault(change, one)),
  )
  return [...plan.faults, ...plan.differences.map(differenceFault), ...ofRecords].map(({ code }) => code)
}

describe('the explanation of a code', () => {
  it('stands in one family, for every code', () => {
    expect(FAMILIES.flatMap(({ codes }) => codes).sort()).toEqual([...ALL].sort())
  })
  it('has an example, but for faults that no text shows', () => {
    expect(ALL.filter((code) => explanationOf(code).example === undefined)).toEqual(WITHOUT_EXAMPLE)
  })
  it.each(ALL)('%s is in whole sentences', (code) => {
    const { meaning, fix } = explanationOf(code)
    for (const text of [titleOf(code), meaning, fix]) expect(text).toMatch(/^[A-Z].*\.$/)
  })
  it('rests on records without a fault', () => {
    expect(loadRecords(sound()).diagnostics).toEqual([])
  })
  it.each(ALL.filter((code) => !WITHOUT_EXAMPLE.includes(code)))(
    '%s shows a fault that gives this code alone, and the same without it',
    (code) => {
      const { example } = explanationOf(code)
      if (example === undefined) throw new RangeError('an example was expected')
      expect([...new Set(codesWith(example, 'wrong'))]).toEqual([code])
      expect(codesWith(example, 'right')).toEqual([])
    },
  )
})

describe('explanationText(code)', () => {
  it('prints meaning, example and fix within the width of a terminal', () => {
    expect(explanationText('quantity-range')).toMatchInlineSnapshot(`
      "quantity-range

      A quantity is not physically possible.

      No bench reads such a value. Mostly the unit is not the one that was read:
      newtons as kN, psi as MPa.

      Wrong, in lots/tuff/T-1.yaml:
        a: 78400 kN

      Right:
        a: 78.4 kN

      Fix: Compare number and unit with the bench sheet.
      "
    `)
    for (const code of ALL)
      for (const line of explanationText(code)
        .split('\n')
        .filter((text) => !text.startsWith('  ')))
        expect(line.length).toBeLessThanOrEqual(78)
  })
})
