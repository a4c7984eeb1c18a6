import { describe, expect, it } from 'vitest'
import { materialBalance } from '../../../src/core/checks/material-balance.ts'

const LINES = [
  { month: '2026-01', silo: 'A', produced: 1820, diverted: 900, rejected: 30, stock: 120 },
  { month: '2025-12', silo: 'A', produced: 1000, diverted: 0, rejected: 0, stock: 100 },
  { month: '2026-02', silo: 'A', produced: 500, diverted: 0, rejected: 0 },
]
const CERTIFIED = [
  { month: '2025-12', silo: 'A', tonnes: 900 },
  { month: '2026-01', silo: 'A', tonnes: 858 },
  { month: '2026-01', silo: 'B', tonnes: 7000 },
]

describe('materialBalance', () => {
  it('is produced less certified, diverted, rejected and the growth of the stock, over the turn of a year', () => {
    // 1820 − 858 − 900 − 30 − (120 − 100) = 12.
    const rows = materialBalance(LINES, CERTIFIED, [{ month: '2026-01', silo: 'A', tonnes: 880 }])
    expect(rows.map(({ month }) => month)).toEqual(['2025-12', '2026-01', '2026-02'])
    expect(rows[1]).toMatchObject({ certified: 858, stockChange: 20, difference: 12, divertedOnRecord: 880 })
  })
  it('gives no difference where the stock before or after is not on record', () => {
    const [first, , last] = materialBalance(LINES, CERTIFIED, [])
    expect([first?.difference, last?.difference]).toEqual([null, null])
  })
  it('takes all silos where a line names none', () => {
    const [row] = materialBalance(
      [{ month: '2026-01', produced: 8000, diverted: 0, rejected: 0 }],
      CERTIFIED,
      [],
    )
    expect(row?.certified).toBe(7858)
  })
})
