import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { exclusionOn, knownFrom } from '../../../src/core/mortar/known-when.ts'

describe('knownFrom', () => {
  it('is when a test was reported, and never before it was made', () => {
    const [tested, reported] = [readMoment('2026-03-11'), readMoment('2026-03-14')]
    expect(knownFrom({ tested })).toBe(tested)
    expect(knownFrom({ tested, reported })).toBe(reported)
    expect(knownFrom({ tested: reported, reported: tested })).toBe(reported)
  })
  it('goes by calendar dates as written before all else: a report of the next day, whatever the offsets', () => {
    // 23:30 at -05:00 is 04:30 of the 12th in UTC, after the bare date has begun.
    const [tested, reported] = [readMoment('2026-03-11T23:30-05:00'), readMoment('2026-03-12')]
    expect(knownFrom({ tested, reported })).toBe(reported)
  })
})

describe('exclusionOn', () => {
  it('holds from its own day, else from the reading on', () => {
    const dated = { excluded: 'cracked', 'excluded-on': readMoment('2026-03-12') }
    expect(exclusionOn(dated, readMoment('2026-03-11'))).toBeUndefined()
    expect(exclusionOn(dated, readMoment('2026-03-12'))).toBe('cracked')
    expect(exclusionOn({ excluded: 'cracked' }, readMoment('2026-03-01'))).toBe('cracked')
    expect(exclusionOn({}, readMoment('2026-03-12'))).toBeUndefined()
  })
})
