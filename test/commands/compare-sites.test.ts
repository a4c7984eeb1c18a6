import { describe, expect, it } from 'vitest'
import { heldAgainst } from '../../src/commands/compare-sites.ts'

const issued = {
  lots: { 'ash/1': { state: 'complete', formerly: [], revisions: [] } },
  records: {},
} as const
const nothing = { lots: {}, records: {} }

describe('heldAgainst', () => {
  const lost = (after: string) => () =>
    heldAgainst(issued, nothing, { from: 'dist', accept: [], days: { before: '2026-04-10', after } })

  it('says how to get back what was lost of the records', () => {
    expect(lost('2026-04-10')).toThrow(/ash\/1: the lot is gone.*restore the records from version control/s)
    expect(lost('2026-04-17')).toThrow(/restore the records from version control/)
  })

  it('says so where an earlier day was asked for, on which it was not issued yet', () => {
    expect(lost('2025-06-30')).toThrow(
      /the earlier site is of 2026-04-10, and what was issued after 2025-06-30 is not known on that day: give --as-of 2026-04-10 or later; to publish without them, name the lots with --accept/,
    )
  })

  it('lets pass what was accepted, whatever the day', () => {
    const accepted = { from: 'dist', accept: ['ash/*'], days: { before: '2026-04-10', after: '2025-06-30' } }
    expect(heldAgainst(issued, nothing, accepted)).toEqual([
      'accepted against dist (1):',
      '  ash/1: the lot is gone, with its certificates',
    ])
  })
})
