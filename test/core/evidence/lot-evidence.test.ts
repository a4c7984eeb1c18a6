import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import {
  lotEvidence,
  type LotBackground,
  type SourceBackground,
} from '../../../src/core/evidence/lot-evidence.ts'
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

function evidence(place: number, more: Partial<LotBackground> = {}, asOf = '2026-03-01') {
  const own = { ...(lots[place] as LotBackground), ...more }
  return lotEvidence(
    source,
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

  it('lotEvidence takes the uncertainty that the laboratory states', () => {
    expect(evidence(1).uncertaintyOf?.(index('28 d', 80))).toEqual({
      u: 2,
      basis: { code: 'stated', params: { basis: '24 batches' } },
    })
    expect(evidence(1).uncertaintyOf?.(index('28 d', 80, { laboratory: 'other' }))).toBeUndefined()
  })
})
