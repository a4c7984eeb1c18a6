import { describe, expect, it } from 'vitest'
import { pairsOfLot } from '../../../src/core/agency/pairs.ts'
import { precisionRow } from '../../../src/core/agency/precision.ts'
import { sourceAgency } from '../../../src/core/agency/source-agency.ts'
import { agencyLotFindings, agencySourceFindings } from '../../../src/core/checks/agency-differs.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'
import { agencys, lotOf } from '../agency/fixture.ts'
import { result } from '../judging/fixture.ts'

const ROWS = [
  precisionRow({
    property: 'loss-on-ignition',
    laboratories: 'several',
    'standard-deviation': '0.20 percentage points',
    source: 'round robin of 2022',
  }),
].flatMap((row) => row ?? [])

function of(lots: readonly ReturnType<typeof lotOf>[]) {
  const found = sourceAgency({ asOf: readMoment('2026-06-30'), lots, samples: [], plan: [], precision: ROWS })
  return agencySourceFindings('ash', found).map((finding) => wordedFinding(finding, PLAIN_NAMES))
}

const split = (place: number, difference: number) =>
  lotOf(place, [result('loss-on-ignition', 2), agencys('loss-on-ignition', 2 + difference)])
const own = (place: number, producer: number, agency: number | null) =>
  lotOf(place, [
    result('loss-on-ignition', producer),
    ...(agency === null
      ? []
      : [agencys('loss-on-ignition', agency, { sample: 'I', sampleKind: 'independent' })]),
  ])

describe('agencyLotFindings', () => {
  it('agencyLotFindings asks about a difference beyond its limit, as information', () => {
    const lot = lotOf(1, [result('loss-on-ignition', 2), agencys('loss-on-ignition', 2.6)])
    const found = agencyLotFindings(lot.id, pairsOfLot(lot, ROWS)).map((finding) =>
      wordedFinding(finding, PLAIN_NAMES),
    )
    expect(found).toMatchObject([{ severity: 'information', check: 'split-beyond-limit', about: 'ash/1' }])
    expect(found[0]?.sentence.replaceAll(/\s/g, ' ')).toBe(
      'The agency’s loss on ignition of split S of lot 1 of ash is 0.60 points above the producer’s; two laboratories differ by more than 0.57 points in about one pair of twenty',
    )
    expect(found[0]?.evidence).toContain('limit of the difference from: round robin of 2022')
  })

  it('agencyLotFindings says nothing of a difference within it, or without one on record', () => {
    const within = lotOf(1, [result('loss-on-ignition', 2), agencys('loss-on-ignition', 2.5)])
    expect(agencyLotFindings(within.id, pairsOfLot(within, ROWS))).toEqual([])
    const unknown = lotOf(1, [result('SO3', 1), agencys('SO3', 3)])
    expect(agencyLotFindings(unknown.id, pairsOfLot(unknown, ROWS))).toEqual([])
  })
})

describe('agencySourceFindings', () => {
  it('agencySourceFindings asks about five differences in one direction, and not about four', () => {
    const splits = [0.5, 0.52, 0.55, 0.58, 0.6].map((difference, place) => split(place, difference))
    expect(of(splits)).toMatchObject([{ id: 'split-bias/ash/loss-on-ignition/F', severity: 'warning' }])
    expect(of(splits.slice(1))).toEqual([])
  })

  it('agencySourceFindings says nothing of differences about zero', () => {
    expect(of([-0.3, 0.2, -0.1, 0.3, -0.2].map((difference, place) => split(place, difference)))).toEqual([])
  })

  it('agencySourceFindings asks about independent samples whose mean differs at 1 %', () => {
    const lots = [2.0, 2.1, 2.2, 2.3].map((value, place) => own(place, value, value + 1))
    const [found, ...others] = of(lots)
    expect(others).toEqual([])
    expect(found?.check).toBe('independent-differs')
    expect(found?.sentence).toBe(
      'The agency’s 4 independent samples of ash and the producer’s 4 lots of the same period differ in their means at the 1 % level: loss on ignition',
    )
  })

  it('agencySourceFindings asks about scatter that differs, and about nothing where both agree', () => {
    const apart = [-30, 25, -20, 30, -5].map((value, place) => own(place, 50 + value / 100, 50 + value))
    expect(of(apart).map(({ sentence }) => sentence)).toEqual([
      'The agency’s 5 independent samples of ash and the producer’s 5 lots of the same period differ in scatter at the 1 % level: loss on ignition',
    ])
    expect(of([2, 2.2, 2.1, 2.3].map((value, place) => own(place, value, value + 0.02)))).toEqual([])
  })
})
