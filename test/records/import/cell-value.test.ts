import { describe, expect, it } from 'vitest'
import { cellForm, readCell } from '../../../src/records/import/cell-value.ts'
import type { Reads } from '../../../src/records/import/fields.ts'
import type { CellValue } from '../../../src/records/import/grid.ts'
import type { Column, WrittenForm } from '../../../src/records/import/import-map.ts'

function read(
  cell: string | CellValue,
  reads: Reads,
  form: WrittenForm & Partial<Column> = {},
): string | null {
  const value: CellValue = typeof cell === 'string' ? { kind: 'text', text: cell } : cell
  const reading = readCell(value, reads, cellForm([form], form))
  if (reading === null) return null
  return 'fault' in reading ? `refused: ${reading.fault.message}` : reading.written
}

const percent = { as: 'quantity', kind: 'fraction' } as const
const load = { as: 'quantity', kind: 'force' } as const
const ohms = { as: 'quantity', kind: 'resistance', above: true } as const
const moment = { as: 'moment' } as const

describe('readCell', () => {
  it.each<[string | CellValue, Reads, WrittenForm & Partial<Column>, string | null]>([
    ['2.10', percent, { unit: '%' }, '2.10 %'],
    ['2.10 %', percent, {}, '2.10 %'],
    ['<0.1', percent, { unit: '%' }, '< 0.1 %'],
    ['below 0,1', percent, { unit: '%', numbers: { decimal: 'comma' } }, 'below 0.1 %'],
    ['17,500', load, { unit: 'lbf', numbers: { thousands: 'comma' } }, '17500 lbf'],
    ['17 500,5', load, { unit: 'N', numbers: { decimal: 'comma', thousands: 'space' } }, '17500.5 N'],
    ['1.234,5', load, { unit: 'N', numbers: { decimal: 'comma', thousands: 'point' } }, '1234.5 N'],
    ['1’234', load, { unit: 'N', numbers: { thousands: 'apostrophe' } }, '1234 N'],
    ['>850', ohms, { unit: 'ohm' }, '> 850 ohm'],
    ['ND', percent, { unit: '%', 'stands-for': { ND: '< 0.05' } }, '< 0.05 %'],
    ['n/a', percent, { unit: '%', blank: ['n/a'] }, null],
    ['  ', percent, {}, null],
    [{ kind: 'number', text: '84', percent: true }, percent, {}, '84 %'],
    [{ kind: 'number', text: '0.40' }, percent, { unit: '%' }, '0.40 %'],
    ['28', { as: 'age' }, { unit: 'd' }, '28 d'],
    ['28-day', { as: 'age' }, {}, '28 d'],
    ['72 h', { as: 'age' }, {}, '72 h'],
    ['31.12.2026', moment, { dates: 'day-month-year' }, '2026-12-31'],
    ['12/31/2026 2:05 PM', moment, { dates: 'month-day-year' }, '2026-12-31T14:05'],
    ['2026-12-31 09:20', moment, {}, '2026-12-31T09:20'],
    ['31 Dec 2026', moment, {}, '2026-12-31'],
    ['December 31, 2026', moment, {}, '2026-12-31'],
    [{ kind: 'date', text: '2026-12-31T09:20' }, { as: 'date' }, {}, '2026-12-31'],
    ['7', { as: 'id' }, { prefix: 'W-2026-', digits: 3 }, 'W-2026-007'],
    [{ kind: 'number', text: '7', padded: '007' }, { as: 'text' }, {}, '007'],
    ['9:05 am', { as: 'time' }, {}, '09:05'],
  ])('reads %j as %j with %j: %j', (cell, reads, form, written) => {
    expect(read(cell, reads, form)).toBe(written)
  })

  it.each<[string | CellValue, Reads, WrittenForm & Partial<Column>]>([
    ['1,234', load, { unit: 'N' }],
    ['12,34', load, { unit: 'N', numbers: { thousands: 'comma' } }],
    ['900 tons', { as: 'quantity', kind: 'lot-mass' }, {}],
    ['900', { as: 'quantity', kind: 'lot-mass' }, {}],
    ['0.4 %', percent, { unit: 'mg/kg' }],
    [{ kind: 'number', text: '84', percent: true }, percent, { unit: 'mg/kg' }],
    ['≤ 5', percent, { unit: '%' }],
    ['>850', percent, { unit: '%' }],
    ['1e3', load, { unit: 'N' }],
    [{ kind: 'date', text: '2026-01-03' }, percent, { unit: '%' }],
    ['03.04.2026', moment, {}],
    ['30.02.2026', moment, { dates: 'day-month-year' }],
    ['13/13/2026', moment, { dates: 'month-day-year' }],
    ['31.12.26', moment, { dates: 'day-month-year' }],
    [{ kind: 'number', text: '46092' }, moment, {}],
    ['28', { as: 'age' }, {}],
    ['W 1', { as: 'id' }, {}],
    ['2.5', { as: 'count' }, {}],
  ])('refuses %j as %j with %j', (cell, reads, form) => {
    expect(read(cell, reads, form)).toMatch(/^refused: /)
  })
})
