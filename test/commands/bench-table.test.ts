import { expect, it } from 'vitest'
import { type Measure, progress, table } from '../../src/commands/bench-table.ts'

const part = (what: string, seconds: number, more: Partial<Measure> = {}): Measure => ({
  ...{ what, lots: 1000, seconds, peakMB: 120 },
  ...more,
})

it('a part that failed says why, and nothing is held against it', () => {
  const failed = part('build', 60, { failed: 'Memory is short' })
  const rows = table([part('yaml-floor', 2), part('check', 6), failed, part('copy', 3)]).split('\n')
  expect(rows.slice(2, 6)).toEqual([
    '| 1000 | yaml-floor | 2.00 | 2.00 | 120 |  |',
    '| 1000 | check | 6.00 | 6.00 | 120 | 3.00 x yaml-floor |',
    '| 1000 | build | 60.00 | 60.00 |  | failed: Memory is short |',
    '| 1000 | copy | 3.00 | 3.00 | 120 |  |',
  ])
  expect(progress(failed)).toBe('1000 lots, build: 60.0 s, failed: Memory is short\n')
})
