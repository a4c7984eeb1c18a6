import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import writeExcelFile from 'write-excel-file/node'
import type { Sheet } from '../../../src/records/import/grid.ts'
import { readWorkbook } from '../../../src/records/import/xlsx.ts'
import { WorkbookFault } from '../../../src/records/import/zip.ts'
import { errorsOf, planned, recordIn } from './imported.ts'
import { workbookOf, zipOf } from './hand-made.ts'

/** Cells of a sheet by address, each as its kind and text. */
function cellsOf(sheet: Sheet | undefined): Record<string, string> {
  return Object.fromEntries(
    (sheet?.rows ?? []).flatMap(({ row, cells }) =>
      [...cells].map(([column, value]) => [
        `${'ABCDEFGH'[column]}${row}`,
        `${value.kind} ${value.text}${value.kind === 'number' && value.percent ? ' in per cent' : ''}`,
      ]),
    ),
  )
}

describe('readWorkbook', () => {
  it('reads shared, rich and inline texts, with the signs that XML writes otherwise', () => {
    const [sheet] = readWorkbook(
      workbookOf({
        strings: ['<t>SO₃</t>', '<r><t>L</t></r><r><t xml:space="preserve">OI </t></r>'],
        rows: '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="D1" t="inlineStr"><is><t>&lt; 0.1 &amp; more</t></is></c><c r="E1" t="str"><f>1</f><v>sum</v></c></row>',
      }),
    )
    expect(cellsOf(sheet)).toEqual({
      A1: 'text SO₃',
      B1: 'text LOI ',
      D1: 'text < 0.1 & more',
      E1: 'text sum',
    })
  })
  it('shows numbers with the decimals of the sheet, and says which it shows in per cent', () => {
    const [sheet] = readWorkbook(
      workbookOf({
        formats: ['0.00', '0.0%', '00000'],
        rows: '<row r="2"><c r="A2" s="1"><v>2.5</v></c><c r="B2" s="2"><v>0.827</v></c><c r="C2"><v>0.1</v></c><c r="D2" s="3"><v>417</v></c></row>',
      }),
    )
    expect(cellsOf(sheet)).toEqual({
      A2: 'number 2.50',
      B2: 'number 82.7 in per cent',
      C2: 'number 0.1',
      D2: 'number 417',
    })
    expect(sheet?.rows[0]?.cells.get(3)).toMatchObject({ padded: '00417' })
  })
  it('refuses a workbook of which a bit flipped, wherever in its sheet', () => {
    const cell = '<c r="A1"><v>1200.5</v></c>'
    const bytes = workbookOf({ rows: `<row r="1">${cell}</row>` })
    let refused = 0
    for (let place = 0; place < bytes.length; place += 1) {
      const flipped = Buffer.from(bytes)
      flipped[place] = (flipped[place] ?? 0) ^ 1
      try {
        const [sheet] = readWorkbook(flipped)
        expect(cellsOf(sheet)).toEqual({ A1: 'number 1200.5' })
      } catch (error) {
        if (!(error instanceof WorkbookFault)) throw error
        refused += 1
      }
    }
    expect(refused).toBeGreaterThan(bytes.length / 2)
  })
  // A day of the spreadsheet's calendar: 44927 is 1 January 2023, and 1 462 days less in that of 1904.
  it('reads days and moments in both calendars', () => {
    const rows = (day: number) =>
      `<row r="1"><c r="A1" s="1"><v>${day}</v></c><c r="B1" s="2"><v>${day + 0.5}</v></c></row>`
    const formats = ['yyyy-mm-dd', 'dd.mm.yyyy hh:mm']
    const expected = { A1: 'date 2023-01-01', B1: 'date 2023-01-01T12:00' }
    expect(cellsOf(readWorkbook(workbookOf({ formats, rows: rows(44927) }))[0])).toEqual(expected)
    expect(
      cellsOf(readWorkbook(workbookOf({ formats, rows: rows(44927 - 1462), since1904: true }))[0]),
    ).toEqual(expected)
  })
  it('keeps a cell in error and a formula without a result as faults, never as blanks', () => {
    const [sheet] = readWorkbook(
      workbookOf({ rows: '<row r="3"><c r="A3" t="e"><v>#N/A</v></c><c r="B3"><f>A1/0</f></c></row>' }),
    )
    expect(cellsOf(sheet)['A3']).toBe('fault #N/A')
    expect(cellsOf(sheet)['B3']).toMatch(/^fault /)
  })
  it('joins a heading over merged cells to each column below it', () => {
    const text = (cell: string, words: string) => `<c r="${cell}" t="inlineStr"><is><t>${words}</t></is></c>`
    const sheets = readWorkbook(
      workbookOf({
        rows: `<row r="1">${text('A1', 'Lot')}${text('B1', 'Index')}</row><row r="2">${text('B2', '7 d')}${text('C2', '28 d')}</row><row r="3">${text('A3', 'A-1')}<c r="B3"><v>82</v></c><c r="C3"><v>91</v></c></row>`,
        merged: ['A1:A2', 'B1:C1'],
      }),
    )
    const map = `
every: { source: ash, laboratory: quay, sample: C, tested: 2026-01-14, condition: c311 }
tables:
  - holds: analyses
    headings: [1, 2]
    columns:
      Lot: lot
      Index / 7 d: { to: strength-activity-index, unit: "%", age: 7 d }
      Index / 28 d: { to: strength-activity-index, unit: "%", age: 28 d }
`
    const plan = planned({ table: sheets, map, onRecord: { 'lots/ash/A-1.yaml': 'quantity: 900 t\n' } })
    expect(errorsOf(plan)).toEqual([])
    expect(JSON.stringify(recordIn(plan, 'lots/ash/A-1.yaml')['analyses'])).toContain('"82 %"')
    expect(JSON.stringify(recordIn(plan, 'lots/ash/A-1.yaml')['analyses'])).toContain('"91 %"')
  })
  it('reads what a library writes: texts, numbers, dates', async () => {
    const buffer = await writeExcelFile([
      [{ value: 'Lot' }, { value: 'LOI' }, { value: 'Tested' }],
      [
        { value: '007', type: String },
        { value: 2.5, type: Number, format: '0.00' },
        { value: new Date(Date.UTC(2026, 0, 14)), type: Date, format: 'yyyy-mm-dd' },
      ],
    ]).toBuffer()
    expect(cellsOf(readWorkbook(buffer)[0])).toEqual({
      ...{ A1: 'text Lot', B1: 'text LOI', C1: 'text Tested' },
      ...{ A2: 'text 007', B2: 'number 2.50', C2: 'date 2026-01-14' },
    })
  })
  it('refuses what is no workbook, and one that would unpack to gigabytes', () => {
    expect(() => readWorkbook(Buffer.from('Lot,LOI\nA,1\n'))).toThrow(WorkbookFault)
    expect(() => readWorkbook(zipOf([{ name: 'a.txt', bytes: Buffer.from('x') }]))).toThrow(WorkbookFault)
    expect(() =>
      readWorkbook(
        zipOf([{ name: 'xl/workbook.xml', bytes: Buffer.from('<workbook/>'), claimed: 3_000_000_000 }]),
      ),
    ).toThrow(/unpack to more/)
  })
  it('throws nothing else for a sound workbook with spoilt bytes', () => {
    const sound = workbookOf({ strings: ['<t>a</t>'], rows: '<row r="1"><c r="A1" t="s"><v>0</v></c></row>' })
    let refused = 0
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        (spoilt) => {
          const bytes = Buffer.from(sound)
          for (const [place, byte] of spoilt) bytes[place] = byte
          try {
            readWorkbook(bytes)
          } catch (error) {
            expect(error).toBeInstanceOf(WorkbookFault)
            refused += 1
          }
        },
      ),
      { numRuns: 1500, seed: 21 },
    )
    expect(refused).toBeGreaterThan(100)
  })
})
