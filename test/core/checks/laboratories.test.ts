import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { laboratoryChecks, type SourceControls } from '../../../src/core/checks/laboratories.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'

const control = (id: string, cement: string, cast: string) => ({
  id,
  results: [],
  record: { laboratory: 'quay', condition: 'c311', cast: readMoment(cast), cement: { lot: cement } },
})

/** Two lots tested at the quay beside control batches of two cements. */
function checksWith(records: SourceControls['records']): string[] {
  const lots = ['K1', 'K2'].map((batch, place) => ({
    id: `vale/${place}`,
    results: [{ role: 'producer', laboratory: 'quay', tested: readMoment('2026-03-08'), control: batch }],
  })) as unknown as AuditedLot[]
  const controls = new Map([
    ['K1', control('K1', 'MC-1', '2026-02-01')],
    ['K2', control('K2', 'MC-2', '2026-03-01')],
  ])
  const of = { source: 'vale', lots, controls, standings: new Map(), records }
  return laboratoryChecks(of, readMoment('2026-04-10')).flatMap(({ findings }) =>
    findings.map(({ id }) => id),
  )
}

describe('laboratoryChecks', () => {
  it('asks for rounds and for bridged cements where the record of the laboratory has none', () => {
    expect(checksWith(new Map([['quay', { proficiency: [], bridges: [] }]]))).toEqual([
      'cement-unbridged/vale/quay',
      'proficiency-lapsed/vale/quay',
    ])
  })
  it('asks for nothing of a laboratory whose record could not be read', () => {
    expect(checksWith(new Map())).toEqual([])
  })
})
