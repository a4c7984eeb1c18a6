import { describe, expect, it } from 'vitest'
import { nextLotNumber } from '../../src/scaffold/lot-number.ts'

describe('nextLotNumber', () => {
  it.each([
    ['FA-YYYY-###', [], '2026', 'FA-2026-001'],
    ['FA-YYYY-###', ['FA-2026-001', 'FA-2026-009', 'FA-2025-044'], '2026', 'FA-2026-010'],
    ['FA-YYYY-###', ['FA-2025-044'], '2026', 'FA-2026-001'],
    ['FA-YYYY-###', ['fa-2026-003', 'special', 'FA-2026-0005'], '2026', 'FA-2026-004'],
    ['T####', ['T0099', 'T0012'], '2026', 'T0100'],
    ['T#', ['T9'], '2026', 'T10'],
  ])('%s after %j in %s is %s', (pattern, given, year, next) => {
    expect(nextLotNumber({ pattern, given, year })).toBe(next)
  })
  it('is null where the pattern counts nothing', () => {
    expect(nextLotNumber({ pattern: 'LOT', given: [], year: '2026' })).toBeNull()
  })
})
