import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { type EvidenceLot, packSource, unpackSource } from '../../../src/core/evidence/source-evidence.ts'
import type { UnmadeResult } from '../../../src/core/result/result.ts'
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
  state: 'complete',
  class: null,
  sampled: readMoment('2026-03-01'),
  from: readMoment('2026-02-27'),
  tonnes: 100,
  results,
  unmade: [],
  planned: [],
  ...more,
})
const unmade: UnmadeResult = {
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  laboratory: 'lab',
  sample: 'C',
  sampleKind: 'composite',
  tested: readMoment('2026-03-10'),
  begun: readMoment('2026-02-10'),
  reasons: [],
}
const there = (lots: readonly EvidenceLot[]) => packSource(head, lots)
const back = (lots: readonly EvidenceLot[]) => unpackSource(JSON.parse(JSON.stringify(there(lots))))

describe('packSource', () => {
  it('packSource shares one key among results of a kind, and leaves verification results out', () => {
    const file = there([
      lot('s/a', [result('density', 2.4), result('density', 2.5, { sample: 'D' })]),
      lot('s/b', [result('density', 2.6), result('density', 2.9, { role: 'verification' })]),
    ])
    expect(file.keys).toStrictEqual([{ property: 'density', laboratory: 'lab', sampleKind: 'composite' }])
    expect(Object.keys(file.lots[0] ?? {})).not.toContain('unmade')
    expect(Object.keys(file.lots[0] ?? {})).not.toContain('planned')
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
    const [found, plain] = back([
      lot('s/a', own, { planned: [plannedIndex('28 d')], unmade: [unmade] }),
      lot('s/b', []),
    ]).lots
    expect(found?.results.map(({ working: _, ...rest }) => rest)).toEqual(
      own.map(({ working: _, ...rest }) => rest),
    )
    expect([found?.planned, found?.unmade]).toEqual([[plannedIndex('28 d')], [unmade]])
    expect([plain?.planned, plain?.unmade, found?.results[0]?.working()]).toEqual([[], [], []])
  })

  it('unpackSource keeps the method of a result, and why one is not valid', () => {
    const reasons = [
      { code: 'temperature-outside', params: { readCelsius: 50, askedCelsius: 23, withinCelsius: 2 } },
    ] as const
    const own = [
      result('residue-45um', 20, { method: 'ASTM C430' }),
      result('residue-45um', 21, { method: 'laser', valid: false, reasons }),
    ]
    const [found] = back([lot('s/a', own)]).lots
    expect(found?.results.map(({ method, valid, reasons: why }) => [method, valid, why])).toEqual([
      ['ASTM C430', true, []],
      ['laser', false, reasons],
    ])
  })

  it('unpackSource tells what was known of a lot, its history included', () => {
    const { evidenceOf } = back([
      lot('s/a', [result('density', 2.3)], { sampled: readMoment('2026-02-01') }),
      lot('s/b', [result('density', 2.4)], { class: null }),
    ])
    const found = evidenceOf(1)
    expect([found.asOf.text, found.results.map(({ value }) => value)]).toEqual(['2026-04-01', [2.4]])
    expect(found.preceding('density', undefined, undefined, undefined, 10).map(({ value }) => value)).toEqual(
      [2.3],
    )
  })

  it('unpackSource names conditions, by their ids where the file has none', () => {
    const { conditionTitle } = back([])
    expect(['c311', 'other', 'toString'].map(conditionTitle)).toEqual(['20 %, 23 °C', 'other', 'toString'])
  })

  it('unpackSource refuses a place that holds no lot, and a result without a key', () => {
    expect(() => back([]).evidenceOf(0)).toThrow(
      new RangeError('evidenceOf needs a place among 0 lots, got 0'),
    )
    const { keys: _, ...file } = there([lot('s/a', [result('density', 2.4)])])
    expect(() => unpackSource({ ...file, keys: [] })).toThrow(
      new RangeError('unpackResult needs a place among 0 keys, got 0'),
    )
  })
})
