import { describe, expect, it } from 'vitest'
import { balanceKept, type KeptBalance } from '../../../src/core/checks/balance-kept.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

function row(month: string, difference: number | null, diverted = 0, divertedOnRecord = 0) {
  const masses = { produced: 1000, certified: 0, diverted, divertedOnRecord, rejected: 0, stockChange: 0 }
  return { month, ...masses, difference }
}

const KEPT: KeptBalance = { source: 'vale', rows: [], ledger: 'kept', shippedT: 900, certifiedT: 1000 }

const found = (of: Partial<KeptBalance>) =>
  balanceKept({ ...KEPT, ...of })
    .flatMap(({ findings }) => findings)
    .map((finding) => wordedFinding(finding, PLAIN_NAMES))

describe('balanceKept', () => {
  it('asks about months that are off by more than 5 % of what was produced, and says which way', () => {
    const rows = [row('2026-01', 50), row('2026-02', -51), row('2026-03', null)]
    expect(found({ rows })).toMatchObject([
      {
        id: 'balance-off/vale',
        sentence:
          'The material balance of vale is off by more than 5 % of what was produced in 1 of 2 months',
        evidence: [
          'February 2026: 51 t more accounted for than produced; 1000 t produced',
          'over all months: 1 t more accounted for than produced',
          expect.any(String),
        ],
      },
    ])
    expect(found({ rows: [row('2026-01', 50)] })).toEqual([])
  })
  it('asks where balance and ledger tell of other diversions, unless no ledger is kept', () => {
    const rows = [row('2026-01', 0, 300, 120), row('2026-02', 0, 80, 80.5)]
    expect(found({ rows })).toMatchObject([
      {
        id: 'diversion-apart/vale',
        evidence: ['January 2026: 300 t diverted in the balance, 120 t in the ledger'],
      },
    ])
    expect(found({ rows, ledger: 'not-kept' })).toEqual([])
  })
  it('asks where more was shipped than was certified, beyond what scales explain', () => {
    expect(found({ shippedT: 1011 }).map(({ sentence }) => sentence)).toEqual([
      'More of vale was shipped, 1011 t, than its certified lots hold, 1000 t',
    ])
    expect(found({ shippedT: 1009 })).toEqual([])
  })
})
