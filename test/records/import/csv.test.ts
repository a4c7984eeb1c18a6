import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../../../src/records/import/csv.ts'
import { WorkbookFault } from '../../../src/records/import/zip.ts'

function cells(text: string | Buffer): Record<string, string> {
  const { sheet } = readCsv(Buffer.from(text))
  return Object.fromEntries(
    sheet.rows.flatMap(({ row, cells }) =>
      [...cells].map(([column, value]) => [`${'ABCDEF'[column]}${row}`, value.text] as const),
    ),
  )
}

it('refuses a row longer than any of a spreadsheet', () => {
  expect(() => readCsv(Buffer.from(`Lot\n${'1,'.repeat(200_000)}\n`))).toThrow(
    'row 2 has more than 16384 cells',
  )
})

it('says that a file is empty, and that it is a workbook under another name', () => {
  for (const text of ['', '\ufeff', ' \n\n'])
    expect(() => readCsv(Buffer.from(text))).toThrow('the file is empty')
  expect(() => readCsv(Buffer.from('PK\x03\x04\x14', 'latin1'))).toThrow(
    'the file is a workbook by its content',
  )
})

describe('readCsv', () => {
  it('takes the separator from the headings, whatever the rows hold more of', () => {
    expect(cells('Lot;SO3;LOI\nA;0,5;2,7\n')).toEqual({
      A1: 'Lot',
      B1: 'SO3',
      C1: 'LOI',
      A2: 'A',
      B2: '0,5',
      C2: '2,7',
    })
    expect(cells('Lot\tLoad, kN\nA\t78.4\n')).toEqual({ A1: 'Lot', B1: 'Load, kN', A2: 'A', B2: '78.4' })
    expect(cells('Lot,"Load; kN"\nA,78.4\n')).toEqual({ A1: 'Lot', B1: 'Load; kN', A2: 'A', B2: '78.4' })
  })
  it('keeps two columns of one heading, leading noughts, and the numbers of rows over blank ones', () => {
    expect(cells('\ufeffa,a\r\n\r\n007,=1+1\r\n')).toEqual({ A1: 'a', B1: 'a', A3: '007', B3: '=1+1' })
  })
  it('reads the text that a spreadsheet calls Unicode', () => {
    expect(cells(Buffer.from('\ufeffLot\tSO₃\nA\t1\n', 'utf16le'))).toEqual({
      A1: 'Lot',
      B1: 'SO₃',
      A2: 'A',
      B2: '1',
    })
  })
  it('says where a quote does not close, and refuses bytes that are no text', () => {
    expect(readCsv(Buffer.from('a,b\n"1,2\n')).faults).not.toEqual([])
    expect(() => readCsv(Buffer.from([0x61, 0xff, 0xfe, 0x62]))).toThrow(WorkbookFault)
  })
  it('throws nothing else for any bytes', () => {
    let read = 0
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        try {
          readCsv(Buffer.from(bytes))
          read += 1
        } catch (error) {
          expect(error).toBeInstanceOf(WorkbookFault)
        }
      }),
      { numRuns: 1000, seed: 3 },
    )
    expect(read).toBeGreaterThan(10)
  })
})
