/** What is missing between what is on record: each planted defect is found by name, and what explains it is not. */
import { describe, expect, it } from 'vitest'
import { auditOf, sentencesOf } from './audit-front-door.ts'
import { mortar } from './front-door.ts'

describe('numbers of lots', () => {
  const PATTERN = 'lot-number-pattern: T-YYYY-###'
  const gaps = (numbers: readonly string[], source = PATTERN) =>
    sentencesOf('number-gap', { lots: Object.fromEntries(numbers.map((number) => [number, {}])), source })

  it('have a gap between two of a year, named with both neighbours', () => {
    const lots = { 'T-2026-001': {}, 'T-2026-002': {}, 'T-2026-005': {} }
    const [gap] = auditOf({ lots, source: PATTERN }).filter(({ check }) => check === 'number-gap')
    expect(gap).toMatchObject({ id: 'number-gap/tuff/T-2026-003', severity: 'warning', about: 'tuff' })
    expect([gap?.sentence, gap?.evidence[0]]).toEqual([
      'No lot of Trial bears any of the 2 numbers from T-2026-003 to T-2026-004',
      'before it: T-2026-002, sampled 19 February 2026; after it: T-2026-005, sampled 1 March 2026',
    ])
  })

  it('may begin anew in a year or run on, and the first year may have begun before the records', () => {
    expect(gaps(['T-2025-007', 'T-2025-008', 'T-2026-001'])).toEqual([])
    expect(gaps(['T-2025-007', 'T-2025-008', 'T-2026-009'])).toEqual([])
    expect(gaps(['T-2025-007', 'T-2025-008', 'T-2026-002'])).toEqual([
      'No lot of Trial bears the number T-2026-001',
    ])
    expect(gaps(['T-2025-007', 'T-2026-009'])).toEqual(['No lot of Trial bears the number T-2026-008'])
  })

  it('are no gap where the source says that it did not use them, or states no pattern', () => {
    const unused = `${PATTERN}\nnumbers-not-used: [{ number: T-2026-002, reason: misprint }]`
    expect(gaps(['T-2026-001', 'T-2026-003'], unused)).toEqual([])
    expect(gaps(['T-2026-001', 'T-2026-003'], '')).toEqual([])
  })

  it.each([
    ['T-2026-002', '[', ['yaml-syntax']],
    ['T-2026-002', 'quantity: 1 furlong', ['key-missing', 'key-missing', 'quantity-unit']],
    ['second', 'number: T-2026-002 # stencilled\nquantity: [', ['yaml-syntax']],
    ['second', '"number": "T-2026-002"\nquantity: [', ['yaml-syntax']],
    ['second', "number: 'T-2026-002'\nquantity: 400 t", ['key-missing', 'key-missing']],
  ])('are no gap where the record of the lot that bears one is at fault: %s, %j', (lot, text, faults) => {
    const lots = { 'T-2026-001': {}, 'T-2026-003': {} }
    const files = { [`lots/tuff/${lot}.yaml`]: `${text}\n` }
    expect(sentencesOf('number-gap', { lots, source: PATTERN, files, faults })).toEqual([])
  })

  it('are no gap where the lot that bears one is at fault beside other records', () => {
    const second = { more: 'number: T-2026-002\nclass-under: { none: N }' }
    const lots = { 'T-2026-001': {}, second, 'T-2026-003': {} }
    expect(sentencesOf('number-gap', { lots, source: PATTERN, faults: ['reference-unknown'] })).toEqual([])
  })

  it('keep the id of their gap where some are explained, so that an answer to it holds on', () => {
    const lots = { 'T-2026-001': {}, 'T-2026-006': {} }
    const gapWithout = (...unused: readonly string[]) => {
      const listed = unused.map((number) => `{ number: ${number}, reason: misprint }`).join(', ')
      const source = `${PATTERN}\nnumbers-not-used: [${listed}]`
      return auditOf({ lots, source })
        .filter(({ check }) => check === 'number-gap')
        .map(({ id, sentence }) => [id, sentence])
    }
    const id = 'number-gap/tuff/T-2026-002'
    // Numbers given up after the last lot make no gap.
    expect(gapWithout('T-2026-009')).toEqual([
      [id, 'No lot of Trial bears any of the 4 numbers from T-2026-002 to T-2026-005'],
    ])
    expect(gapWithout('T-2026-002')).toEqual([
      [id, 'No lot of Trial bears any of the 3 numbers from T-2026-003 to T-2026-005'],
    ])
    expect(gapWithout('T-2026-004')).toEqual([
      [id, 'No lot of Trial bears any of 3 numbers between T-2026-002 and T-2026-005'],
    ])
    expect(gapWithout('T-2026-002', 'T-2026-003', 'T-2026-005')).toEqual([
      [id, 'No lot of Trial bears the number T-2026-004'],
    ])
  })
})

describe('monthly reports', () => {
  const reports = (received: string) => ({
    lots: { L1: {} },
    source: `reports: { from: 2025-10, due: 15 d, received: [${received}] }`,
  })

  it('are missing from the day after they were due, months on end as one', () => {
    // As of 10 March 2026 that for January, due on 15 February, is the last.
    expect(sentencesOf('report-missing', reports('{ month: 2025-11, on: 2025-12-10 }'))).toEqual([
      'No report on Trial for October 2025 is on record',
      'No report on Trial is on record for the 2 months from December 2025 to January 2026',
    ])
  })

  it('are late by the days after the day on which they were due', () => {
    const months = ['2025-10', '2025-11', '2025-12', '2026-01']
    const on = ['2025-11-15', '2025-12-16', '2026-01-15', '2026-02-20']
    const all = months.map((month, place) => `{ month: ${month}, on: ${on[place]} }`).join(', ')
    expect(sentencesOf('report-missing', reports(all))).toEqual([])
    expect(sentencesOf('report-late', reports(all))).toEqual([
      'The report on Trial for November 2025 came 1 day late',
      'The report on Trial for January 2026 came 5 days late',
    ])
  })
})

describe('a sampling plan', () => {
  const plan = (row: string) => ({
    lots: { L1: {}, L2: { tonnes: 900 }, L3: {} },
    source: `sampling-plan: [{ properties: [moisture], ${row} }]`,
  })

  it('is fallen short of by the mass or by the time between two samples', () => {
    const [behind] = auditOf(plan('every: 600 t')).filter(({ check }) => check === 'sampled-behind-plan')
    expect([behind?.sentence, behind?.evidence]).toEqual([
      '1 of 3 lots of Trial was sampled less often for moisture content than the sampling plan asks: one sample every 600 t',
      [
        'L2: 1 sample, one for 900 t and 10.0 d',
        'lots that exceed the plan by no more than 5 % are passed over',
      ],
    ])
    expect(sentencesOf('sampled-behind-plan', plan('every: 5000 t, or-every: 7 d'))).toHaveLength(1)
    expect(sentencesOf('sampled-behind-plan', plan('every: 900 t, or-every: 10 d'))).toEqual([])
  })
})

describe('a certificate under which nothing was shipped', () => {
  it('is asked about after a year, where shipments of the source are on record', () => {
    const certified = (date: string) => ({
      on: '2024-12-01',
      more: `revisions: [{ number: 0, date: ${date}, by: M. Okafor, function: quality manager, reason: released, digest: sha256-${'0'.repeat(64)} }]`,
    })
    const shipped = { more: 'shipments: [{ bill: B1, date: 2026-03-05, mass: 25 t }]' }
    const unshipped = (date: string, more: object) =>
      sentencesOf('certificate-unshipped', { lots: { L1: certified(date), ...more } })
    expect(unshipped('2025-01-10', { L2: shipped })).toEqual([
      'No shipment of lot L1 of Trial is on record, 424 days after its certificate of 10 January 2025',
    ])
    expect(unshipped('2025-03-10', { L2: shipped })).toEqual([])
    expect(unshipped('2025-01-10', {})).toEqual([])
  })
})

it('a mortar cast on another day than its control is asked about once for a source', () => {
  const tested = {
    on: '2026-01-03',
    more: mortar('2026-01-06', ['{ age: 7 d, tested: 2026-01-13T09:00, mean: 30.0 MPa, of: 3 }']),
  }
  expect(sentencesOf('mortars-cast-apart', { lots: { L1: tested, L2: {} } })).toEqual([
    '1 of 1 lot of Trial tested in mortar has a test mortar cast on another day than its control',
  ])
})
