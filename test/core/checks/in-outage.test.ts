import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { sampledInOutage } from '../../../src/core/checks/in-outage.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const period = (from: string, to: string) => ({ from: readMoment(from), to: readMoment(to) })
const OUTAGE = { date: readMoment('2026-03-05'), to: readMoment('2026-03-20'), title: 'unit 2' }

function lot(produced: ReturnType<typeof period>, grab: string, kind = 'grab'): AuditedLot {
  const samples = [{ id: 'G', kind, on: readMoment(grab) }]
  return { id: 'vale/A', record: { produced, samples } } as unknown as AuditedLot
}

const sentences = (...lots: readonly AuditedLot[]) =>
  sampledInOutage(lots, [OUTAGE]).findings.map((finding) =>
    wordedFinding(finding, PLAIN_NAMES).sentence.replaceAll(/\s/g, ' '),
  )

describe('sampledInOutage', () => {
  it('asks where all of the production, or of a sample, lies within it, first and last day included', () => {
    expect(sentences(lot(period('2026-03-05', '2026-03-20'), '2026-03-21'))).toEqual([
      'All of lot A of vale was produced within an outage, 5 to 20 March 2026 (unit 2)',
    ])
    expect(sentences(lot(period('2026-03-01', '2026-03-08'), '2026-03-05'))).toEqual([
      'A sample of lot A of vale was taken within an outage, 5 to 20 March 2026 (unit 2)',
    ])
  })
  it('asks nothing of a lot that reaches beyond it, nor for the agency’s sample, nor without an outage', () => {
    expect(sentences(lot(period('2026-03-04', '2026-03-20'), '2026-03-04'))).toEqual([])
    expect(sentences(lot(period('2026-03-01', '2026-03-08'), '2026-03-06', 'independent'))).toEqual([])
    expect(sampledInOutage([lot(period('2026-03-01', '2026-03-08'), '2026-03-06')], []).looked).toBe(0)
  })
})
