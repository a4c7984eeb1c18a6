import { describe, expect, it } from 'vitest'
import { alikeFaults, alikeFaultsText } from '../../../src/records/import/alike-faults.ts'
import type { ImportFault } from '../../../src/records/import/import-fault.ts'

function fault(row: number, more: Partial<ImportFault> = {}): ImportFault {
  return {
    code: 'import-cell',
    severity: 'error',
    place: { sheet: 'March', row, column: 5 },
    message: `found "${row},1"; a number was expected`,
    mend: 'write the number alone',
    ...more,
  }
}

function said(...faults: ImportFault[]): string[] {
  return alikeFaults(faults).map((alike) => alikeFaultsText('year.xlsx', alike))
}

describe('alikeFaults', () => {
  it('tells what differs in the value found once, with the places of the first three', () => {
    expect(said(fault(2), fault(3), fault(4), fault(5), fault(6))).toEqual([
      'year.xlsx!March!F2: found "2,1"; a number was expected [import-cell]\n  likewise March!F3, March!F4 and 2 more; --all shows each\n  fix: write the number alone',
    ])
    expect(said(fault(2), fault(3))[0]).toContain('\n  likewise March!F3; --all')
    expect(said(fault(2))[0]).not.toContain('likewise')
  })
  it('keeps apart what stands in another column, says another thing, or is no error', () => {
    expect(
      said(
        fault(2),
        fault(3, { place: { sheet: 'March', row: 3, column: 6 } }),
        fault(4, { place: { sheet: 'April', row: 4, column: 5 } }),
        fault(5, { message: 'found the error #N/A; a number was expected' }),
        fault(6, { mend: 'correct the unit' }),
        fault(7, { severity: 'note' }),
      ),
    ).toHaveLength(6)
  })
  it('takes values that differ from those on record together by column', () => {
    const differs = (row: number, column: number) =>
      fault(row, {
        code: 'import-differs',
        place: { sheet: null, row, column },
        message: `lot works/W-${row}, quantity: on record "9${row} t", in the file "8${row} t"`,
      })
    expect(said(differs(2, 3), differs(3, 3), differs(4, 4))).toEqual([
      expect.stringContaining(
        'lot works/W-2, quantity: on record "92 t", in the file "82 t" [import-differs]\n  likewise D3;',
      ),
      expect.stringContaining('lot works/W-4'),
    ])
  })
  it('counts what has no place', () => {
    expect(said(fault(1, { place: null }), fault(2, { place: null }))[0]).toContain('likewise 1 more;')
  })
})
