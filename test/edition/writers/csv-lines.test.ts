/** Cells of a table for a spreadsheet. */
import { describe, expect, it } from 'vitest'
import { lines } from '../../../src/edition/writers/csv-lines.ts'

const cellOf = (text: string) => lines([[text]]).trimEnd()

describe('lines', () => {
  it('keeps a text that a spreadsheet could compute by an apostrophe', () => {
    for (const text of [
      '=1+1',
      '+A1',
      '-A1',
      '-1+A1',
      '-2 A1',
      '-1 %+A1',
      '-0.01|calc',
      '-SUM(A1)',
      '@SUM(A1)',
      '-1e5',
      '--1',
      '-1 %\n=1',
      '＝1+1',
      '＠SUM(A1)',
    ])
      expect(cellOf(text).replace(/^"/, '')).toMatch(/^'/)
  })

  it('leaves a mere figure with its sign and unit as the record writes it', () => {
    for (const text of ['-0.01 %', '-0.01%', '+12', '-3.5', '-0.01 percentage points', '-5 degC'])
      expect(cellOf(text)).toBe(text)
  })

  it('keeps a text together that a spreadsheet could part', () => {
    expect(lines([['a;=1+1', 'say "so"', 'a, b', 'one\ntwo', 'a\tb', 'plain']])).toBe(
      '"a;=1+1","say ""so""","a, b","one\ntwo","a\tb",plain\n',
    )
  })

  it('gives a number without an apostrophe, and nothing for what is absent', () => {
    expect(lines([[-0.6, null, undefined, '−0.01 %']])).toBe('-0.6,,,−0.01 %\n')
  })
})
