/** The day on which a question could first be asked, worked by hand from what each rests on. */
import { describe, expect, it } from 'vitest'
import { type AskedLot, firstAsked } from '../../../src/core/checks/first-asked.ts'
import type { FindingReason } from '../../../src/core/checks/finding.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'

const day = (text: string) => readMoment(text).day
const lot: AskedLot = {
  sampled: day('2026-01-05'),
  known: ({ age }) => (age === '28 d' ? day('2026-02-02') : null),
  left: (bill) => (bill === 'B1' ? day('2026-01-20') : null),
  issued: (revision) => (revision === 2 ? day('2026-02-10') : null),
}
const asked = (code: string, params: object) => {
  const since = firstAsked({ code, params } as FindingReason, (id) => (id === 's/A' ? lot : null))
  return since === null ? null : new Date(since * 86_400_000).toISOString().slice(0, 10)
}
const left = (from: string, to: string) => ({
  first: { bill: '1', date: from },
  last: { bill: '2', date: to },
})

describe('firstAsked', () => {
  it('takes a gap from the lot after it, and a report from the day after it was due', () => {
    const after = { lot: 's/A', number: 'A', sampled: '2026-01-05' }
    expect(asked('number-gap', { before: null, after })).toBe('2026-01-05')
    expect(asked('report-missing', { due: '2026-02-28' })).toBe('2026-03-01')
    expect(asked('result-overdue', { lot: 's/A', since: '2026-02-09' })).toBe('2026-02-09')
  })

  it('takes the first of several shipments, whether they are of one lot or of several possible ones', () => {
    const shipped = left('2026-01-22', '2026-02-20')
    expect(asked('shipped-without-certificate', { lot: 's/A', shipped })).toBe('2026-01-22')
    const shared = left('2026-01-21', '2026-01-21')
    expect(asked('shipped-after-failure', { lot: 's/A', shipped, shared })).toBe('2026-01-21')
    expect(asked('shipped-after-failure', { lot: 's/A', shipped, shared: null })).toBe('2026-01-22')
  })

  it('takes a result of a lot from when it was known, else from the sampling, and a bill from its day', () => {
    expect(asked('far-from-history', { lot: 's/A', property: 'strength-activity-index', age: '28 d' })).toBe(
      '2026-02-02',
    )
    expect(asked('far-from-history', { lot: 's/A', property: 'density', age: null })).toBe('2026-01-05')
    expect(asked('number-off-pattern', { lot: 's/A' })).toBe('2026-01-05')
    expect(asked('bill-twice', { lot: 's/A', bill: 'B1' })).toBe('2026-01-20')
    expect(asked('changed-after-issue', { lot: 's/A', revision: 2 })).toBe('2026-02-10')
  })

  it('names no day for a statistic, for a list cut short, or for a lot that is not to be named', () => {
    expect(asked('results-drift', { source: 's' })).toBeNull()
    expect(asked('uniformity-exceeded', { source: 's', outside: 9, lots: ['s/A'] })).toBeNull()
    expect(asked('uniformity-exceeded', { source: 's', outside: 1, lots: ['s/A'] })).toBe('2026-01-05')
    expect(asked('far-from-history', { lot: 's/B', property: 'density', age: null })).toBeNull()
  })
})
