import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { dayOfWork } from '../../../src/scripts/bench/bench-records.ts'
import { benchSite } from './bench-site.ts'

describe('siteRecords', () => {
  it('reads the same conditions, controls and sets back from the site’s files', () => {
    const { records, edition, asOf } = benchSite()
    expect(asOf.text).toBe(edition.asOf.text)
    expect([...records.conditions.keys()]).toEqual([...edition.conditions.keys()])
    expect([...records.controls.keys()]).toEqual([...edition.controls.keys()])
    expect([...records.criteria.keys()]).toEqual([...edition.criteria.keys()])
    expect(records.controls.get('ML-2024-0703-AL')?.cast).toEqual(
      edition.controls.get('ML-2024-0703-AL')?.record.cast,
    )
  })
})

describe('dayOfWork', () => {
  const { records } = benchSite()
  const { 'as-of': _stated, ...site } = records.site
  const asOf = readMoment('2026-04-10')

  it('is the day that the site states', () => {
    expect(dayOfWork({ records, asOf }, readMoment('2027-01-01'))).toBe('2026-04-10')
  })

  it('is today where the site states none, and never before its edition', () => {
    const open = { records: { ...records, site }, asOf }
    expect(dayOfWork(open, readMoment('2027-01-01'))).toBe('2027-01-01')
    expect(dayOfWork(open, readMoment('2026-01-01'))).toBe('2026-04-10')
  })
})
