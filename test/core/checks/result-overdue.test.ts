import { describe, expect, it } from 'vitest'
import { overdueFindings } from '../../../src/core/checks/result-overdue.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { plannedIndex } from '../judging/fixture.ts'

const late = plannedIndex('28 d', { overdueSince: readMoment('2026-02-04T12:20') })

describe('overdueFindings', () => {
  it('warns of a result that is overdue, by an id from the record alone, and not of one that is only due', () => {
    expect(
      overdueFindings({ id: 'ash/A-1', state: 'provisional', planned: [late, plannedIndex('7 d')] }),
    ).toEqual([
      {
        id: `result-overdue/ash/A-1/strength-activity-index/${late.condition}/28-d`,
        severity: 'warning',
        about: 'ash/A-1',
        reason: {
          code: 'result-overdue',
          params: {
            lot: 'ash/A-1',
            property: 'strength-activity-index',
            condition: late.condition,
            age: '28 d',
            unread: 'both',
            due: late.due.text,
            since: '2026-02-04T12:20',
          },
        },
      },
    ])
  })

  it('speaks of a draft too, for nobody but the laboratory can know that it was forgotten', () => {
    expect(overdueFindings({ id: 'ash/A-1', state: 'draft', planned: [late] })).toHaveLength(1)
  })

  it('is silent about a withdrawn lot', () => {
    expect(overdueFindings({ id: 'ash/A-1', state: 'withdrawn', planned: [late] })).toEqual([])
  })
})
