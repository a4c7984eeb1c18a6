import { describe, expect, it } from 'vitest'
import type { LotBackground, SourceBackground } from '../../../src/core/evidence/lot-evidence.ts'
import {
  readAgeIfAny,
  readBackground,
  readLot,
  readPlanned,
  readUnmade,
} from '../../../src/core/evidence/read-evidence.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { UnmadeResult } from '../../../src/core/result/result.ts'
import { plannedIndex } from '../judging/fixture.ts'

const stored = (made: unknown) => JSON.parse(JSON.stringify(made))
const [first, last] = [readMoment('2026-01-05'), readMoment('2026-06-30')]

/** A source with a moment or an age wherever one can stand, and entries that leave out what they may. */
const source: SourceBackground = {
  kind: 'coal-fly-ash',
  documents: [
    { kind: 'letter', title: 'Letter 7', from: first, to: last },
    { kind: 'map', title: 'Map' },
  ],
  approvals: [
    { from: first, to: last, by: 'the agency', scope: 'paving' },
    { from: first, by: 'the owner', scope: 'all' },
  ],
  events: [{ date: first, kind: 'outage', title: 'New mill' }],
  requested: { trial: ['c'] },
  repeatability: {
    lab: [
      { property: 'density', age: readAge('28 d'), from: first, to: last, basis: '24 batches' },
      { property: 'SO3', from: first, basis: '12 batches' },
    ],
  },
  pooled: { lab: { 'density||': [[first, 2.5, 7]] } },
}

describe('readBackground', () => {
  it('readBackground gives back what was stored, each text read', () => {
    expect(readBackground(stored(source))).toStrictEqual(source)
  })

  it('readBackground leaves out what the source does not have', () => {
    const bare: SourceBackground = { kind: 'coal-fly-ash', requested: {}, repeatability: {} }
    expect(readBackground(stored(bare))).toStrictEqual(bare)
  })

  it('readBackground refuses a text that is no date', () => {
    const faulty = { ...stored(source), events: [{ date: '5 January', kind: 'outage', title: 'New mill' }] }
    expect(() => readBackground(faulty)).toThrow(RangeError)
  })
})

describe('readLot, readUnmade and readPlanned', () => {
  it('readLot gives back a lot with its documents and withdrawal, and one without', () => {
    const lot: Omit<LotBackground, 'results'> = {
      id: 's/a',
      class: 'F',
      sampled: first,
      from: first,
      tonnes: 100,
    }
    const withdrawn = {
      ...lot,
      withdrawn: last,
      documents: [{ kind: 'letter', title: 'Letter 7', from: first }],
    }
    expect([readLot(stored(lot)), readLot(stored(withdrawn))]).toStrictEqual([lot, withdrawn])
  })

  it('readUnmade and readPlanned give back a test, overdue or not', () => {
    const unmade: UnmadeResult = {
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      laboratory: 'lab',
      sample: 'C',
      sampleKind: 'grab',
      tested: first,
      begun: readMoment('2026-01-02T09:00'),
      reasons: [],
    }
    const [planned, overdue] = [plannedIndex('28 d'), plannedIndex('7 d', { overdueSince: last })]
    expect(readUnmade(stored(unmade))).toStrictEqual(unmade)
    expect([readPlanned(stored(planned)), readPlanned(stored(overdue))]).toStrictEqual([planned, overdue])
  })

  it('readAgeIfAny of nothing is nothing', () => {
    expect([readAgeIfAny('28 d'), readAgeIfAny(undefined)]).toEqual([readAge('28 d'), undefined])
  })
})
