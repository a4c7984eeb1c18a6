/** Days held against each other: each planted defect is found by name, and the day beside it is not. */
import { describe, expect, it } from 'vitest'
import { auditOf, certificate, sentencesOf } from './audit-front-door.ts'

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
      '1 shipment (25.0 t) of tuff/L1 left and it has no certificate',
    ])
    expect(of('shipped-without-certificate', shippedOn('2026-03-05', [certificate('2026-03-06')]))).toEqual([
      '1 shipment (25.0 t) of tuff/L1 left before it had a certificate',
    ])
    expect(of('shipped-without-certificate', shippedOn('2026-03-05', [certificate('2026-03-05')]))).toEqual(
      [],
    )
  })

  it('before any result was known', () => {
    expect(of('shipped-before-results', shippedOn('2026-03-02'))).toEqual([
      '1 shipment (25.0 t) of tuff/L1 left before any result of it was known',
    ])
    expect(of('shipped-before-results', shippedOn('2026-03-03'))).toEqual([])
  })

  it('before or after it was known that the lot does not meet its set', () => {
    const failing = { clause: 'property: moisture, at-most: 1.0 %' }
    const [before, after] = ['2026-03-03', '2026-03-04'].map((date) =>
      auditOf({ lots: { L1: shippedOn(date) }, ...failing }).filter(({ check }) => check.includes('fail')),
    )
    expect(before?.map(({ sentence }) => sentence)).toEqual([
      'tuff/L1 does not meet alone, and 1 shipment (25.0 t) of it had left before that was known',
    ])
    expect(after?.map(({ sentence, evidence }) => [sentence, ...evidence])).toEqual([
      [
        '1 shipment (25.0 t) of tuff/L1 left after it was known that the lot does not meet alone',
        'clause c, known since 3 March 2026',
        'bill B1 of 4 March 2026',
      ],
    ])
    expect(of('shipped-after-failure', shippedOn('2026-03-04'))).toEqual([])
  })

  it('after the certificate was withdrawn', () => {
    const withdrawn = [certificate('2026-03-03'), certificate('2026-03-06', 1, ', withdrawn: yes')]
    expect(of('shipped-after-withdrawal', shippedOn('2026-03-07', withdrawn))).toEqual([
      '1 shipment (25.0 t) of tuff/L1 left after its certificate was withdrawn on 6 March 2026',
    ])
    expect(of('shipped-after-withdrawal', shippedOn('2026-03-06', withdrawn))).toEqual([])
  })

  it('on a certificate of more than six months, unless a later one is in force', () => {
    const old = shippedOn('2026-03-05', [certificate('2025-06-01')], '2025-05-20')
    expect(of('shipped-on-old-certificate', old)).toEqual([
      '1 shipment (25.0 t) of tuff/L1 left on a certificate of more than six months, the last on one of 277 days',
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
    expect(listed(`${FIRST}, { date: 2026-03-04, by: Roads, action: suspended }`, '2026-03-05')).toEqual([
      '1 shipment (25.0 t) of tuff left while it was suspended from 4 March 2026 on, by Roads',
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
    expect(listed('{ date: 2026-03-06, by: Roads, action: listed }', '2026-03-05')).toHaveLength(1)
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
        '1 result that 1 lot of tuff is judged on lies outside the recorded accreditation of quay on the day of the test',
      ],
    ])
    expect(found('').map(({ severity, sentence }) => [severity, sentence])).toEqual([
      ['information', 'No accreditation of quay is on record, whose results 1 lot of tuff is judged on'],
    ])
  })

  it('on a day on which the laboratory was closed, for information', () => {
    const closed = (day: string) =>
      of('tested-on-closed-day', {}, { quay: `closed-days: [{ from: ${day}, to: ${day} }]` })
    expect(closed('2026-03-03')).toEqual(['1 result of tuff is dated on days on which quay was closed'])
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
      '1 result of tuff was obtained at quay with the oven O1 after its verification of 2 March 2025 had run out',
    ])
    expect(oven('2026-03-05')).toEqual([
      '1 result of tuff was obtained at quay with the oven O1 before any verification of it on record',
    ])
  })
})

it('a composite taken outside the production window is asked about, and a later grab is not', () => {
  const sampled = (sample: string) => of('sampled-outside-production', { samples: [sample] })
  expect(sampled('{ id: D, kind: composite, taken: { from: 2026-02-24, to: 2026-03-02 } }')).toEqual([
    'Sample D of tuff/L1 was taken 24 February 2026 to 2 March 2026, and the lot was produced 24 February 2026 to 1 March 2026',
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
