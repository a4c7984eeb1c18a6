import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { knownRecord, knownRecords } from '../../../src/edition/passes/known-record.ts'
import type { Records } from '../../../src/records/records.ts'
import { writtenForm } from '../../../src/records/schema/written.ts'
import { AS_OF, type GeneratedLot, load } from './generated-content.ts'

const CONTROL = { cast: '2026-03-01T09:00', water: '480 g', flow: '108 %', strength: [{ age: '7 d' }] }
const LOT = {
  produced: { from: '2026-02-20', to: '2026-02-28' },
  quantity: '500 t',
  samples: [{ id: 'C', kind: 'composite', on: '2026-02-28', received: '2026-03-04' }],
  analyses: [],
  tests: [],
  verification: [],
  revisions: [],
}

/** Records of the one lot tuff/A. */
function records(lot: object): Records {
  const lots = { 'tuff/A': { ...LOT, ...lot } as unknown as GeneratedLot }
  const loaded = load({ events: [], controls: { K: CONTROL }, lots }, AS_OF)
  expect(loaded.diagnostics).toEqual([])
  return loaded.records
}

/** The lot in written form as known on a date. */
function lotOn(lot: object, date: string): unknown {
  return writtenForm(knownRecords(records(lot), readMoment(date)).lots.get('tuff/A'))
}

describe('a lot as known on a date', () => {
  it('is the same object where nothing happened later', () => {
    const whole = records({ shipments: [{ bill: 'B1', date: '2026-03-10', mass: '25 t' }] })
    const known = knownRecords(whole, readMoment('2026-03-10'))
    expect(known.lots.get('tuff/A')).toBe(whole.lots.get('tuff/A'))
  })
  it('is not among the records before it was sampled', () => {
    expect(lotOn({}, '2026-02-27')).toBeUndefined()
  })
  it('has no list at all where each of its entries came later', () => {
    const shipments = [{ bill: 'B1', date: '2026-03-10', mass: '25 t' }]
    expect(lotOn({ shipments }, '2026-03-09')).not.toHaveProperty('shipments')
    expect(lotOn({ shipments }, '2026-03-10')).toHaveProperty('shipments', shipments)
  })
  it('has an answer from its day, and its disposition from the day on which it was closed', () => {
    const given = {
      finding: 'bill-twice/tuff/A/B1',
      date: '2026-03-08',
      by: 'a manager',
      answer: 'a typing error',
    }
    const answers = [{ ...given, disposition: 'noted', closed: '2026-03-12' }]
    expect(lotOn({ answers }, '2026-03-07')).not.toHaveProperty('answers')
    expect(lotOn({ answers }, '2026-03-11')).toHaveProperty('answers', [given])
    expect(lotOn({ answers }, '2026-03-12')).toHaveProperty('answers', answers)
  })
  it('leaves answers out of what an issued document holds, since they go on after issue', () => {
    const answers = [
      { finding: 'bill-twice/tuff/A/B1', date: '2026-03-08', by: 'a manager', answer: 'a slip' },
    ]
    const lot = records({ answers }).lots.get('tuff/A')
    expect(lot && knownRecord(lot, new Map(), readMoment('2026-03-20')).lot).not.toHaveProperty('answers')
  })
  it('has a sample from when it was taken, and its receipt from when it was received', () => {
    const [composite] = LOT.samples
    const independent = { id: 'V', kind: 'independent', on: '2026-03-06' }
    const { received: _, ...underway } = composite as (typeof LOT.samples)[number]
    const samples = [composite, independent]
    expect(lotOn({ samples }, '2026-03-03')).toHaveProperty('samples', [underway])
    expect(lotOn({ samples }, '2026-03-05')).toHaveProperty('samples', [composite])
    expect(lotOn({ samples }, '2026-03-06')).toHaveProperty('samples', samples)
  })
  it('counts a control’s result until the day of its exclusion', () => {
    const excluded = { value: '2.0 %', excluded: 'wet', 'excluded-on': '2026-03-12' }
    const analysis = { laboratory: 'quay', sample: 'C', tested: '2026-03-05', results: { SO3: '2.1 %' } }
    const analyses = [{ ...analysis, 'control-results': { SO3: excluded } }]
    const known = (SO3: unknown) => [{ ...analysis, 'control-results': { SO3 } }]
    expect(lotOn({ analyses }, '2026-03-11')).toHaveProperty('analyses', known('2.0 %'))
    expect(lotOn({ analyses }, '2026-03-12')).toHaveProperty('analyses', known(excluded))
  })
})

describe('a test that is not known yet', () => {
  const first = { age: '7 d', tested: '2026-03-08T09:30', specimens: { a: '80 kN', b: '81 kN' } }
  const again = { ...first, tested: '2026-03-09T09:30', reported: '2026-03-20', 'retest-of': first.tested }
  const tests = [
    {
      sample: 'C',
      control: 'K',
      cast: '2026-03-01T09:30',
      strength: [first, again, { ...first, age: '2 d', tested: '2026-03-03T09:30', reported: '2026-03-29' }],
    },
  ]
  const strengthOn = (date: string) => {
    const whole = records({ tests })
    const lot = whole.lots.get('tuff/A')
    if (lot === undefined) throw new Error('the lot is on record')
    const known = knownRecord(lot, whole.controls, readMoment(date))
    return (known.lot.tests as readonly { strength: unknown }[])[0]?.strength
  }
  it('is planned, once', () => {
    expect(strengthOn('2026-03-07')).toEqual([{ age: '7 d' }, { age: '2 d' }])
  })
  it('leaves nothing beside another at its age', () => {
    expect(strengthOn('2026-03-19')).toEqual([first, { age: '2 d' }])
    expect(strengthOn('2026-03-20')).toEqual([first, again, { age: '2 d' }])
  })
})

describe('a source and a laboratory as known on a date', () => {
  it('have approvals, events and proficiency rounds from their day on', () => {
    const whole = records({})
    const moment = readMoment('2026-03-10')
    const approvals = [{ from: moment, by: 'Agency', scope: 'all' }]
    const events = [{ date: moment, kind: 'outage' as const, title: 'outage' }]
    const proficiency = [{ round: 'R1', date: moment, property: 'SO3' as const, z: 0.3 }]
    const [tuff, quay] = [whole.sources.get('tuff'), whole.laboratories.get('quay')]
    if (tuff === undefined || quay === undefined) throw new Error('both are on record')
    const more: Records = {
      ...whole,
      sources: new Map([['tuff', { ...tuff, approvals, events }]]),
      laboratories: new Map([['quay', { ...quay, proficiency }]]),
    }
    const [before, on] = ['2026-03-09', '2026-03-10'].map((date) => knownRecords(more, readMoment(date)))
    expect(before?.sources.get('tuff')).toEqual(tuff)
    expect(before?.laboratories.get('quay')).toEqual(quay)
    expect(on?.sources.get('tuff')).toEqual({ ...tuff, approvals, events })
    expect(on?.laboratories.get('quay')).toEqual({ ...quay, proficiency })
  })
})

describe('a cement bridge', () => {
  it('joins two cements from the day on which both batches of a pair have a reading', () => {
    const batch = (tested: string) => ({
      strength: [{ age: '7 d', tested: readMoment(tested) }],
      cast: tested,
    })
    const pairs = [
      { earlier: 'A1', later: 'B1' },
      { earlier: 'A2', later: 'B2' },
    ]
    const whole = {
      lots: new Map(),
      sources: new Map(),
      laboratories: new Map([['quay', { name: 'Quay', 'cement-bridges': [{ from: 'A', to: 'B', pairs }] }]]),
      controls: new Map([
        ['A1', batch('2026-03-08')],
        ['B1', batch('2026-03-09')],
        ['A2', batch('2026-03-20')],
        ['B2', batch('2026-03-20')],
      ]),
    } as unknown as Records
    const pairsOn = (date: string) =>
      knownRecords(whole, readMoment(date))
        .laboratories.get('quay')
        ?.['cement-bridges']?.map((one) => one.pairs)
    expect([pairsOn('2026-03-08'), pairsOn('2026-03-09'), pairsOn('2026-03-20')]).toEqual([
      undefined,
      [pairs.slice(0, 1)],
      [pairs],
    ])
  })
})
