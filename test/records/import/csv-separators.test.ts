import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shownText } from '../../../src/records/import/cell-value.ts'
import { readCsv } from '../../../src/records/import/csv.ts'

function grid(text: string | Buffer, form = {}): string[][] {
  return readCsv(Buffer.from(text), form).sheet.rows.map(({ cells }) => [...cells.values()].map(shownText))
}

describe('readCsv', () => {
  it('finds the separator, below a title and among decimal commas too', () => {
    expect(grid('Report of March\nLot;LOI\nW-1;2,10\n')).toEqual([
      ['Report of March'],
      ['Lot', 'LOI'],
      ['W-1', '2,10'],
    ])
    expect(grid('Lot\t"a;b"\nW-1\t2\n')).toEqual([
      ['Lot', 'a;b'],
      ['W-1', '2'],
    ])
    expect(grid('Lot,Remark\nW-1,wet; dirty\nW-2,dry\nW-3,dry\n')[1]).toEqual(['W-1', 'wet; dirty'])
    expect(grid('a;b\n', { separator: 'comma' })).toEqual([['a;b']])
  })
  it('keeps headings that are alike, and takes off the byte-order mark', () => {
    expect(grid('\uFEFFLoad,Load\n1,2\n')).toEqual([
      ['Load', 'Load'],
      ['1', '2'],
    ])
  })
  it('numbers rows as a spreadsheet does, quoted line ends and blank rows counted', () => {
    const { sheet, faults } = readCsv(Buffer.from('a,b\n\n"x\ny",2\n3,4\n'))
    expect(sheet.rows.map(({ row }) => row)).toEqual([1, 3, 4])
    expect(faults).toEqual([])
  })
  it('reads what older spreadsheets call Unicode and Windows-1252, and refuses other bytes', () => {
    expect(grid(Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('Lot\tµm', 'utf16le')]))).toEqual([
      ['Lot', 'µm'],
    ])
    const old = Buffer.from('Residue 45 µm,1', 'latin1')
    expect(grid(old, { encoding: 'windows-1252' })).toEqual([['Residue 45 µm', '1']])
    expect(() => readCsv(old)).toThrow('not UTF-8')
  })
  it('tells a quote that does not close', () => {
    expect(readCsv(Buffer.from('Lot,Note\nW-1,"open\nW-2,x\n')).faults).toHaveLength(1)
  })
  it('gives back every cell that a writer put in quotes', () => {
    const cell = fc
      .string({ maxLength: 6 })
      .filter((text) => text.trim() !== '' && !/[\u00a0\u200b\ufeff\r]/.test(text))
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1 }), (rows) => {
        const text = rows
          .map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`).join(','))
          .join('\n')
        const found = readCsv(Buffer.from(text)).sheet.rows.map(({ cells }) =>
          [...cells.values()].map((one) => one.text),
        )
        expect(found).toEqual(rows)
      }),
      { numRuns: 300, seed: 14 },
    )
  })
})
