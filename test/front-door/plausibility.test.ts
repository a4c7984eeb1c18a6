/** What is possible and hardly true is a finding, with its figures; it changes no outcome. */
import { describe, expect, it } from 'vitest'
import { implausibleResults } from '../../src/core/checks/plausible-results.ts'
import type { MaterialKind } from '../../src/core/measure/material-kind.ts'
import { result } from '../core/judging/fixture.ts'
import { mortar, reportOn, type TrialLot } from './front-door.ts'

const CLAUSE = 'property: moisture, at-most: 3.0 %'

/** Findings of the last lot, severity, check and sentence. */
function findings(lots: readonly TrialLot[], source?: string): string[] {
  const report = reportOn({ clause: CLAUSE, lots, ...(source === undefined ? {} : { source }) })
  // No certificate is made for these lots, whose shipments are asked about for other reasons.
  const asked = report.findings.filter(({ check }) => check !== 'shipped-without-certificate')
  return asked.map(({ severity, check, sentence }) => `${severity} ${check}: ${sentence}`)
}
const ofResults = (results: string) => findings([{ analyses: results }])
const index = (figure: string, key = 'strength-activity-index') =>
  `${key}: { value: ${figure}, condition: cool, age: 7 d }`

describe('results that are hardly true', () => {
  it('are indices outside 30 to 200 %, or 20 to 5000 % of a resistivity', () => {
    expect(ofResults(index('837 %'))).toEqual([
      'warning result-implausible: The 7 d strength activity index (20 %, 23 °C) of lot L1 of Trial is 837 % (sample C, Quay), outside the plausible range of 30 to 200 %',
    ])
    expect(ofResults(index('21 %'))).toHaveLength(1)
    expect([ofResults(index('30 %')), ofResults(index('200 %'))]).toEqual([[], []])
    expect(ofResults(index('1240 %', 'resistivity-index'))).toEqual([])
    expect(ofResults(index('5100 %', 'resistivity-index'))).toHaveLength(1)
  })

  it('are oxides and loss on ignition above 102 %, or far below the whole where all are there', () => {
    // 60 + 25 + 8 + 4 + 1 + 0.5 + 4 = 102.5
    const six = 'SiO2: 60.0 %, Al2O3: 25.0 %, Fe2O3: 8.0 %, CaO: 4.0 %, MgO: 1.0 %, SO3: 0.5 %'
    expect(ofResults(`${six}, loss-on-ignition: 4.0 %`)).toEqual([
      'warning oxide-total: The oxides and loss on ignition that Quay reports for sample C of lot L1 of Trial add up to 102.5 %, outside the plausible range of 85 to 102 %',
    ])
    expect(ofResults(`${six}, loss-on-ignition: 3.5 %`)).toEqual([])
    // Of the ignited material the loss is no part.
    const ignited = six.replaceAll(/: (\S+ %)/g, ': { value: $1, basis: ignited }')
    expect(ofResults(`${ignited}, loss-on-ignition: 9.0 %`)).toEqual([])
    // 30 + 25 + 8 + 4 + 1 + 0.5 + 4 = 72.5; without MgO nobody knows what is missing.
    const low = six.replace('60.0', '30.0')
    expect(ofResults(`${low}, loss-on-ignition: 4.0 %`)[0]).toContain('add up to 72.5 %')
    expect(ofResults(`${low.replace(', MgO: 1.0 %', '')}, loss-on-ignition: 4.0 %`)).toEqual([])
  })

  it('are available alkalis above the total: 1.0 + 0.658 × 1.0 is 1.66 %', () => {
    expect(ofResults('Na2O: 1.00 %, K2O: 1.00 %, available-alkalis: 2.10 %')).toEqual([
      'warning alkalis-above-total: The available alkalis of sample C of lot L1 of Trial, 2.10 %, are above its total alkalis, 1.66 %',
    ])
    expect(ofResults('Na2O: 1.00 %, K2O: 1.00 %, available-alkalis: 1.70 %')).toEqual([])
  })

  it('are losses on ignition below zero, and as received below the moisture that they include', () => {
    expect(ofResults('loss-on-ignition: -0.04 %')).toEqual([
      'warning loss-too-small: The loss on ignition that Quay reports for sample C of lot L1 of Trial, −0.04 %, is below zero',
    ])
    const wet = (percent: string, basis: string) =>
      ofResults(`moisture: 1.20 %, loss-on-ignition: { value: ${percent} %, basis: ${basis} }`)
    expect(wet('0.90', 'as received')).toEqual([
      'warning loss-too-small: The loss on ignition that Quay reports for sample C of lot L1 of Trial, 0.90 % as received, is below its moisture, 1.20 %',
    ])
    // A dried material has lost its moisture already, and the two say nothing of each other.
    expect([wet('1.20', 'as received'), wet('0.90', 'dry'), ofResults('loss-on-ignition: 0 %')]).toEqual([
      [],
      [],
      [],
    ])
  })

  it('are no losses below zero of slag, whose sulfide takes up oxygen', () => {
    const results = [result('loss-on-ignition', -0.9, { sample: 'C' })]
    const of = (kind: MaterialKind) => implausibleResults({ id: 'vale/1', kind, results })
    expect([of('slag'), of('silica-fume').map(({ reason }) => reason.code)]).toEqual([[], ['loss-too-small']])
  })

  it('are losses ten times smaller than those before, with the median of five or more', () => {
    const before = ['1.90', '2.00', '2.03', '2.10', '2.20'].map(
      (percent): TrialLot => ({ analyses: `loss-on-ignition: ${percent} %` }),
    )
    expect(findings([...before, { analyses: 'loss-on-ignition: 0.203 %' }])).toEqual([
      'warning far-from-history: The loss on ignition of lot L6 of Trial is 0.203 % (sample C), far from 2.030 %, the median of the 5 results before it',
    ])
    expect(findings([...before, { analyses: 'loss-on-ignition: 0.40 %' }])).toEqual([])
    expect(findings([...before.slice(1), { analyses: 'loss-on-ignition: 0.203 %' }])).toEqual([])
  })
})

describe('mortars that are hardly true', () => {
  const cubes = (...specimens: readonly string[]) => {
    const marked = specimens.map((text, place) => `${'abc'[place]}: ${text}`).join(', ')
    const reading = `{ age: 7 d, tested: 2026-01-12T09:00, specimens: { ${marked} } }`
    return findings([{ on: '2026-01-03', more: mortar('2026-01-05', [reading]) }])
  }

  it('are a test half as strong again as its control, whose inverse is common: 49/30 is 163 %, 30/49 is 61 %', () => {
    expect(cubes('49.0 MPa', '48.4 MPa', '49.6 MPa')).toEqual([
      'warning test-and-control-swapped: Test and control may be swapped: the 7 d strength activity index (20 %, 23 °C) of lot L1 of Trial is 163.3 % (sample C, Quay), and the control K1 over the test would be 61.2 %',
    ])
    expect(cubes('45.0 MPa', '44.4 MPa', '45.6 MPa')).toEqual([])
  })
  it('are indices beyond any inverse, and strengths that no mortar has: 250/30 is 833 %', () => {
    expect(cubes('250 MPa', '248 MPa', '252 MPa').map((text) => text.replace(/ \(sample.*/, ''))).toEqual([
      'warning result-implausible: The 7 d compressive strength (20 %, 23 °C) of lot L1 of Trial is 250.0 MPa',
      'warning result-implausible: The 7 d strength activity index (20 %, 23 °C) of lot L1 of Trial is 833.3 %',
    ])
  })
  it('are three cubes that broke at one and the same load', () => {
    expect(cubes('67.8 kN', '67.8 kN', '67.8 kN')).toEqual([
      'warning specimens-equal: All 3 specimens of the 7 d compressive strength (20 %, 23 °C) of lot L1 of Trial read 67.8 kN (sample C, Quay)',
    ])
    expect(cubes('67.8 kN', '67.8 kN', '67.9 kN')).toEqual([])
  })
})

describe('a lot that is hardly true', () => {
  const ship = (...shipments: readonly string[]) => `shipments: [${shipments.join(', ')}]`
  const bill = (number: string, mass: string) =>
    `{ bill: ${number}, date: 2026-03-04, mass: ${mass}, to: Northmere }`

  it('ships more on one bill than anything carries, and more than it holds; no consignee is named', () => {
    expect(findings([{ tonnes: 3000, more: ship(bill('B-1', '24000 t')) }])).toEqual([
      'warning shipment-mass: Bill B-1 of lot L1 of Trial is for 24000 t, outside the plausible range of one bill, 0.5 to 120 t',
      'warning shipped-above-quantity: More of lot L1 of Trial was shipped, 24000.0 t, than the lot holds, 3000.0 t',
    ])
    expect(findings([{ tonnes: 50, more: ship(bill('B-1', '25 t'), bill('B-2', '25.4 t')) }])).toEqual([])
    expect(findings([{ tonnes: 50, more: ship(bill('B-1', '25 t'), bill('B-2', '25.6 t')) }])).toHaveLength(1)
  })

  it('is held against a range in the units that its bill is written in, 0.5 to 120 t being 0.55 to 132 short tons', () => {
    expect(findings([{ tonnes: 3000, more: ship(bill('B-1', '240 short tons')) }])).toEqual([
      'warning shipment-mass: Bill B-1 of lot L1 of Trial is for 240 short tons, outside the plausible range of one bill, 0.6 to 132 short tons',
    ])
  })

  it('lists a bill twice, or one of another lot', () => {
    const one = ship(bill('B-1', '25 t'))
    expect(findings([{ more: ship(bill('B-1', '25 t'), bill('B-1', '24 t')) }])).toEqual([
      'warning bill-twice: Bill B-1 is listed more than once among the shipments of lot L1 of Trial',
    ])
    expect(findings([{ more: one }, { more: one }])).toEqual([
      'warning bill-twice: Bill B-1 of lot L2 of Trial is listed again under lot L1 of Trial',
    ])
    expect(findings([{ more: one }, { more: ship(bill('B-2', '25 t')) }])).toEqual([])
  })

  it('has the readings of another', () => {
    const row = 'SiO2: 63.1 %, Al2O3: 17.2 %, Fe2O3: 5.8 %, CaO: 3.1 %, MgO: 1.2 %'
    expect(findings([{ analyses: row }, { analyses: row }])).toEqual([
      'warning readings-alike: All 5 oxides of sample C of lot L2 of Trial are the same, to the last digit, in lot L1 of Trial',
    ])
    expect(findings([{ analyses: row }, { analyses: row.replace('63.1', '63.2') }])).toEqual([])
    const cubes = (last: string) => ({
      on: '2026-01-03',
      more: mortar('2026-01-05', [
        '{ age: 7 d, tested: 2026-01-12T09:00, specimens: { a: 26.0 MPa, b: 28.0 MPa, c: 27.1 MPa } }',
        `{ age: 28 d, tested: 2026-02-02T09:00, specimens: { a: 36.0 MPa, b: 38.0 MPa, c: ${last} MPa } }`,
      ]),
    })
    expect(findings([cubes('37.1'), cubes('37.1')])).toEqual([
      'warning readings-alike: All 6 readings of the mortar of sample C of lot L2 of Trial are the same, to the last digit, in lot L1 of Trial',
    ])
    expect(findings([cubes('37.1'), cubes('37.2')])).toEqual([])
  })

  it('has a number that its source does not form, or a quantity of no lot', () => {
    expect(findings([{ more: 'number: T-26-1' }], 'lot-number-pattern: T-YYYY-##')).toEqual([
      'warning number-off-pattern: The number T-26-1 of a lot of Trial does not have the form that its source states, T-YYYY-##',
    ])
    expect(findings([{ more: 'number: T-2026-01' }], 'lot-number-pattern: T-YYYY-##')).toEqual([])
    expect(findings([{ tonnes: 24 }])).toEqual([
      'warning lot-quantity: The quantity of lot L1 of Trial is 24 t, outside the plausible range of a lot, 50 to 50000 t',
    ])
    expect(findings([{ tonnes: 3_000_000 }])).toHaveLength(1)
  })
})
