import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { type EvidenceLot, packSource, unpackSource } from '../../../src/core/evidence/source-evidence.ts'
import { index, plannedIndex, result } from '../judging/fixture.ts'

const head = {
  source: 's',
  asOf: readMoment('2026-04-01'),
  background: { kind: 'coal-fly-ash', requested: {}, repeatability: {} },
  restarts: [],
  unpublished: 0,
  conditions: { c311: '20 %, 23 °C' },
} as const
const lot = (id: string, results: EvidenceLot['results'], more: Partial<EvidenceLot> = {}): EvidenceLot => ({
  id,
  number: id,
  class: null,
  sampled: readMoment('2026-03-01'),
  from: readMoment('2026-02-27'),
  tonnes: 100,
  results,
  unmade: [],
  planned: [],
  ...more,
})
const there = (lots: readonly EvidenceLot[]) => packSource(head, lots)
const back = (lots: readonly EvidenceLot[]) => unpackSource(JSON.parse(JSON.stringify(there(lots))))

describe('packSource', () => {
  it('packSource shares one key among results of a kind, and leaves verification results out', () => {
    const file = there([
      lot('s/a', [result('density', 2.4), result('density', 2.5, { sample: 'D' })]),
      lot('s/b', [result('density', 2.6), result('density', 2.9, { role: 'verification' })]),
    ])
    expect(file.keys).toEqual([{ property: 'density', laboratory: 'lab', sampleKind: 'composite' }])
    expect(file.lots.map(({ results }) => results)).toEqual([
      [
        [0, 'C', 2.4, '2026-03-10'],
        [0, 'D', 2.5, '2026-03-10'],
      ],
      [[0, 'C', 2.6, '2026-03-10']],
    ])
  })
})

describe('unpackSource', () => {
  it('unpackSource gives back what was packed, with what is out of the ordinary', () => {
    const own = [
      index('28 d', 80, { controlValue: 30 }),
      result('chloride', 0.01, { censored: 'below' }),
      result('density', 2.4, { valid: false }),
    ]
    const [found] = back([lot('s/a', own, { planned: [plannedIndex('28 d')] })]).lots
    expect(found?.results.map(({ working: _, ...rest }) => rest)).toEqual(
      own.map(({ working: _, ...rest }) => rest),
    )
    expect(found?.planned).toEqual([plannedIndex('28 d')])
  })

  it('unpackSource names conditions, by their ids where the file has none', () => {
    const { conditionTitle } = back([])
    expect(['c311', 'other', 'toString'].map(conditionTitle)).toEqual(['20 %, 23 °C', 'other', 'toString'])
  })

  it('unpackSource refuses a place that holds no lot, and a result without a key', () => {
    expect(() => back([]).evidenceOf(0)).toThrow(RangeError)
    const { keys: _, ...file } = there([lot('s/a', [result('density', 2.4)])])
    expect(() => unpackSource({ ...file, keys: [] })).toThrow(RangeError)
  })
})
