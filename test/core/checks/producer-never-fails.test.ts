import { describe, expect, it } from 'vitest'
import type { Pair } from '../../../src/core/agency/pairs.ts'
import type { Side } from '../../../src/core/agency/sides.ts'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { producerNeverFails } from '../../../src/core/checks/producer-never-fails.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const LIMIT = { operator: 'at-least', written: ['75 %'] } as const

const pair = (agency: Side) =>
  ({
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    sides: [{ clause: 'activity', limit: LIMIT, producer: 'meets', agency }],
  }) as unknown as Pair

const lots = (met: number, failed = 0) =>
  Array.from({ length: met + failed }, (_, place) => {
    const outcome = place < met ? 'meets' : 'does-not-meet'
    return { verdicts: [{ clauses: [{ id: 'activity', outcome }] }] } as unknown as AuditedLot
  })

const pairs = (met: number, failed: number) => [
  ...Array.from({ length: met }, () => pair('meets')),
  ...Array.from({ length: failed }, () => pair('would-not-meet')),
]

describe('producerNeverFails', () => {
  it('asks where 3 of 7 of the agency’s fail and none of 31 lots: 0.41 % by chance', () => {
    const [finding] = producerNeverFails('vale', lots(31), pairs(4, 3)).findings
    // scipy.stats.hypergeom.pmf(3, 38, 7, 3) of scipy 1.17.1.
    expect(finding?.reason.params).toMatchObject({ probability: expect.closeTo(0.004148885727833096, 12) })
    const worded = finding && wordedFinding(finding, PLAIN_NAMES)
    expect([worded?.severity, worded?.sentence]).toEqual([
      'information',
      '3 of the agency’s 7 results for 28 d strength activity index (c311) of vale would not meet the limit of at least 75 %, while all 31 lots that the producer reports meet it',
    ])
  })
  it('asks nothing where chance explains it, where the producer’s fail too, or where neither does', () => {
    // 1 of 7 against 31: 7 of 38, 18 %.
    expect(producerNeverFails('vale', lots(31), pairs(6, 1)).findings).toEqual([])
    expect(producerNeverFails('vale', lots(31, 1), pairs(4, 3)).findings).toEqual([])
    expect(producerNeverFails('vale', lots(31), pairs(7, 0))).toMatchObject({ looked: 1, findings: [] })
  })
})
