import { describe, expect, it } from 'vitest'
import type { SourceAgency } from '../../../src/core/agency/source-agency.ts'
import { verificationStatus } from '../../../src/core/agency/verification-status.ts'
import { verificationKept } from '../../../src/core/checks/verification-kept.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const YEAR = {
  kind: 'split',
  from: readMoment('2025-01-01'),
  to: readMoment('2025-12-31'),
  planned: 2,
} as const

function agency(asOf: string, taken: readonly string[], more: Partial<SourceAgency> = {}): SourceAgency {
  const samples = taken.map((day) => ({ kind: 'split', lot: 'vale/A', taken: readMoment(day) }) as const)
  return {
    splits: taken.length,
    independents: 1,
    withoutCustody: [],
    status: verificationStatus([YEAR], samples, readMoment(asOf)),
    ...more,
  } as unknown as SourceAgency
}

const sentences = (of: SourceAgency) =>
  verificationKept('vale', of)
    .flatMap(({ findings }) => findings)
    .map((finding) => wordedFinding(finding, PLAIN_NAMES).sentence)

describe('verificationKept', () => {
  it('asks about samples that a period which is over lacks, and waits for one that goes on', () => {
    expect(
      sentences(agency('2026-01-01', ['2025-04-01'])).map((text) => text.replaceAll(/\s/g, ' ')),
    ).toEqual(['1 of the 2 splits of vale planned for 1 January 2025 to 31 December 2025 is on record'])
    expect(sentences(agency('2025-12-31', ['2025-04-01']))).toEqual([])
    expect(sentences(agency('2026-01-01', ['2025-04-01', '2025-08-01']))).toEqual([])
  })
  it('asks where all samples are splits, and nothing of a source that the agency never sampled', () => {
    const both = ['2025-04-01', '2025-08-01']
    expect(sentences(agency('2025-12-31', both, { independents: 0 }))).toEqual([
      'All 2 samples that the agency has of vale are splits of the producer’s; no independent sample is on record',
    ])
    expect(sentences(agency('2025-12-31', [], { independents: 0 }))).toEqual([])
  })
  it('asks who kept the samples whose custody nobody states', () => {
    expect(sentences(agency('2025-12-31', ['2025-04-01'], { withoutCustody: ['vale/A'] }))).toEqual([
      '1 of the agency’s 2 samples of vale has no statement of custody on record',
    ])
    expect(sentences(agency('2025-12-31', ['2025-04-01'], { withoutCustody: ['vale/A', 'vale/B'] }))).toEqual(
      ['None of the agency’s 2 samples of vale has a statement of custody on record'],
    )
  })
})
