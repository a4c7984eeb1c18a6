import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { periodEstimatesBeyond } from '../../../src/core/checks/period-estimate-beyond.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

/** 79, 80 and 81 %: mean 80, standard deviation 1, factor 6.155 for three at 90 % and 95 %, so 73.845 %. */
const lot = (id: string, outcome: string, written: string, value = 73.845) => {
  const figure = (one: number) => ({ value: one, decimals: 1, unit: '%' })
  const params = { n: 3, mean: figure(80), standardDeviation: figure(1), factor: 6.155 }
  const clause = {
    id: 'silica',
    outcome,
    property: 'SiO2',
    value,
    unit: '%',
    decimals: 2,
    limit: { operator: 'at-least', written: [written] },
    reasons: [
      { code: 'compared', params: {} },
      { code: 'estimate-of', params },
    ],
  }
  return { id, verdicts: [{ criterion: 'en', clauses: [clause] }] } as unknown as AuditedLot
}

describe('periodEstimatesBeyond', () => {
  it('asks about an estimate of 73.85 % where at least 73.9 % is required', () => {
    const { looked, findings } = periodEstimatesBeyond('vale', [lot('vale/1', 'does-not-meet', '73.9 %')])
    const worded = findings.map((finding) => wordedFinding(finding, PLAIN_NAMES))
    expect(looked).toBe(1)
    expect(worded).toMatchObject([
      {
        severity: 'warning',
        sentence:
          'The silicon dioxide of vale over the control period up to 1, estimated at 73.84 %, does not meet at least 73.9 %',
      },
    ])
    expect(worded[0]?.evidence[0]).toBe(
      'mean of 3 results 80.0 %, less 6.16 standard deviations of 1.0 points',
    )
  })

  it('asks by the newest estimate alone, and looks at no clause without one', () => {
    const [missed, met] = [lot('vale/1', 'does-not-meet', '73.9 %'), lot('vale/2', 'meets', '73.8 %')]
    expect(periodEstimatesBeyond('vale', [missed, met])).toMatchObject({ looked: 1, findings: [] })
    const without = { id: 'vale/1', verdicts: [{ criterion: 'en', clauses: [] }] } as unknown as AuditedLot
    expect(periodEstimatesBeyond('vale', [without])).toMatchObject({ looked: 0, findings: [] })
  })
})
