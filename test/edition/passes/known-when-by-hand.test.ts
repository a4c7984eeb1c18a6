import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { historyKey, precedingResults } from '../../../src/core/history/history.ts'
import { judgeLot } from '../../../src/edition/passes/judge-lot.ts'
import { sourceStates } from '../../../src/edition/passes/source-state.ts'
import { AS_OF, type Content, type GeneratedLot, load } from './generated-content.ts'

const cubes = (load: string) => ({ a: { load }, b: { load } })
const control = {
  cast: '2026-03-01T09:00',
  water: '480 g',
  flow: '108 %',
  // 100 kN on 50 mm × 50 mm is 40 MPa.
  strength: [{ age: '7 d', tested: '2026-03-08T09:00', specimens: cubes('100 kN') }],
}

/** @param strength readings of its one mortar, cast on 1 March */
function lot(sampled: string, strength: GeneratedLot['tests'][number]['strength']): GeneratedLot {
  return {
    produced: { from: '2026-02-20', to: sampled },
    quantity: '500 t',
    samples: [{ id: 'C', kind: 'composite', taken: { from: '2026-02-20', to: sampled } }],
    analyses: [],
    tests:
      strength.length === 0
        ? []
        : [{ sample: 'C', control: 'K', cast: '2026-03-01T09:30', water: '485 g', flow: '108 %', strength }],
    verification: [],
    revisions: [],
  }
}

const FIRST = { age: '7 d', tested: '2026-03-08T09:30', specimens: cubes('80 kN') }
const RETEST = {
  age: '7 d',
  tested: '2026-03-20T09:30',
  specimens: cubes('90 kN'),
  'retest-of': '2026-03-08T09:30',
}

/** What the lot B, sampled after A, finds before it on a date, and what A itself is: all from one state. */
function seen(content: Partial<Content>, date: string) {
  const { records, diagnostics } = load({ events: [], controls: { K: control }, lots: {}, ...content }, AS_OF)
  expect(diagnostics.filter(({ code }) => code !== 'issued-missing')).toEqual([])
  const state = sourceStates(records, AS_OF).get('tuff')
  if (state === undefined) throw new Error('the source has lots')
  const asOf = readMoment(date)
  const key = historyKey('N', 'strength-activity-index', 'warm', readAge('7 d'))
  const [own, later] = [judgeLot(records, state, 0, asOf), judgeLot(records, state, 1, asOf)]
  return {
    own: own.results
      .filter(({ property }) => property === 'strength-activity-index')
      .map(({ value, valid }) => [value, valid]),
    preceding: precedingResults(state.history, key, later.id, asOf, 10).map(({ value }) => value),
    drawn: later.history.flatMap(({ points }) => points.map((point) => [point.value, point.status])),
  }
}

/** B is being tested at the same age, so that its chart shows A. */
const B = lot('2026-02-28', [{ age: '7 d' }])
const lotsWith = (strength: Parameters<typeof lot>[1]) => ({
  lots: { 'tuff/A': lot('2026-02-27', strength), 'tuff/B': B },
})
const pending = [null, 'pending']

describe('a retest', () => {
  const retested = lotsWith([FIRST, RETEST])

  it('replaces from its own moment: 80 on 8 March and 90 on 20 March is 80 everywhere on the 15th', () => {
    expect(seen(retested, '2026-03-15')).toEqual({
      own: [[80, true]],
      preceding: [80],
      drawn: [[80, 'valid'], pending],
    })
    expect(seen(retested, '2026-03-19').preceding).toEqual([80])
    expect(seen(retested, '2026-03-20')).toEqual({
      own: [
        [80, false],
        [90, true],
      ],
      preceding: [90],
      drawn: [[90, 'valid'], pending],
    })
  })
  it('replaces even where it is not valid itself: nothing stands from then on', () => {
    const lost = { ...RETEST, specimens: { a: { load: '90 kN', excluded: 'wet' } } }
    const content = lotsWith([FIRST, lost])
    expect(seen(content, '2026-03-19').preceding).toEqual([80])
    expect(seen(content, '2026-03-20').preceding).toEqual([])
  })
  it('replaces from when it was reported', () => {
    const content = lotsWith([{ ...RETEST, reported: '2026-03-25' }, FIRST])
    expect(seen(content, '2026-03-24').preceding).toEqual([80])
    expect(seen(content, '2026-03-25').preceding).toEqual([90])
  })
  it.each([
    // 80 kN over 128 kN; 80 kN on 50 mm × 50 mm is 32 MPa, less than the condition asks of a control.
    ['128 kN', [62.5]],
    ['80 kN', []],
  ])('of the control counts from its own moment on, at %s', (load, preceding) => {
    const again = { ...RETEST, specimens: cubes(load), 'retest-of': '2026-03-08T09:00' }
    const content = {
      ...lotsWith([FIRST]),
      controls: { K: { ...control, strength: [again, ...control.strength] } },
    }
    expect(seen(content, '2026-03-19').preceding).toEqual([80])
    expect(seen(content, '2026-03-20').preceding).toEqual(preceding)
  })
})

describe('an exclusion', () => {
  const specimens = (excluded: { excluded: string; 'excluded-on'?: string }) => ({
    a: { load: '80 kN' },
    b: { load: '60 kN', ...excluded },
  })

  it('counts from its date: the mean of 80 and 60 kN before it, 80 kN from then on', () => {
    const content = lotsWith([
      { ...FIRST, specimens: specimens({ excluded: 'cracked', 'excluded-on': '2026-03-12' }) },
    ])
    expect(seen(content, '2026-03-11')).toMatchObject({ own: [[70, true]], preceding: [70] })
    expect(seen(content, '2026-03-12')).toMatchObject({ own: [[80, true]], preceding: [80] })
  })
  it('holds from the reading where it has no date', () => {
    const content = lotsWith([{ ...FIRST, specimens: specimens({ excluded: 'cracked' }) }])
    expect(seen(content, '2026-03-08').preceding).toEqual([80])
  })
})

describe('a result reported late', () => {
  it('is known from then on, and still awaited before', () => {
    const content = lotsWith([{ ...FIRST, reported: '2026-03-10' }])
    expect(seen(content, '2026-03-09')).toEqual({ own: [], preceding: [], drawn: [pending] })
    expect(seen(content, '2026-03-10').preceding).toEqual([80])
  })
  it('of the control makes the index known late', () => {
    const late = { ...control, strength: control.strength.map((one) => ({ ...one, reported: '2026-03-12' })) }
    const content = { ...lotsWith([FIRST]), controls: { K: late } }
    expect(seen(content, '2026-03-11')).toMatchObject({ own: [], preceding: [] })
    expect(seen(content, '2026-03-12')).toMatchObject({ own: [[80, true]], preceding: [80] })
  })
})

describe('a withdrawal', () => {
  const revision = {
    by: 'M. Okafor',
    function: 'manager',
    reason: 'wrong',
    digest: `sha256-${'0'.repeat(64)}`,
  }
  it('takes a lot out of the history from the date of its first line on', () => {
    const revisions = [
      { ...revision, number: 0, date: '2026-03-09' },
      { ...revision, number: 1, date: '2026-03-12', withdrawn: 'yes' as const },
      { ...revision, number: 2, date: '2026-03-20', withdrawn: 'yes' as const },
    ]
    const content = {
      lots: { 'tuff/A': { ...lot('2026-02-27', [FIRST]), revisions }, 'tuff/B': B },
      events: [],
      controls: { K: control },
    }
    const preceding = (date: string) => seen(content, date).preceding
    expect(['2026-03-11', '2026-03-12', '2026-03-19', '2026-03-20'].map(preceding)).toEqual([
      [80],
      [],
      [],
      [],
    ])
    // Asked about a day between the two lines, from the day before the second and from after it.
    const between = (asOf: string) => {
      const state = sourceStates(load(content, AS_OF).records, readMoment(asOf)).get('tuff')
      return state?.lots.find(({ id }) => id === 'tuff/A')?.withdrawn?.text
    }
    expect(['2026-03-11', '2026-03-19', '2026-03-25'].map(between)).toEqual([
      undefined,
      '2026-03-12',
      '2026-03-12',
    ])
  })
})

describe('the site’s offset', () => {
  it('puts a clock time without an offset before or after one that states its own', () => {
    // 23:30 at +02:00 is 21:30 in UTC, before 22:00Z; without an offset of the site it comes after it.
    const order = (offset: string) => {
      const content = {
        offset,
        events: [],
        controls: { K: control },
        lots: { 'tuff/A': lot('2026-02-27T23:30', []), 'tuff/B': lot('2026-02-27T22:00Z', []) },
      }
      const state = sourceStates(load(content, AS_OF).records, AS_OF).get('tuff')
      return state?.lots.map(({ id }) => id)
    }
    expect(order('+02:00')).toEqual(['tuff/A', 'tuff/B'])
    expect(order('Z')).toEqual(['tuff/B', 'tuff/A'])
  })
})
