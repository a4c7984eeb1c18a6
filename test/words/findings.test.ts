import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/core/checks/finding.ts'
import { wordedFinding } from '../../src/words/findings.ts'
import { PLAIN_NAMES } from './plain-names.ts'

const lot = 'vale/V-1'

function worded(reason: Finding['reason']) {
  const { sentence, evidence } = wordedFinding(
    { id: 'x', severity: 'warning', about: lot, reason },
    PLAIN_NAMES,
  )
  return [sentence, ...evidence]
}

describe('wordedFinding', () => {
  it('carries the check, the severity and what it is about beside its words', () => {
    const reason: Finding['reason'] = {
      code: 'would-now-be-judged-otherwise',
      params: { lot, revision: 0, changes: [] },
    }
    expect(
      wordedFinding(
        {
          id: 'would-now-be-judged-otherwise/vale/V-1/0',
          severity: 'warning',
          about: lot,
          reason,
        },
        PLAIN_NAMES,
      ),
    ).toEqual({
      id: 'would-now-be-judged-otherwise/vale/V-1/0',
      check: 'would-now-be-judged-otherwise',
      severity: 'warning',
      about: 'vale/V-1',
      sentence: 'Lot V-1 of vale would now be judged differently from revision 0',
      evidence: [],
    })
  })
  it('says in how many places a record differs, shows those it holds and counts the rest', () => {
    const change = { path: ['lot', 'analyses', '0', 'SO3'], issued: '0.41 %', today: null }
    expect(
      worded({ code: 'changed-after-issue', params: { lot, revision: 1, places: 1, changes: [change] } }),
    ).toEqual([
      'The record of lot V-1 of vale differs from revision 1 as issued in one place',
      'analysis 1 › SO3: 0.41 % when issued, absent today',
    ])
    const added = { path: ['lot', 'silo'], issued: null, today: '4' }
    expect(
      worded({ code: 'changed-after-issue', params: { lot, revision: 1, places: 3, changes: [added] } }),
    ).toEqual([
      'The record of lot V-1 of vale differs from revision 1 as issued in 3 places',
      'silo: absent when issued, 4 today',
      'and 2 more',
    ])
  })
  it('names a specimen by its test, counted from one, and by its mark', () => {
    const path = ['lot', 'tests', '0', 'strength', '1', 'specimens', '3']
    const change = { path, issued: '90 kN', today: '91 kN' }
    const params = { lot, revision: 1, places: 1, changes: [change] }
    expect(worded({ code: 'changed-after-issue', params })[1]).toBe(
      'test 1 › strength 2 › specimens › 3: 90 kN when issued, 91 kN today',
    )
  })
  it('names each verdict and clause that would have another outcome, and those that are no more', () => {
    const changes = [
      { criterion: 'base', issued: 'meets', today: 'does-not-meet' },
      { criterion: 'old', issued: 'meets', today: null },
      { criterion: 'roads', clause: 'so3', issued: 'pending', today: 'meets' },
      { criterion: 'roads', clause: 'loi', issued: 'meets', today: null },
      { criterion: 'first', issued: 'not-reported', today: 'insufficient-history', todayStanding: {} },
      { criterion: 'other', issued: 'pending', today: 'insufficient-history' },
      {
        criterion: 'late',
        clause: 'sai',
        issued: 'pending',
        today: 'does-not-meet',
        todayStanding: { soFar: true },
      },
    ] as const
    expect(worded({ code: 'would-now-be-judged-otherwise', params: { lot, revision: 2, changes } })).toEqual([
      'Lot V-1 of vale would now be judged differently from revision 2',
      'base: issued as "meets", today "does not meet"',
      'old: issued as "meets", today not judged under it',
      'roads, so3: issued as "pending", today "meets"',
      'roads, loi: issued as "meets", today no such clause',
      'first: issued as "required results not reported", today "meets all that can be evaluated"',
      'other: issued as "pending", today "history still too short"',
      'late, sai: issued as "pending", today "does not meet on the results so far"',
    ])
  })
  it('says which result is overdue since when, when it was due and whose reading is missing', () => {
    const test = { property: 'strength-activity-index', condition: 'c311', age: '28 d' } as const
    const params = { lot, ...test, due: '2026-01-28', since: '2026-02-05' }
    const wordedFor = (unread: 'lot' | 'control' | 'both' | 'result') =>
      worded({ code: 'result-overdue', params: { ...params, unread } })
    expect(wordedFor('lot')).toEqual([
      'The 28 d strength activity index (c311) of lot V-1 of vale has been overdue since 5\u00a0February 2026',
      'due 28\u00a0January 2026; the lot’s reading is missing; that of its control is on record',
    ])
    expect(wordedFor('result')[1]).toBe(
      'due 28\u00a0January 2026; no result is on record, neither by readings nor as a figure of the laboratory',
    )
    expect([wordedFor('control')[1], wordedFor('both')[1]]).toEqual([
      'due 28\u00a0January 2026; the control’s reading is missing; that of the lot is on record',
      'due 28\u00a0January 2026; the readings of the lot and of its control are missing',
    ])
  })
})

describe('lots that a finding names', () => {
  const alike = (...others: readonly (string | null)[]) =>
    worded({
      code: 'readings-alike',
      params: { lot: 'vale/V-9', of: 'oxides', sample: 'C', laboratory: 'quay', values: 8, others },
    })[0]?.replace('All 8 oxides of sample C of lot V-9 of vale are the same, to the last digit, in ', '')

  it('stand by their numbers where one source has them all, the first of many', () => {
    expect(alike('vale/V-1')).toBe('lot V-1 of vale')
    expect(alike('vale/V-1', 'vale/V-2')).toBe('lots V-1 and V-2 of vale')
    expect(alike('vale/V-1', 'vale/V-2', 'vale/V-3', 'vale/V-4')).toBe(
      'lots V-1, V-2, V-3 and one other of vale',
    )
    expect(alike(...Array.from({ length: 8 }, (_, place) => `vale/V-${place + 1}`))).toBe(
      'lots V-1, V-2, V-3 and 5 others of vale',
    )
  })
  it('stand with their sources where these differ, and one not published is not named', () => {
    expect(alike('fell/F-1', 'vale/V-1', null)).toBe(
      'lot F-1 of fell, lot V-1 of vale and a lot not yet issued',
    )
    expect(alike('fell/F-1', 'vale/V-1', null, 'vale/V-2')).toBe(
      'lot F-1 of fell, lot V-1 of vale, a lot not yet issued and 1 more',
    )
  })
  it('print masses in the units of the site', () => {
    const day = { bill: 'B1', date: '2026-03-05' }
    const shipped = { count: 1, tonnes: 25, first: day, last: day }
    const reason: Finding['reason'] = {
      code: 'shipped-without-certificate',
      params: { lot, shipped, issued: null },
    }
    const finding = { id: 'x', severity: 'warning', about: lot, reason } as const
    // 25 / 0.90718474 is 27.6.
    expect(wordedFinding(finding, { ...PLAIN_NAMES, units: 'US' }).sentence).toBe(
      '1 shipment (27.6 short tons) of lot V-1 of vale left without a certificate',
    )
  })
})
