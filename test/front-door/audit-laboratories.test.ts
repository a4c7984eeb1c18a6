/** What is asked of the laboratories that a source uses: each planted defect is found by name, and what answers it is not. */
import { describe, expect, it } from 'vitest'
import { auditOf, sentencesOf } from './audit-front-door.ts'
import { mortar } from './front-door.ts'

const TESTED = {
  on: '2026-01-03',
  more: mortar('2026-01-05', ['{ age: 7 d, tested: 2026-01-12T09:00, mean: 24.0 MPa, of: 3 }']),
}

/** Control batches a week apart before that of the lot, with 7 d strengths in MPa. */
const before = (strengths: readonly number[], cement = 'PC-1') =>
  Object.fromEntries(
    strengths.map((strength, place) => {
      const cast = Date.parse('2025-10-01') + place * 7 * 86_400_000
      const day = (after: number) => new Date(cast + after * 86_400_000).toISOString().slice(0, 10)
      return [
        `controls/A${place}.yaml`,
        `condition: cool\nlaboratory: quay\ncement: { lot: ${cement} }\ncast: ${day(0)}T09:00\nstrength: [{ age: 7 d, tested: ${day(7)}T09:00, mean: ${strength.toFixed(1)} MPa, of: 3 }]\n`,
      ]
    }),
  )
// Their mean is 34.0 MPa, scattering by 2 %.
const USUAL = [33.5, 34.5, 33.4, 34.6, 34.0, 33.2, 34.8, 34.1, 33.9, 34.0]

describe('a control batch', () => {
  const off = (strengths: readonly number[]) =>
    auditOf({ lots: { L1: TESTED }, files: before(strengths) }).filter(
      ({ check }) => check === 'control-batch-off',
    )

  it('12 % off the batches before it is found by name', () => {
    // That of the lot has 30.0 MPa, 11.8 % below 34.0.
    const [found] = off(USUAL)
    expect([found?.id, found?.sentence]).toEqual([
      'control-batch-off/tuff/K1',
      'The 7 d compressive strength of control K1 (Quay) is 12 % below the mean of the 10 batches before it with cement PC-1',
    ])
    expect(found?.evidence[1]).toBe('it raises the indices of the lots of Trial tested beside it: L1')
  })

  it('is no question within 10 %, within the scatter of its laboratory, or after too few', () => {
    expect(off(USUAL.map((strength) => strength - 2))).toEqual([])
    expect(off(USUAL.map((strength, place) => strength + (place % 2 === 0 ? 5 : -5)))).toEqual([])
    expect(off(USUAL.slice(0, 4))).toEqual([])
  })
})

describe('a change of the control cement', () => {
  const second = `condition: cool
laboratory: quay
cement: { lot: PC-2 }
cast: 2026-01-20T09:00
strength: [{ age: 7 d, tested: 2026-01-27T09:00, mean: 31.0 MPa, of: 3 }]
`
  const later = {
    on: '2026-01-18',
    more: mortar('2026-01-20', ['{ age: 7 d, tested: 2026-01-27T09:00, mean: 24.0 MPa, of: 3 }']).replace(
      'K1',
      'K2',
    ),
  }
  const changes = (quay: string) =>
    sentencesOf('cement-unbridged', {
      lots: { L1: TESTED, L2: later },
      files: { 'controls/K2.yaml': second },
      quay,
    })

  it('is asked about until batches made side by side are on record', () => {
    expect(changes('')).toEqual([
      'Quay changed its control cement once while testing Trial, with no batches made side by side on record',
    ])
    expect(
      changes('cement-bridges: [{ from: PC-1, to: PC-2, pairs: [{ earlier: K1, later: K2 }] }]'),
    ).toEqual([])
  })
})

describe('proficiency rounds', () => {
  const rounds = (list: string) =>
    auditOf({ lots: { L1: {} }, quay: list === '' ? '' : `proficiency: [${list}]` })
  const round = (date: string, z: number, more = '') =>
    `{ round: R 1, date: ${date}, property: moisture, z: ${z}${more} }`
  const of = (check: string, list: string) =>
    rounds(list)
      .filter((finding) => finding.check === check)
      .map(({ severity, sentence }) => `${severity}: ${sentence}`)

  it('beyond 2 are open until they are closed', () => {
    expect(of('proficiency-open', round('2025-09-01', -2.4))).toEqual([
      'warning: Quay scored z = −2.4 for moisture content in R 1, beyond 2, and no closure is on record',
    ])
    expect(of('proficiency-open', round('2025-09-01', 2))).toEqual([])
    expect(of('proficiency-open', round('2025-09-01', 2.4, ', closed: 2025-10-01'))).toEqual([])
  })

  it('lapse after 12 months, and for information where none is on record', () => {
    expect(of('proficiency-lapsed', round('2025-03-10', 0.1))).toEqual([])
    expect(of('proficiency-lapsed', round('2025-03-09', 0.1))).toHaveLength(1)
    expect(of('proficiency-lapsed', '')[0] ?? '').toContain('information')
  })
})
