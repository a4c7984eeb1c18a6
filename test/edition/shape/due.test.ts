import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { isDue, isProvisional } from '../../../src/edition/shape/due.ts'
import type { LotEntry } from '../../../src/edition/shape/edition.ts'
import { plannedTest, revision, tinyLot } from '../tiny-edition.ts'

const inTime = plannedTest('2026-05-05')
const overdue = plannedTest('2026-04-22', '2026-04-30')

/** Of a mortar; of an analysis without an age. */
function result(age: string | null, tested: string, more: Partial<Result> = {}): Result {
  const own = age === null ? {} : { age: readAge(age) }
  return { role: 'producer', tested: readMoment(tested), ...own, ...more } as Result
}

const at7 = result('7 d', '2026-04-01')

/** A certificate of 3 April. */
function isCertificateDue(more: Partial<LotEntry>): boolean {
  const revisions = [revision(0, '2026-04-03')]
  return isDue(tinyLot('ash/A-1', { state: 'provisional', results: [at7], revisions, ...more }))
}

describe('isProvisional', () => {
  it('holds while a result is awaited, an overdue one included', () => {
    expect([[inTime], [overdue], []].map((planned) => isProvisional({ planned }))).toEqual([
      true,
      true,
      false,
    ])
  })
})

describe('isDue', () => {
  it('leaves out a provisional certificate whose results are awaited or overdue, for none was added', () => {
    expect(isCertificateDue({ planned: [inTime] })).toBe(false)
    expect(isCertificateDue({ planned: [overdue] })).toBe(false)
  })
  it('takes one that has nothing left to await, however late its results came', () => {
    expect(isCertificateDue({ planned: [] })).toBe(true)
  })
  it('takes one that got a result while the rest is overdue, but not while some may still come in time', () => {
    const results = [at7, result('28 d', '2026-04-22', { known: readMoment('2026-05-06') })]
    expect(isCertificateDue({ results, planned: [overdue] })).toBe(true)
    expect(isCertificateDue({ results, planned: [overdue, inTime] })).toBe(false)
  })
  it('takes no analysis, no verification and nothing of the day of issue for a result that was awaited', () => {
    for (const other of [
      result(null, '2026-05-06'),
      result('28 d', '2026-05-06', { role: 'verification' }),
      result('28 d', '2026-04-03'),
    ])
      expect(isCertificateDue({ results: [at7, other], planned: [overdue] })).toBe(false)
  })
  it('takes a complete certificate for which a laboratory’s finished figure of a further age came', () => {
    const later = result('28 d', '2026-04-22')
    const due = (further: Result) => isCertificateDue({ state: 'complete', results: [at7, further] })
    expect(due({ ...later, finished: true })).toBe(true)
    // Tested on the day before the certificate, written into the record after it.
    const earlier = { ...result('28 d', '2026-04-02', { finished: true }), key: 'late entry' }
    expect(due(earlier)).toBe(false)
    const lot = { state: 'complete', results: [at7, earlier], unstated: ['late entry'] } as const
    expect(isCertificateDue(lot)).toBe(true)
    expect(due({ ...at7, finished: true })).toBe(false)
    expect(due(later)).toBe(false)
  })
  it('takes a draft whose earliest age is reported, and neither a complete nor a withdrawn certificate', () => {
    expect(isCertificateDue({ state: 'draft', revisions: [], planned: [inTime] })).toBe(true)
    expect(isCertificateDue({ state: 'draft', revisions: [], results: [] })).toBe(false)
    expect(isCertificateDue({ state: 'complete' })).toBe(false)
    expect(isCertificateDue({ state: 'withdrawn' })).toBe(false)
  })
})
