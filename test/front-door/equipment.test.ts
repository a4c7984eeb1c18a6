/** What tests rest on: press, sieve, flow table, sand, bath and check resistor, each with the day it is verified until. */
import { describe, expect, it } from 'vitest'
import { laboratoryPageView } from '../../src/edition/views/laboratory-page.ts'
import { told, withLines } from './fields-front-door.ts'
import { lotText, mortar } from './front-door.ts'

/** Strengths of the condition `cool` at 7 d, 12 January 2026, and at 28 d, 2 February 2026; moisture on 5 January. */
const tested = (device: string) =>
  told({
    ...withLines('laboratories/quay.yaml', `equipment: [{ mark: D1, ${device} }]`),
    'lots/tuff/L1.yaml': lotText(
      {
        on: '2026-01-03',
        more: mortar('2026-01-05', [
          '{ age: 7 d, tested: 2026-01-12T09:00, mean: 24.0 MPa, of: 3 }',
          '{ age: 28 d, tested: 2026-02-02T09:00, mean: 32.0 MPa, of: 3 }',
        ]),
      },
      0,
    ),
  })
const findings = (device: string) => {
  const { report, diagnostics } = tested(device)
  expect(diagnostics).toEqual([])
  return report.sources
    .flatMap((source) => source.findings)
    .filter(({ check }) => check === 'equipment-unverified')
    .map(({ sentence, evidence }) => [sentence, ...evidence].join('. ').replaceAll('\u00a0', ' '))
}
const SAND = 'kind: standard sand, properties: [strength-activity-index], verified: [2025-10-01]'

describe('evidence with a last day of its own', () => {
  it('flags the results after that day, and none on it', () => {
    // Indices of 12 January and 2 February.
    expect(findings(`${SAND}, due: 2026-02-02`)).toEqual([])
    expect(findings(`${SAND}, due: 2026-02-01`)).toEqual([
      '1 result of Tuff was obtained at Quay with the standard sand D1 after its verification of 1 October 2025 had run out. it held until 1 February 2026; tested 2 February 2026 (L1)',
    ])
    expect(findings(`${SAND}, due: 2026-01-11`)[0]).toMatch(/^2 results of Tuff were obtained/)
  })
  it('goes before the interval, for the latest verification alone', () => {
    // 30 days from 1 October are over by 31 October; the certificate says otherwise.
    expect(findings(`${SAND}, every: 30 d, due: 2026-06-30`)).toEqual([])
    const twice = SAND.replace('[2025-10-01]', '[2025-10-01, 2026-01-20]')
    // 12 January rests on the first, whose interval was over.
    expect(findings(`${twice}, every: 30 d, due: 2026-06-30`)).toEqual([
      '1 result of Tuff was obtained at Quay with the standard sand D1 after its verification of 1 October 2025 had run out. to be verified every 30 d; tested 12 January 2026 (L1)',
    ])
  })
  it('says nothing of what was not in use, or serves another condition', () => {
    expect(findings(`${SAND}, due: 2026-02-01, used: { to: 2026-01-31 }`)).toEqual([])
    expect(findings(`${SAND}, due: 2026-01-01, used: { from: 2026-03-01 }`)).toEqual([])
    expect(findings(`${SAND}, due: 2026-01-01, conditions: [cool]`)[0]).toMatch(/^2 results/)
  })
  it('stands on the page of the laboratory with where it lies and the correction found', () => {
    const sieve =
      'kind: 45 µm sieve, properties: [residue-45um], every: 180 d, verified: [2026-01-20], record: K-77, correction: "+4.2 %"'
    const { internal } = tested(sieve)
    const equipment = laboratoryPageView(internal, 'quay').records.find(({ label }) => label === 'Equipment')
    expect(equipment?.texts.map((text) => text.replaceAll('\u00a0', ' '))).toEqual([
      'D1, 45 µm sieve: verified 20 Jan 2026 (K-77, correction +4.2 %), next due 19 Jul 2026',
    ])
  })
})
