import { describe, expect, it } from 'vitest'
import { commaCell, isColumn, pastedCells, readColumn } from '../../../src/records/form/pasted-column.ts'

describe('pastedCells', () => {
  it('parts a column by its lines and a row by its tabs, and keeps a cell that is empty between others', () => {
    expect(pastedCells('78.4\r\n79.1\r\n')).toEqual(['78.4', '79.1'])
    expect(pastedCells('78.4\t\t79.1\n')).toEqual(['78.4', '', '79.1'])
    expect([isColumn('78.4 kN'), isColumn('78.4\n'), isColumn('78.4\n79.1')]).toEqual([false, false, true])
  })
})

describe('commaCell', () => {
  it('finds the first cell whose comma has to be asked about, with what it would be', () => {
    expect(commaCell(['78.4', '17,500'])).toEqual({ cell: '17,500', decimal: '17.500', thousands: '17500' })
    expect(commaCell(['1.234,5 N'])).toMatchObject({ decimal: '1234.5 N' })
    expect(commaCell(['78.4', '79.1'])).toBeUndefined()
  })
})

describe('readColumn', () => {
  it('gives figures the unit that was chosen and leaves those with their own', () => {
    expect(readColumn(['78.40', '79.1 kN', '', '> 850'], { unit: 'kN' })).toEqual({
      cells: ['78.40 kN', '79.1 kN', '', '> 850 kN'],
      asksUnit: true,
    })
    expect(readColumn(['79.1 kN'], {})).toEqual({ cells: ['79.1 kN'], asksUnit: false })
  })

  it('reads commas as they were said to be, digits kept', () => {
    expect(readColumn(['78,40', '1.234,5'], { comma: 'decimal' })).toMatchObject({
      cells: ['78.40', '1234.5'],
    })
    expect(readColumn(['17,500', '1,234,567'], { comma: 'thousands' })).toMatchObject({
      cells: ['17500', '1234567'],
    })
  })

  it('reads thousands parted by blanks or apostrophes, which are no sign of a unit', () => {
    expect(
      readColumn(['12 340', '12\u202f340', '12’340.5', "1'234'567", '850 ohm', '12 340 lbf'], {
        unit: 'lbf',
      }),
    ).toEqual({
      cells: ['12340 lbf', '12340 lbf', '12340.5 lbf', '1234567 lbf', '850 ohm', '12340 lbf'],
      asksUnit: true,
    })
    expect(readColumn(['12 340,5'], { comma: 'decimal' })).toMatchObject({ cells: ['12340.5'] })
  })

  it('refuses commas that cannot be what they were said to be', () => {
    expect(readColumn(['0,485'], { comma: 'thousands' })).toHaveProperty('fault')
    expect(readColumn(['1,234,567'], { comma: 'decimal' })).toHaveProperty('fault')
    expect(readColumn(['17,500'], {})).toHaveProperty('fault')
  })

  it('refuses a heading', () => {
    expect(readColumn(['Load kN', '78.4'], {})).toEqual({
      fault: '“Load kN” is no reading: copy the figures without their heading',
    })
  })
})
