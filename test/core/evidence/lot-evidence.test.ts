import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import {
  lotEvidence,
  type LotBackground,
  type SourceBackground,
} from '../../../src/core/evidence/lot-evidence.ts'
import type { PooledStep } from '../../../src/core/doubt/pooled-repeatability.ts'
import { buildHistory } from '../../../src/core/history/history.ts'
import { index, result } from '../judging/fixture.ts'

const source: SourceBackground = {
  kind: 'coal-fly-ash',
  facts: { use: 'road', fuel: 'coal-only' },
  documents: [{ kind: 'letter', title: 'of the source' }],
  events: [
    { date: readMoment('2026-03-01'), kind: 'process-change', title: 'New mill' },
    { date: readMoment('2026-03-02'), kind: 'process-change', title: 'New silo' },
  ],
  classUnder: { base: 'F', other: 'N' },
  requested: {},
  repeatability: {
    lab: [
      {
        property: 'strength-activity-index',
        'standard-deviation': '2 percentage points',
        from: readMoment('2026-01-01'),
        basis: '24 batches',
      },
    ],
  },
}
const lot = (id: string, sampled: string, value: number): LotBackground => ({
  id,
  sampled: readMoment(sampled),
  class: 'F',
  from: readMoment(sampled),
  tonnes: 100,
  results: [result('density', value)],
})
const lots = [lot('s/a', '2026-01-01', 2.1), lot('s/b', '2026-02-10', 2.2), lot('s/c', '2026-03-11', 2.3)]

function evidence(
  place: number,
  more: Partial<LotBackground> = {},
  asOf = '2026-03-01',
  background: SourceBackground = source,
) {
  const own = { ...(lots[place] as LotBackground), ...more }
  return lotEvidence(
    background,
    buildHistory(lots, []),
    own,
    { results: own.results, unmade: [], planned: [] },
    readMoment(asOf),
  )
}

describe('lotEvidence', () => {
  it('lotEvidence lets the lot’s own facts and classes go before the source’s, and gathers the documents of both', () => {
    const own = {
      facts: { use: 'roof' },
      classUnder: { base: 'C' },
      documents: [{ kind: 'letter', title: 'own' }],
    }
    const { facts, classUnder, documents } = evidence(1, own)
    expect([facts, classUnder, documents?.map(({ title }) => title)]).toEqual([
      { use: 'roof', fuel: 'coal-only' },
      { base: 'C', other: 'N' },
      ['of the source', 'own'],
    ])
  })

  it('lotEvidence knows only events by the date, that day included', () => {
    expect(evidence(1).events?.map(({ title }) => title)).toEqual(['New mill'])
  })

  it('lotEvidence judges by the producer’s results alone', () => {
    const results = [result('density', 2.2), result('density', 2.9, { role: 'verification' })]
    expect(evidence(1, { results }).results.map(({ value }) => value)).toEqual([2.2])
  })

  it('lotEvidence looks back from the lot, and counts its days from the source’s first one', () => {
    const { preceding, recordDays } = evidence(2, {}, '2026-04-01')
    expect(preceding('density', undefined, undefined, undefined, 10).map(({ value }) => value)).toEqual([
      2.1, 2.2,
    ])
    // January 31 and February 28 days, and ten more.
    expect(recordDays).toBe(69)
  })

  it('lotEvidence looks over a period, and at the sampling since the test before', () => {
    const { period, coverage } = evidence(2, {}, '2026-04-01')
    const values = (days: number) =>
      period?.('density', undefined, undefined, undefined, days).map(({ value }) => value)
    // From 11 March 29 days reach back to 10 February, 28 do not.
    expect([values(69), values(29), values(28)]).toEqual([[2.1, 2.2], [2.2], []])
    expect(coverage?.('density', undefined)).toMatchObject({ tests: 1, since: 's/b' })
    expect(coverage?.('SO3', undefined)).toMatchObject({ tests: 0 })
  })

  it('lotEvidence takes the uncertainty that the laboratory states', () => {
    expect(evidence(1).uncertaintyOf?.(index('28 d', 80))).toEqual({
      u: 2,
      basis: { code: 'stated', params: { basis: '24 batches' } },
    })
    expect(evidence(1).uncertaintyOf?.(index('28 d', 80, { laboratory: 'other' }))).toBeUndefined()
  })

  it('lotEvidence of a source of which nothing more is known holds no document, approval or event', () => {
    const bare = evidence(1, {}, '2026-03-01', {
      kind: 'coal-fly-ash',
      requested: { trial: ['c'] },
      repeatability: {},
    })
    expect(bare).toMatchObject({ documents: [], approvals: [], events: [], requested: { trial: ['c'] } })
    expect(bare).not.toHaveProperty('declared')
  })

  it('lotEvidence hands on what the source declares and who approved it', () => {
    const approvals = [{ from: readMoment('2026-01-01'), by: 'the agency', scope: 'paving' }]
    const declared = { density: '2.3 g/cm3' }
    expect(evidence(1, {}, '2026-03-01', { ...source, approvals, declared })).toMatchObject({
      approvals,
      declared,
    })
  })

  it('lotEvidence of a lot without a history has no record of days', () => {
    const known = { results: [], unmade: [], planned: [] }
    const own = lots[0] as LotBackground
    expect(lotEvidence(source, buildHistory([], []), own, known, readMoment('2026-03-01')).recordDays).toBe(0)
  })

  it('lotEvidence takes pooled scatter where none is stated: of repeated lots, else of control batches', () => {
    const key = 'strength-activity-index|c311|672'
    const direct: Readonly<Record<string, readonly PooledStep[]>> = {
      [`${key}|repeated`]: [[readMoment('2026-01-05'), 2, 5]],
    }
    const control: Readonly<Record<string, readonly PooledStep[]>> = {
      [key]: [[readMoment('2026-01-05'), 3, 9]],
    }
    const u = (series: Readonly<Record<string, readonly PooledStep[]>>) =>
      evidence(1, {}, '2026-03-01', {
        ...source,
        repeatability: {},
        pooled: { lab: series },
      }).uncertaintyOf?.(index('28 d', 80))?.u
    // 2 % of 80 is 1.6; 3 % of the control makes √2 × 3 % of 80.
    expect([u({ ...control, ...direct }), u({})]).toEqual([1.6, undefined])
    expect(u(control)).toBeCloseTo(2.4 * Math.SQRT2, 12)
  })
})
