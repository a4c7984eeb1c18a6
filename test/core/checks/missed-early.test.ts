import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { shippedOnMissedAge } from '../../../src/core/checks/missed-early.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const result = (age: string, tested: string) => ({
  key: age,
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge(age),
  role: 'producer',
  valid: true,
  value: 74,
  decimals: 1,
  unit: '%',
  tested: readMoment(tested),
})

interface Ages {
  readonly early?: string
  readonly later?: string
  readonly combine?: string
}

/** 7 d known on 8 March, 28 d on 29 March where it is known; shipped on the day. */
function lot(
  day: string,
  { early = 'does-not-meet', later = 'meets', combine = 'any-of' }: Ages = {},
): AuditedLot {
  const isKnown = later !== 'pending'
  const clauses = [
    { id: 'a7', outcome: early, result: '7 d' },
    { id: 'a28', outcome: later, result: isKnown ? '28 d' : null },
  ]
  return {
    id: 'vale/A',
    verdicts: [{ clauses: [{ id: 'activity', outcome: later, result: null, combine, clauses }] }],
    results: [result('7 d', '2026-03-08'), ...(isKnown ? [result('28 d', '2026-03-29')] : [])],
    shipments: [{ bill: 'B1', date: readMoment(day), massT: 25 }],
  } as unknown as AuditedLot
}

const sentences = (...of: Parameters<typeof lot>) =>
  shippedOnMissedAge(lot(...of)).flatMap(({ findings }) =>
    findings.map((finding) => wordedFinding(finding, PLAIN_NAMES).sentence),
  )

describe('shippedOnMissedAge', () => {
  it('tells of a truck that left after 7 d had missed and before 28 d was known', () => {
    const said =
      '1 shipment (25.0 t) of lot A of vale left when its 7 d strength activity index (c311), 74.0 %, had missed the limit and none at a later age was known'
    expect(sentences('2026-03-09')).toEqual([said])
    expect(sentences('2026-04-20', { later: 'pending' })).toEqual([said])
  })
  it('tells nothing of the days on which either was known, nor of one that left outside them', () => {
    for (const day of ['2026-03-07', '2026-03-08', '2026-03-29', '2026-03-30'])
      expect(sentences(day)).toEqual([])
  })
  it('tells nothing where the early age met, nor where both ages are required', () => {
    expect(sentences('2026-03-09', { early: 'meets' })).toEqual([])
    expect(sentences('2026-03-09', { combine: 'all-of' })).toEqual([])
  })
})
