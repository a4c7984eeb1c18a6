import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const SOURCE = resolve(import.meta.dirname, '../src')

/**
 * The formatter and the rounding before a comparison; the rest prints no number of a record: the demo writes
 * readings as a laboratory would, the bench its own times, and an import takes the digits that a spreadsheet keeps.
 */
const ALLOWED = [
  'words/numbers.ts',
  'core/measure/rounding.ts',
  'commands/bench-table.ts',
  'records/import/number-format.ts',
]

/** Whatever makes text of a number by its own rounding. */
const OWN_ROUNDING = /\.(?:toFixed|toPrecision|toLocaleString|toExponential)\(|Intl\.NumberFormat|\.rounded\(/

function filesWith(pattern: RegExp): string[] {
  return (readdirSync(SOURCE, { recursive: true }) as string[])
    .filter((name) => /\.(?:ts|astro|mts)$/.test(name) && !name.startsWith('demo/'))
    .filter((name) => pattern.test(readFileSync(join(SOURCE, name), 'utf8')))
    .sort()
}

describe('numbers for print', () => {
  it('are rounded in one place: no other file turns one into text with digits of its own', () => {
    expect(filesWith(OWN_ROUNDING).filter((name) => !ALLOWED.includes(name))).toEqual([])
  })
  it('are looked for with a pattern that finds the formatter itself', () => {
    expect(filesWith(OWN_ROUNDING)).toEqual(expect.arrayContaining(ALLOWED))
  })
})
