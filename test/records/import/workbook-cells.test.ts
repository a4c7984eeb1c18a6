import fc from 'fast-check'
import writeXlsxFile from 'write-excel-file/node'
import { describe, expect, it } from 'vitest'
import { shownText } from '../../../src/records/import/cell-value.ts'
import type { CellValue, Sheet } from '../../../src/records/import/grid.ts'
import { readWorkbook } from '../../../src/records/import/xlsx.ts'
import { WorkbookFault } from '../../../src/records/import/zip.ts'
import { type HandMade, workbookOf, zipOf } from './hand-made.ts'

function bench(made: HandMade): Sheet {
  const [sheet] = readWorkbook(workbookOf(made))
  if (sheet === undefined) throw new Error('the workbook has no sheet')
  return sheet
}

/** The cells of the only row, in order. */
function cellsOf(made: HandMade): CellValue[] {
  return [...(bench(made).rows[0]?.cells.values() ?? [])]
}

describe('readWorkbook of a workbook made by hand', () => {
  it('reads inline, shared and rich text, and leaves out how it is read aloud', () => {
    expect(
      cellsOf({
        strings: ['<t>Lot</t>', '<r><t>SiO</t></r><r><t>₂</t></r><rPh><t>read aloud</t></rPh>'],
        rows: '<row r="3"><c r="B3" t="s"><v>0</v></c><c r="C3" t="s"><v>1</v></c><c r="D3" t="inlineStr"><is><t>a &amp; b&#x2082;</t></is></c><c r="E3" t="str"><f>A1</f><v>text</v></c></row>',
      }),
    ).toEqual(['Lot', 'SiO₂', 'a & b₂', 'text'].map((text) => ({ kind: 'text', text })))
  })
  it('keeps the row and column of each cell, where a cell states none as well', () => {
    const { name, rows } = bench({
      rows: '<row r="7"><c r="AB7"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>',
    })
    expect(name).toBe('Bench')
    expect(rows.map(({ row, cells }) => [row, [...cells.keys()]])).toEqual([
      [7, [27, 28]],
      [8, [0]],
    ])
  })
  it('shows a number with the decimals of its format, without the dust of binary numbers', () => {
    const made = cellsOf({
      formats: ['0.00', '0.0%', '00000', '#,##0.0', '0.000E+00'],
      rows: '<row r="1"><c r="A1" s="1"><v>0.4</v></c><c r="B1" s="2"><v>0.84</v></c><c r="C1" s="3"><v>7</v></c><c r="D1" s="4"><v>17500</v></c><c r="E1"><v>0.35059999999999997</v></c><c r="F1"><v>1.2E-3</v></c><c r="G1" s="1"><v>2.345</v></c></row>',
    })
    expect(made.map(shownText)).toEqual(['0.40', '84.0 %', '00007', '17500.0', '0.3506', '0.0012', '2.345'])
  })
  it('counts days from 1900 with its 29 February, or from 1904', () => {
    // 2026-03-11 is day 46092 of the one and 44630 of the other: ECMA-376 part 1, 18.17.4.1.
    const rows = (day: number) =>
      `<row r="1"><c r="A1" s="1"><v>${day}</v></c><c r="B1" s="2"><v>${day + 14 / 36}</v></c><c r="C1" s="3"><v>${14 / 36}</v></c></row>`
    const formats = ['dd/mm/yyyy', '[$-409]d\\-mmm\\-yy h:mm AM/PM', 'hh:mm']
    const expected = [
      { kind: 'date', text: '2026-03-11' },
      { kind: 'date', text: '2026-03-11T09:20' },
      { kind: 'time', text: '09:20' },
    ]
    expect(cellsOf({ formats, rows: rows(46092) })).toEqual(expected)
    expect(cellsOf({ formats, rows: rows(44630), since1904: true })).toEqual(expected)
    expect(
      cellsOf({
        formats,
        rows: '<row r="1"><c r="A1" s="1"><v>60</v></c><c r="B1" s="1"><v>61</v></c></row>',
      }),
    ).toEqual([
      { kind: 'fault', text: '60' },
      { kind: 'date', text: '1900-03-01' },
    ])
  })
  it('takes no error and no formula without a result for a blank cell', () => {
    expect(
      cellsOf({
        rows: '<row r="1"><c r="A1" t="e"><f>1/0</f><v>#DIV/0!</v></c><c r="B1"><f>A2*2</f></c><c r="C1" t="s"><v>9</v></c><c r="D1" s="1"/></row>',
      }),
    ).toEqual([
      { kind: 'fault', text: '#DIV/0!' },
      { kind: 'fault', text: 'a formula without a stored result' },
      { kind: 'fault', text: 'shared text 9' },
    ])
  })
  it('says which cells are merged', () => {
    expect(bench({ rows: '<row r="1"><c r="A1"><v>1</v></c></row>', merged: ['B1:D2'] }).merged).toEqual([
      { rows: [1, 2], columns: [1, 3] },
    ])
  })
})

describe('readWorkbook of a workbook made by a library', () => {
  it('reads every cell that was written, text as text and numbers by their digits', async () => {
    const cell = fc.oneof(
      fc.constant(null),
      fc.stringMatching(/^[A-Za-z0-9=+@%.,<>-]{1,12}$/).map((value) => ({ value, type: String })),
      fc.integer({ min: -1e9, max: 1e9 }).map((value) => ({ value: value / 1000, type: Number })),
    )
    const grid = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 })
    await fc.assert(
      fc.asyncProperty(grid, async (rows) => {
        const bytes = await writeXlsxFile([{ data: rows, sheet: 'One' }] as never).toBuffer()
        const [own] = readWorkbook(bytes)
        const found = rows.map((row, at) =>
          row.map((_, column) => {
            const value = own?.rows.find((one) => one.row === at + 1)?.cells.get(column)
            return value === undefined ? null : shownText(value)
          }),
        )
        expect(found).toEqual(rows.map((row) => row.map((one) => (one === null ? null : String(one.value)))))
      }),
      { numRuns: 60, seed: 14 },
    )
  })
})

describe('readWorkbook of what is no sound workbook', () => {
  const faultOf = (bytes: Buffer): string => {
    try {
      readWorkbook(bytes)
    } catch (error) {
      if (error instanceof WorkbookFault) return `${error.message}; ${error.mend}`
      throw error
    }
    return 'none'
  }
  it('refuses an archive that claims to unpack to more than a bench ever needs, before unpacking it', () => {
    const bomb = { name: 'xl/workbook.xml', bytes: Buffer.from('<workbook/>'), claimed: 0xf0000000 }
    expect(faultOf(zipOf([bomb]))).toContain('would unpack to more than 96 MiB')
  })
  it('unpacks no more than the archive claims', () => {
    const zeros = Buffer.alloc(4 * 1024 * 1024)
    const liar = [
      { name: '_rels/.rels', bytes: Buffer.from('<a/>') },
      { name: 'xl/workbook.xml', bytes: zeros, claimed: 100 },
    ]
    expect(faultOf(zipOf(liar))).toContain('damaged')
  })
  it('refuses a password, an old workbook, a document with entities of its own and anything else', () => {
    const bytes = Buffer.from('<!DOCTYPE a [<!ENTITY x "y">]><workbook/>')
    expect(faultOf(zipOf([{ name: 'xl/workbook.xml', bytes }]))).toContain('damaged')
    expect(faultOf(zipOf([{ name: 'xl/workbook.xml', bytes, flags: 1 }]))).toContain('has a password')
    expect(faultOf(Buffer.concat([Buffer.from([0xd0, 0xcf]), Buffer.alloc(600)]))).toContain(
      'save it as .xlsx',
    )
    expect(faultOf(zipOf([]))).toContain('without a workbook')
    expect(faultOf(Buffer.from('Lot,LOI\n'))).toContain('no .xlsx workbook')
  })
  it('throws nothing but a fault for bytes spoiled at random', () => {
    const sound = workbookOf({ rows: '<row r="1"><c r="A1" t="inlineStr"><is><t>Lot</t></is></c></row>' })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { minLength: 1, maxLength: 12 }),
        (spoiled) => {
          const bytes = Buffer.from(sound)
          for (const [at, byte] of spoiled) bytes[at] = byte
          expect(typeof faultOf(bytes)).toBe('string')
        },
      ),
      { numRuns: 2000, seed: 14 },
    )
  })
})
