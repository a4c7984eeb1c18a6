/** Days held against each other: each planted defect is found by name, and the day beside it is not. */
import { describe, expect, it } from 'vitest'
import { onShipping } from '../../src/core/checks/on-shipping.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { affectedWords } from '../../src/words/on-shipping.ts'
import { auditOf, certificate, sentencesOf } from './audit-front-door.ts'
import { mortarLot } from './front-door.ts'

/** Sampled on 1 March 2026, tested two days later. */
const shippedOn = (date: string, revisions: readonly string[] = [], on = '2026-03-01') => ({
  on,
  more: `shipments: [{ bill: B1, date: ${date}, mass: 25.0 t }]
${revisions.length === 0 ? '' : `revisions: [${revisions.join(', ')}]`}`,
})
const of = (check: string, lot: object, more: object = {}) =>
  sentencesOf(check, { lots: { L1: lot }, ...more })

describe('a shipment', () => {
  it('without a certificate, or before the first one', () => {
    expect(of('shipped-without-certificate', shippedOn('2026-03-05'))).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left without a certificate',
    ])
    expect(of('shipped-without-certificate', shippedOn('2026-03-05', [certificate('2026-03-06')]))).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left before it had a certificate',
    ])
    expect(of('shipped-without-certificate', shippedOn('2026-03-05', [certificate('2026-03-05')]))).toEqual(
      [],
    )
  })

  it('before any result was known', () => {
    expect(of('shipped-before-results', shippedOn('2026-03-02'))).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left before any of its results was known',
    ])
    expect(of('shipped-before-results', shippedOn('2026-03-03'))).toEqual([])
  })

  it('before or after it was known that the lot does not meet its set', () => {
    const failing = { clause: 'property: moisture, at-most: 1.0 %' }
    const [before, after] = ['2026-03-02', '2026-03-04'].map((date) =>
      auditOf({ lots: { L1: shippedOn(date) }, ...failing }).filter(({ check }) => check.includes('fail')),
    )
    expect(before?.map(({ sentence }) => sentence)).toEqual([
      'Lot L1 of Trial does not meet Trial, edition 1, and 1 shipment (25.0 t) of it had left before that was known',
    ])
    expect(after?.map(({ sentence, evidence }) => [sentence, ...evidence])).toEqual([
      [
        '1 shipment (25.0 t) of lot L1 of Trial left on or after the day when the lot was known not to meet Trial, edition 1',
        'not met, known since 3 March 2026: Moisture content',
        'bill B1 of 4 March 2026',
      ],
    ])
    expect(of('shipped-after-failure', shippedOn('2026-03-04'))).toEqual([])
  })

  it('on the very day on which it was known that the lot does not meet: for the finding as for the notice', () => {
    const lots = { L1: shippedOn('2026-03-03') }
    const failing = { clause: 'property: moisture, at-most: 1.0 %' }
    expect(sentencesOf('failed-after-shipping', { lots, ...failing })).toEqual([])
    expect(sentencesOf('shipped-after-failure', { lots, ...failing })).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left on or after the day when the lot was known not to meet Trial, edition 1',
    ])
    const failed = readMoment('2026-03-03')
    expect(onShipping({ ages: [], revisions: [], failed }, failed).failure).toBe('known')
    expect(affectedWords(failed, 0, 1)).toBe(
      'This lot has not met its criterion since 3\u00a0March 2026: 1 shipment left on that day or later.',
    )
  })

  it('from a lot that fails two clauses, each known since its own day', () => {
    const clause = 'property: moisture, at-most: 1.0 % }\n  - { clause: d, property: SO3, at-most: 1.0 %'
    const analyses = [{ results: 'moisture: 2.0 %' }, { results: 'SO3: 2.0 %', tested: '2026-03-06' }]
    const [found] = auditOf({ lots: { L1: { ...shippedOn('2026-03-07'), analyses } }, clause }).filter(
      ({ check }) => check === 'shipped-after-failure',
    )
    expect(found?.evidence).toEqual([
      'not met, known since 3 March 2026: Moisture content',
      'not met, known since 6 March 2026: Sulfur trioxide',
      'bill B1 of 7 March 2026',
    ])
  })

  it('from a lot of which one age failed and the other is late, which nobody knows not to meet', () => {
    const at = (age: string) =>
      `{ clause: at-${age}, property: strength-activity-index, condition: cool, age: ${age} d, at-least: 75 % }`
    const lot = (strength: string, more = '') => {
      const own = mortarLot(
        `{ age: 7 d, tested: 2026-01-12T09:00, mean: ${strength}, of: 3 }`,
        '{ age: 28 d }',
      )
      const shipped = `shipments: [{ bill: B1, date: 2026-03-01, mass: 25.0 t }]\n${more}`
      return { ...own, more: `${own.more}\n${shipped}` }
    }
    const checks = (clause: string) =>
      auditOf({ lots: { L1: { ...lot('20.0 MPa'), analyses: 'moisture: 2.0 %' } }, clause }).flatMap(
        ({ check }) => (/fail|missed|overdue/.test(check) ? [check] : []),
      )
    const either = `any-of: [${at('7')}, ${at('28')}]`
    expect(checks(either)).toEqual(['result-overdue', 'shipped-on-missed-age'])
    expect(checks(`${either} }\n  - { clause: d, property: moisture, at-most: 1.0 %`)).toContain(
      'shipped-after-failure',
    )
  })

  it('that may have drawn from a lot that does not meet, beside those that did', () => {
    const failing = { clause: 'property: moisture, at-most: 1.0 %' }
    const shared = (date: string) =>
      `shipments: [{ bill: T9, date: ${date}, mass: 20.0 t, lots: [L1, L2], from: terminal }]`
    const found = (lots: Readonly<Record<string, object>>, date: string) =>
      auditOf({ lots, source: shared(date), ...failing })
        .filter(({ check, about }) => check.includes('fail') && about === 'tuff/L1')
        .map(({ sentence, evidence }) => [sentence, evidence.at(-2)])
    const [own, none] = [shippedOn('2026-03-02'), { on: '2026-03-01' }]
    expect(found({ L1: own, L2: none }, '2026-03-02')).toEqual([
      [
        'Lot L1 of Trial does not meet Trial, edition 1, and 1 shipment (25.0 t) of it and 1 shipment (20.0 t) that may have drawn from it had left before that was known',
        'drawn from it or from another lot: bill T9 of 2 March 2026',
      ],
    ])
    expect(found({ L1: none, L2: none }, '2026-03-04').map(([sentence]) => sentence)).toEqual([
      '1 shipment (20.0 t) that may have drawn from lot L1 of Trial left on or after the day when the lot was known not to meet Trial, edition 1',
    ])
  })

  it('after the certificate was withdrawn', () => {
    const withdrawn = [certificate('2026-03-03'), certificate('2026-03-06', 1, ', withdrawn: yes')]
    expect(of('shipped-after-withdrawal', shippedOn('2026-03-07', withdrawn))).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left after its certificate was withdrawn on 6 March 2026',
    ])
    expect(of('shipped-after-withdrawal', shippedOn('2026-03-06', withdrawn))).toEqual([])
  })

  it('on a certificate of more than six months, unless a later one is in force', () => {
    const old = shippedOn('2026-03-05', [certificate('2025-06-01')], '2025-05-20')
    expect(of('shipped-on-old-certificate', old)).toEqual([
      '1 shipment (25.0 t) of lot L1 of Trial left on a certificate more than six months old, the last when it was 277 days old',
    ])
    const renewed = [certificate('2025-06-01'), certificate('2026-02-01', 1)]
    expect(of('shipped-on-old-certificate', shippedOn('2026-03-05', renewed, '2025-05-20'))).toEqual([])
  })
})

describe('the listing of a source', () => {
  const listed = (listing: string, date: string) =>
    of('shipped-while-unlisted', shippedOn(date), { source: `listing: [${listing}]` })
  const FIRST = '{ date: 2026-01-01, by: Roads, action: listed, to: 2026-12-31 }'

  it('holds from its day until it is suspended, ends or is taken away', () => {
    expect(listed(FIRST, '2026-03-05')).toEqual([])
    const suspended = '{ date: 2026-03-04, by: "ROADS ", action: suspended }'
    expect(listed(`${FIRST}, ${suspended}`, '2026-03-05')).toHaveLength(1)
    expect(listed(`${FIRST}, { date: 2026-03-04, by: Roads, action: suspended }`, '2026-03-05')).toEqual([
      '1 shipment (25.0 t) of Trial left while it was suspended by Roads, since 4 March 2026',
    ])
    expect(
      listed(
        `${FIRST}, { date: 2026-03-02, by: Roads, action: suspended }, { date: 2026-03-04, by: Roads, action: reinstated }`,
        '2026-03-05',
      ),
    ).toEqual([])
    expect(
      listed('{ date: 2026-01-01, by: Roads, action: listed, to: 2026-03-04 }', '2026-03-05'),
    ).toHaveLength(1)
  })

  it('is no more than information before the first of them: a source may sell before an agency lists it', () => {
    const source = 'listing: [{ date: 2026-03-06, by: Roads, action: listed }]'
    const unlisted = auditOf({ lots: { L1: shippedOn('2026-03-05') }, source }).filter(
      ({ check }) => check === 'shipped-while-unlisted',
    )
    expect(unlisted.map(({ severity, sentence }) => [severity, sentence])).toEqual([
      ['information', '1 shipment (25.0 t) of Trial left before Roads had listed it'],
    ])
  })

  it('by one agency is enough, and approvals stand in where no listing is on record', () => {
    const other = '{ date: 2026-02-01, by: County, action: removed }'
    expect(listed(`${FIRST}, ${other}`, '2026-03-05')).toEqual([])
    const approved = (from: string) =>
      of('shipped-while-unlisted', shippedOn('2026-03-05'), {
        source: `approvals: [{ from: ${from}, by: Roads, scope: all }]`,
      })
    expect([approved('2026-03-05'), approved('2026-03-06').length]).toEqual([[], 1])
  })
})

describe('a test', () => {
  const accredited = (from: string) =>
    `accreditation: [{ body: Board, number: "1", scope: [moisture], from: ${from} }]`

  it('outside the accreditation on record on its day, for information where none is', () => {
    const found = (quay: string) =>
      auditOf({ lots: { L1: {} }, quay }).filter(({ check }) => check === 'tested-outside-accreditation')
    expect(found(accredited('2026-03-03'))).toEqual([])
    expect(found(accredited('2026-03-04')).map(({ severity, sentence }) => [severity, sentence])).toEqual([
      [
        'warning',
        '1 result of Quay, on which 1 lot of Trial is judged, was outside its recorded accreditation on the day of the test',
      ],
    ])
    expect(found('').map(({ severity, sentence }) => [severity, sentence])).toEqual([
      ['information', 'No accreditation is on record for Quay, on whose results 1 lot of Trial is judged'],
    ])
  })

  it('on a day on which the laboratory was closed, for information', () => {
    const closed = (day: string) =>
      of('tested-on-closed-day', {}, { quay: `closed-days: [{ from: ${day}, to: ${day} }]` })
    expect(closed('2026-03-03')).toEqual(['1 result of Trial is dated on a day when Quay was closed'])
    expect(closed('2026-03-04')).toEqual([])
  })

  it('with a device whose verification has run out', () => {
    const oven = (verified: string) =>
      of(
        'equipment-unverified',
        {},
        {
          quay: `equipment: [{ mark: O1, kind: oven, properties: [moisture], every: 365 d, verified: [${verified}] }]`,
        },
      )
    expect(oven('2025-03-03')).toEqual([])
    expect(oven('2025-03-02')).toEqual([
      '1 result of Trial was obtained at Quay with the oven O1 after its verification of 2 March 2025 had run out',
    ])
    expect(oven('2026-03-05')).toEqual([
      '1 result of Trial was obtained at Quay with the oven O1 before any verification of it on record',
    ])
  })
})

it('a composite taken outside the production window is asked about, and a later grab is not', () => {
  const sampled = (sample: string) => of('sampled-outside-production', { samples: [sample] })
  expect(sampled('{ id: D, kind: composite, taken: { from: 2026-02-24, to: 2026-03-02 } }')).toEqual([
    'Sample D of lot L1 of Trial was taken 24 February 2026 to 2 March 2026, outside the production of the lot, 24 February 2026 to 1 March 2026',
  ])
  expect(sampled('{ id: D, kind: grab, on: 2026-03-05 }')).toEqual([])
})

describe('the site', () => {
  it('lowers a check to information or raises one to a warning, and never turns it off', () => {
    const severity = (site: string) =>
      auditOf({ lots: { L1: shippedOn('2026-03-05') }, site })
        .filter(({ check }) => check === 'shipped-without-certificate')
        .map((finding) => finding.severity)
    expect([severity(''), severity('checks: { shipped-without-certificate: information }')]).toEqual([
      ['warning'],
      ['information'],
    ])
  })
})
