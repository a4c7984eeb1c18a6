import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/result/result.ts'
import {
  buildHistory,
  bySampling,
  type HistoryLot,
  historyKey,
  precedingResults,
  resultsWithin,
} from '../../../src/core/history/history.ts'
import { coverageOf } from '../../../src/core/history/sampling-coverage.ts'
import { representative } from '../../../src/core/history/representative.ts'

function result(value: number, more: Partial<Result> = {}): Result {
  return {
    key: 'density||||north|C',
    property: 'density',
    laboratory: 'north',
    sample: 'C',
    sampleKind: 'composite',
    role: 'producer',
    value,
    unit: 'g/cm3',
    decimals: 2,
    n: 1,
    tested: readMoment('2026-01-05'),
    valid: true,
    reasons: [],
    working: () => [],
    ...more,
  }
}

function lot(
  id: string,
  sampled: string,
  results: readonly Result[],
  more: Partial<HistoryLot> = {},
): HistoryLot {
  return {
    id,
    sampled: readMoment(sampled),
    class: 'N',
    results,
    tonnes: 100,
    from: readMoment(sampled),
    ...more,
  }
}

const KEY = historyKey('N', 'density')

describe('precedingResults', () => {
  const lots = [1, 2, 3, 4].map((day) => lot(`S/L${day}`, `2026-01-0${day}`, [result(2 + day / 10)]))

  it('gives the most recent results before the lot, oldest first, without the lot itself', () => {
    expect(
      precedingResults(buildHistory(lots, []), KEY, 'S/L4', readMoment('2026-02-01'), 2).map(
        (entry) => entry.value,
      ),
    ).toEqual([2.2, 2.3])
  })
  it('gives nothing for the first lot', () => {
    expect(precedingResults(buildHistory(lots, []), KEY, 'S/L1', readMoment('2026-02-01'), 10)).toEqual([])
  })
  it('leaves out what was obtained after the as-of date', () => {
    const late = lots.map((entry, index) =>
      index === 2 ? { ...entry, results: [result(9, { tested: readMoment('2026-03-01') })] } : entry,
    )
    expect(
      precedingResults(buildHistory(late, []), KEY, 'S/L4', readMoment('2026-02-01'), 2).map(
        (entry) => entry.value,
      ),
    ).toEqual([2.1, 2.2])
  })
  it('leaves out results that are not valid and lots withdrawn by the as-of date, and keeps lots withdrawn later', () => {
    const spoiled = [
      { ...lots[0], results: [result(5, { valid: false })] },
      { ...lots[1], withdrawn: readMoment('2026-01-20') },
      { ...lots[2], withdrawn: readMoment('2026-03-01') },
      lots[3],
    ] as HistoryLot[]
    expect(
      precedingResults(buildHistory(spoiled, []), KEY, 'S/L4', readMoment('2026-02-01'), 10).map(
        (entry) => entry.lot,
      ),
    ).toEqual(['S/L3'])
  })
  it('begins anew at an event that restarts the series', () => {
    expect(
      precedingResults(
        buildHistory(lots, [readMoment('2026-01-03')]),
        KEY,
        'S/L4',
        readMoment('2026-02-01'),
        10,
      ).map((entry) => entry.lot),
    ).toEqual(['S/L3'])
    expect(
      precedingResults(
        buildHistory(lots, [readMoment('2026-01-03')]),
        KEY,
        'S/L2',
        readMoment('2026-02-01'),
        10,
      ).map((entry) => entry.lot),
    ).toEqual(['S/L1'])
  })
  it('begins anew at the last of several restarts, given in any order, and at none after the last lot', () => {
    const past = buildHistory(lots, [
      readMoment('2026-01-03'),
      readMoment('2026-01-02'),
      readMoment('2026-12-01'),
    ])
    expect(
      precedingResults(past, KEY, 'S/L4', readMoment('2026-02-01'), 10).map((entry) => entry.lot),
    ).toEqual(['S/L3'])
  })
  it('begins anew with the very lot that was sampled on the day of the event', () => {
    expect(
      precedingResults(
        buildHistory(lots, [readMoment('2026-01-03')]),
        KEY,
        'S/L3',
        readMoment('2026-02-01'),
        10,
      ),
    ).toEqual([])
  })
  it('counts what was known and what was withdrawn on the very as-of date', () => {
    const edge = [
      { ...lots[0], withdrawn: readMoment('2026-02-01') },
      { ...lots[1], results: [result(2.2, { tested: readMoment('2026-02-01T09:00') })] },
      lots[2],
    ] as HistoryLot[]
    const found = precedingResults(buildHistory(edge, []), KEY, 'S/L3', readMoment('2026-02-01'), 10)
    expect(found).toStrictEqual([{ lot: 'S/L2', sampled: readMoment('2026-01-02'), value: 2.2 }])
  })
  it('counts a result known only as below something with its bounds, and leaves out verification', () => {
    const other = [
      lot('S/L1', '2026-01-01', [result(1, { censored: 'below' })]),
      lot('S/L2', '2026-01-02', [result(2, { role: 'verification' })]),
      lot('S/L3', '2026-01-03', []),
    ]
    expect(precedingResults(buildHistory(other, []), KEY, 'S/L3', readMoment('2026-02-01'), 10)).toEqual([
      {
        lot: 'S/L1',
        sampled: readMoment('2026-01-01'),
        value: 1,
        bounds: { low: null, high: 1, open: 'both' },
      },
    ])
  })
  it('tells how far apart the first two valid results of a lot are, by when they were tested', () => {
    const doubled = [
      lot('S/L1', '2026-01-01', [
        result(2.4, { valid: false }),
        result(2.5),
        result(1, { censored: 'below', tested: readMoment('2026-01-03') }),
        result(9, { sampleKind: 'grab', tested: readMoment('2026-01-07') }),
        result(2.25, { tested: readMoment('2026-01-06') }),
      ]),
      lot('S/L2', '2026-01-02', []),
    ]
    expect(precedingResults(buildHistory(doubled, []), KEY, 'S/L2', readMoment('2026-02-01'), 10)).toEqual([
      {
        lot: 'S/L1',
        sampled: readMoment('2026-01-01'),
        value: 2.25,
        duplicates: { first: 2.5, difference: 0.25 },
      },
    ])
  })
  it('gives nothing for a lot or a key that the history does not have', () => {
    const past = buildHistory(lots, [])
    expect(precedingResults(past, KEY, 'S/L9', readMoment('2026-02-01'), 10)).toEqual([])
    expect(precedingResults(past, historyKey('N', 'CaO'), 'S/L4', readMoment('2026-02-01'), 10)).toEqual([])
  })
  it('keeps classes apart', () => {
    const mixed = lots.map((entry, index) => (index < 2 ? { ...entry, class: 'F' } : entry))
    expect(
      precedingResults(buildHistory(mixed, []), KEY, 'S/L4', readMoment('2026-02-01'), 10).map(
        (entry) => entry.lot,
      ),
    ).toEqual(['S/L3'])
  })
})

describe('buildHistory', () => {
  it('finds the lot at which a series begins anew, in order, and none for an event after the last', () => {
    const lots = [lot('S/L1', '2026-01-01', []), lot('S/L2', '2026-01-05T08:00', [])]
    expect(
      buildHistory(lots, [readMoment('2026-01-06'), readMoment('2026-01-05'), readMoment('2025-12-01')])
        .restarts,
    ).toEqual([0, 1])
  })
  it('sums what was produced up to and with each lot', () => {
    const lots = [100, 50, 25].map((tonnes, day) => lot(`S/L${day}`, `2026-01-0${day + 1}`, [], { tonnes }))
    expect(buildHistory(lots, []).produced).toEqual([100, 150, 175])
  })
  it('leaves a verification before the producer’s own result out of the one number that stands for a lot', () => {
    const own = result(2.5)
    const past = buildHistory([lot('S/L1', '2026-01-01', [result(2, { role: 'verification' }), own])], [])
    expect(past.entries.get(KEY)).toMatchObject([
      { place: 0, standings: [{ from: readMoment('2026-01-05').day, result: { value: 2.5 } }] },
    ])
  })
})

describe('historyKey', () => {
  it('historyKey puts "72 h" and "3 d" into one series', () => {
    const key = (age: string) => historyKey('N', 'strength-activity-index', 'c311', readAge(age))
    expect(key('72 h')).toBe(key('3 d'))
    expect(key('72 h')).not.toBe(key('72 d'))
  })

  it('holds class, property, condition, age and method, each with its place kept where it is missing', () => {
    expect(historyKey('N', 'strength-activity-index', 'c311', readAge('28 d'), 'ASTM C311-22')).toBe(
      'N|strength-activity-index|c311|672|ASTM C311-22',
    )
    expect(historyKey(null, 'density', undefined, undefined, 'EN 1097-7')).toBe('|density|||EN 1097-7')
  })
})

describe('resultsWithin', () => {
  const lots = [1, 11, 21].map((day) =>
    lot(`S/L${day}`, `2026-01-${day < 10 ? '0' : ''}${day}`, [result(day)]),
  )
  const within = (days: number, id = 'S/L21') =>
    resultsWithin(buildHistory(lots, []), KEY, id, readMoment('2026-02-01'), days).map((entry) => entry.value)

  it('reaches back so many days from the lot’s sampling, the last of them included, oldest first', () => {
    expect([within(20), within(19), within(10), within(9)]).toEqual([[1, 11], [11], [11], []])
  })
  it('gives nothing for a lot that the history does not have', () => {
    expect(within(100, 'S/L9')).toEqual([])
  })
})

describe('coverageOf', () => {
  const on = (day: string, results: readonly Result[], more: Partial<HistoryLot> = {}) =>
    lot(`S/${day}`, `2026-01-${day}T08:00`, results, { from: readMoment(`2026-01-${day}T02:00`), ...more })
  const density = { property: 'density' }

  it('runs from the test before to the end of the lot’s sampling, with what was produced between', () => {
    const past = buildHistory([on('02', [result(2)]), on('05', []), on('12', [result(2)])], [])
    expect(coverageOf(past, 'S/12', readMoment('2026-02-01'), density)).toEqual({
      since: 'S/02',
      hours: 240,
      tonnes: 200,
      tests: 1,
    })
  })
  it('runs from the beginning of the first lot’s production where no test went before', () => {
    const past = buildHistory([on('02', []), on('05', [])], [])
    expect(coverageOf(past, 'S/05', readMoment('2026-02-01'), density)).toEqual({
      hours: 78,
      tonnes: 200,
      tests: 0,
    })
  })
  it('counts whole days where a clock time is missing', () => {
    const past = buildHistory(
      [on('02', [result(2)], { sampled: readMoment('2026-01-02') }), on('05', [])],
      [],
    )
    expect(coverageOf(past, 'S/05', readMoment('2026-02-01'), density)).toMatchObject({
      since: 'S/02',
      hours: 72,
    })
  })
  it('counts samples, not results: two results of one sample are one test, begun on the first day', () => {
    const twice = [
      result(2, { tested: readMoment('2026-01-20') }),
      result(2, { tested: readMoment('2026-01-15') }),
    ]
    const past = buildHistory(
      [on('12', [...twice, result(2, { sample: 'D', tested: readMoment('2026-01-30') })])],
      [],
    )
    expect(
      ['2026-01-14', '2026-01-15', '2026-01-30'].map(
        (asOf) => coverageOf(past, 'S/12', readMoment(asOf), density).tests,
      ),
    ).toEqual([0, 1, 2])
  })
  it('counts no verification, no other property and no other kind of sample', () => {
    const others = [
      result(2, { role: 'verification' }),
      result(2, { property: 'CaO' }),
      result(2, { sampleKind: 'grab', sample: 'G' }),
    ]
    const past = buildHistory([on('12', others)], [])
    const tests = (sample?: 'grab' | 'composite') =>
      coverageOf(past, 'S/12', readMoment('2026-02-01'), { ...density, sample }).tests
    expect([tests(), tests('grab'), tests('composite'), tests('grab')]).toEqual([1, 1, 0, 1])
  })
  it('passes over a lot before whose test was begun after the as-of date', () => {
    const late = [
      on('02', [result(2)]),
      on('05', [result(2, { tested: readMoment('2026-01-25') })]),
      on('12', []),
    ]
    const since = (asOf: string) =>
      coverageOf(buildHistory(late, []), 'S/12', readMoment(asOf), density).since
    expect([since('2026-01-24'), since('2026-01-25')]).toEqual(['S/02', 'S/05'])
  })
  it('takes the first day on which any sample of a lot was begun', () => {
    const two = [
      result(2, { tested: readMoment('2026-01-25') }),
      result(2, { sample: 'D', tested: readMoment('2026-01-15') }),
    ]
    const past = buildHistory([on('02', two), on('12', [])], [])
    expect(coverageOf(past, 'S/12', readMoment('2026-01-15'), density).since).toBe('S/02')
  })
  it('refuses a lot that the history does not have', () => {
    expect(() => coverageOf(buildHistory([], []), 'S/1', readMoment('2026-02-01'), density)).toThrow(
      'coverageOf needs a lot of this history, got S/1',
    )
  })
})

describe('coverageOf across offsets', () => {
  // In UTC the first is sampled at 15:30 and the second at 16:00 on 2 January; by their own clocks a day apart.
  const lots = [
    lot('S/1', '2026-01-03T00:30+09:00', [], { from: readMoment('2025-12-25'), tonnes: 70 }),
    lot('S/2', '2026-01-02T16:00Z', [], { from: readMoment('2026-01-01'), tonnes: 30 }),
  ]
  it('leaves out a lot that comes before by the clock and is of a later day than the question', () => {
    const on = (day: string) => {
      const { tonnes, hours } = coverageOf(buildHistory(lots, []), 'S/2', readMoment(day), {
        property: 'density',
      })
      return [tonnes, hours]
    }
    expect(on('2026-01-02')).toEqual([30, 24])
    expect(on('2026-01-03')).toEqual([100, 24 * 8])
  })
})

describe('representative', () => {
  it('takes a valid result before one that is not, a composite before a grab, then the latest', () => {
    const grab = result(1, { sampleKind: 'grab' })
    const early = result(2)
    const late = result(3, { tested: readMoment('2026-01-09') })
    expect(
      representative([grab, early, late, result(4, { valid: false, tested: readMoment('2026-02-01') })]),
    ).toBe(late)
    expect(representative([])).toBeUndefined()
  })
  it('takes a composite before a grab tested later, and of two alike the same one in any order', () => {
    const [composite, other] = [result(1), result(2)]
    const grab = result(3, { sampleKind: 'grab', tested: readMoment('2026-02-01') })
    expect(representative([composite, grab])).toBe(composite)
    expect(representative([grab, composite])).toBe(composite)
    expect(representative([composite, other])).toBe(composite)
    expect(representative([other, composite])).toBe(composite)
  })
})

describe('bySampling', () => {
  it('orders by sampling time, then by id in code units', () => {
    const ids = [
      ['b', '2026-01-02'],
      ['a', '2026-01-02'],
      ['B', '2026-01-02'],
      ['c', '2026-01-01'],
    ].map(([id = '', sampled = '1970-01-01']) => ({ id, sampled: readMoment(sampled) }))
    expect(ids.sort(bySampling).map((entry) => entry.id)).toEqual(['c', 'B', 'a', 'b'])
    expect(
      bySampling(
        { id: 'b', sampled: readMoment('2026-01-02') },
        { id: 'a', sampled: readMoment('2026-01-02') },
      ),
    ).toBe(1)
  })
})

describe('a question about the past', () => {
  const day = (text: string) => readMoment(text)
  const first = result(80, { tested: day('2026-03-08') })
  const retest = result(90, { tested: day('2026-03-20') })
  const replaced = { ...first, valid: false }
  const lots = [
    lot('S/L1', '2026-03-01', [replaced, retest], {
      observations: [
        { result: first, from: day('2026-03-08').day, until: day('2026-03-20').day },
        { result: replaced, from: day('2026-03-20').day },
        { result: retest, from: day('2026-03-20').day },
      ],
    }),
    lot('S/L2', '2026-03-05', []),
  ]
  const preceding = (asOf: string) =>
    precedingResults(buildHistory(lots, []), KEY, 'S/L2', day(asOf), 10).map(({ value }) => value)

  it('is answered by what was known then: 80 of 8 March, and 90 from its retest on 20 March', () => {
    expect(preceding('2026-03-07')).toEqual([])
    expect(preceding('2026-03-15')).toEqual([80])
    expect(preceding('2026-03-19')).toEqual([80])
    expect(preceding('2026-03-20')).toEqual([90])
  })
  it('knows nothing of a result before it was reported', () => {
    const late = lot('S/L1', '2026-03-01', [
      result(80, { tested: day('2026-03-08'), known: day('2026-03-18') }),
    ])
    const values = (asOf: string) =>
      precedingResults(buildHistory([late, lot('S/L2', '2026-03-05', [])], []), KEY, 'S/L2', day(asOf), 10)
    expect(values('2026-03-17')).toEqual([])
    expect(values('2026-03-18')).toHaveLength(1)
  })
})
