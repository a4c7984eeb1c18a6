/** What samples serve: which of them a clause judges and counts, and what it says of the others. */
import { describe, expect, it } from 'vitest'
import { judgeThroughTheFrontDoor, reportOn, type TrialAnalysis, type TrialLot } from './front-door.ts'

const LOSS = 'property: loss-on-ignition, at-most: 6.0 %'
const loss = (percent: string, sample = 'C'): TrialAnalysis => ({
  sample,
  results: `loss-on-ignition: ${percent} %`,
})

/** A lot with a regular sample a day, the last on the day of sampling; residues in per cent, oldest first. */
function regular(on: string, residues: readonly number[], more: Partial<TrialLot> = {}): TrialLot {
  const days = residues.map((_, place) => dayBefore(on, residues.length - 1 - place))
  return {
    on,
    samples: days.map((day, place) => `{ id: R${place + 1}, kind: grab, duty: regular, on: ${day}T07:00 }`),
    analyses: residues.map((residue, place) => ({
      sample: `R${place + 1}`,
      results: `residue-45um: ${residue.toFixed(1)} %`,
      tested: dayBefore(on, -2),
    })),
    ...more,
  }
}

function dayBefore(date: string, days: number): string {
  return new Date(Date.parse(date) - days * 86_400_000).toISOString().slice(0, 10)
}

const UNIFORM =
  'property: residue-45um, duty: regular, deviation-from: { preceding: 10 }, magnitude-at-most: 5 percentage points'

/** Two analyses of one composite, the second a day after the first. */
const twice = (first: string, last: string, on: string): TrialLot => ({
  on,
  analyses: [
    { results: `residue-45um: ${first} %`, tested: dayBefore(on, -2) },
    { results: `residue-45um: ${last} %`, tested: dayBefore(on, -3) },
  ],
})
const FROM_LOTS = UNIFORM.replace(' duty: regular,', '')

judgeThroughTheFrontDoor('a preceding lot with two valid results', [
  {
    title:
      'counts with the one tested last, 27.0 less 22.0 %, and neither with 17.0 nor with the mean of both',
    clause: FROM_LOTS,
    lots: [twice('17.0', '22.0', '2026-02-19'), 'residue-45um: 27.0 %'],
    outcome: 'meets',
  },
  {
    title: 'counts with the one tested last where it is the better one, 27.0 less 17.0 %',
    clause: FROM_LOTS,
    lots: [twice('27.0', '17.0', '2026-02-19'), 'residue-45um: 27.0 %'],
    outcome: 'does-not-meet',
  },
  {
    title: 'counts once, 28.0 less (17.0 + 29.0) / 2 %, where three results would have a mean of 21.0 %',
    clause: FROM_LOTS,
    lots: [twice('17.0', '17.0', '2026-02-09'), 'residue-45um: 29.0 %', 'residue-45um: 28.0 %'],
    outcome: 'meets',
  },
  {
    title: 'is told apart from the judged lot, whose worst result is judged, 28.0 less 22.0 %',
    clause: FROM_LOTS,
    lots: ['residue-45um: 22.0 %', twice('28.0', '22.0', '2026-03-01')],
    outcome: 'does-not-meet',
  },
])

judgeThroughTheFrontDoor('the samples that a clause judges', [
  {
    title: 'without a duty the composite, 1.84 %, and not the grab with 6.3 %',
    clause: LOSS,
    lots: [{ analyses: [loss('1.84'), loss('6.3', 'G')] }],
    outcome: 'meets',
  },
  {
    title: 'of the regular duty the grab with 6.3 %',
    clause: `${LOSS}, duty: regular`,
    lots: [{ analyses: [loss('1.84'), loss('6.3', 'G')] }],
    outcome: 'does-not-meet',
  },
  {
    title: 'a composite of increments that serves as a regular sample',
    clause: `${LOSS}, duty: regular`,
    lots: [
      {
        samples: ['{ id: D, kind: composite, duty: regular, on: 2026-03-01 }'],
        analyses: [loss('1.84', 'D'), loss('6.3')],
      },
    ],
    outcome: 'meets',
  },
  {
    title: 'the worst of three regular samples, 6.1 %',
    clause: `${LOSS}, duty: regular`,
    lots: [
      {
        samples: ['{ id: R1, kind: grab, on: 2026-02-27 }', '{ id: R2, kind: grab, on: 2026-02-28 }'],
        analyses: [loss('2.0', 'R1'), loss('6.1', 'R2'), loss('3.0', 'G')],
      },
    ],
    outcome: 'does-not-meet',
  },
  {
    title: 'the mean of 2.0, 6.1 and 3.0 % is 3.7 %',
    clause: `${LOSS}, duty: regular, several: mean`,
    lots: [
      {
        samples: ['{ id: R1, kind: grab, on: 2026-02-27 }', '{ id: R2, kind: grab, on: 2026-02-28 }'],
        analyses: [loss('2.0', 'R1'), loss('6.1', 'R2'), loss('3.0', 'G')],
      },
    ],
    outcome: 'meets',
  },
  {
    title: 'of the composite duty none is tested',
    clause: `${LOSS}, duty: composite`,
    lots: [{ analyses: [loss('1.84', 'G')] }],
    outcome: 'not-reported',
  },
  {
    title: 'a verification sample is never judged',
    clause: LOSS,
    lots: [
      {
        samples: ['{ id: V, kind: grab, duty: verification, on: 2026-03-01 }'],
        analyses: [loss('1.84', 'V')],
      },
    ],
    outcome: 'not-reported',
  },
])

judgeThroughTheFrontDoor('uniformity over regular samples', [
  {
    // Before R3 stand 20, 21 and R1, R2 at 22 and 25: their mean is 22.0, and 27 is 5.0 over it.
    title: 'each sample against those before it, its own lot’s among them: 27.0 is 5.0 over the mean of 22.0',
    clause: UNIFORM,
    lots: [regular('2026-02-19', [20, 21]), regular('2026-03-01', [22, 25, 27])],
    outcome: 'meets',
  },
  {
    title: '27.1 is 5.1 over it',
    clause: UNIFORM,
    lots: [regular('2026-02-19', [20, 21]), regular('2026-03-01', [22, 25, 27.1])],
    outcome: 'does-not-meet',
  },
  {
    // The lots' own means, 20.5 and 25.1, would be 4.6 apart; so would the last samples be of single lots.
    title: 'a sample in the middle of the lot is judged as well: 27.1 over 20, 21 and 22',
    clause: UNIFORM,
    lots: [regular('2026-02-19', [20, 21]), regular('2026-03-01', [22, 27.1, 23])],
    outcome: 'does-not-meet',
  },
  {
    // Before R1 the mean of 10 and 20 is 15, and 20 is 5.0 over it; before R2 stand 20 and 20, no longer 10.
    title: 'so many preceding samples as the clause says, and no more: 25 is 5.0 over 20 and 20',
    clause: UNIFORM.replace('10', '2'),
    lots: [regular('2026-02-19', [10, 20]), regular('2026-03-01', [20, 25])],
    outcome: 'meets',
  },
  {
    title: 'the first sample of a source has none before it, and its lot is judged on the others',
    clause: UNIFORM,
    lots: [regular('2026-03-01', [22])],
    outcome: 'insufficient-history',
  },
  {
    // Begun anew on 26 February: before R3 stand only R1 and R2 of its own lot, with the mean 23.
    title: 'the series begins anew at an event',
    clause: UNIFORM,
    source: 'events: [{ date: 2026-02-27, kind: fuel-change, title: New coal, restarts-series: yes }]',
    lots: [regular('2026-02-19', [10, 10]), regular('2026-03-01', [22, 24, 28])],
    outcome: 'insufficient-history',
  },
])

judgeThroughTheFrontDoor('sampling by duty', [
  {
    // 2,500 t and seven regular samples: 357 t each.
    title: 'seven regular samples of 2,500 t are one for each 357 t',
    clause: 'sampling: { properties: [residue-45um], every: 400 t, duty: regular }',
    lots: [regular('2026-03-01', [20, 20, 20, 20, 20, 20, 20], { tonnes: 2500 })],
    outcome: 'meets',
  },
  {
    title: 'six are one for each 417 t',
    clause: 'sampling: { properties: [residue-45um], every: 400 t, duty: regular }',
    lots: [regular('2026-03-01', [20, 20, 20, 20, 20, 20], { tonnes: 2500 })],
    outcome: 'does-not-meet',
  },
  {
    title: 'none of them serves as a composite',
    clause: 'sampling: { properties: [residue-45um], every: 400 t, duty: composite }',
    lots: [regular('2026-03-01', [20, 20, 20, 20, 20, 20, 20], { tonnes: 2500 })],
    outcome: 'does-not-meet',
  },
])

describe('a sample that is not judged and would not meet the limit', () => {
  const lot = { analyses: [loss('1.84'), loss('6.3', 'G')] }

  it('stands beside the limit and is a finding', () => {
    const { verdicts, findings } = reportOn({ clause: LOSS, lots: [lot] })
    expect(verdicts[0]?.clauses[0]).toMatchObject({
      reason:
        '1.8 % (1.84 before rounding) meets the limit, at most 6.0 %; grab G at 6.3 % would not meet the limit',
      note: 'grab G at 6.3 % would not meet the limit',
      others: [{ sample: 'G', sampleKind: 'grab', duty: 'regular', value: 6.3, outcome: 'does-not-meet' }],
    })
    expect(findings.filter(({ check }) => check === 'other-sample-fails')).toMatchObject([
      {
        severity: 'warning',
        sentence:
          'Grab G of lot L1 of Trial gave 6.3 % for loss on ignition, which would not meet the limits of 4 clauses; the lot is judged on another sample',
        evidence: [
          'Trial, edition 1: Loss on ignition, at most 6.0 %',
          'Trial, edition 1: Loss on ignition, at most 6.0 %',
          'Trial, edition 1: Loss on ignition, at most 6.0 %',
          'Trial, edition 1: Loss on ignition, at most 6.0 %',
        ],
      },
    ])
  })

  it('is nothing where it would meet it, or where the lot fails anyhow', () => {
    for (const analyses of [
      [loss('1.84'), loss('5.9', 'G')],
      [loss('6.2'), loss('6.3', 'G')],
    ])
      expect(reportOn({ clause: LOSS, lots: [{ analyses }] }).findings).toEqual([])
  })

  it('is no finding of a clause for information', () => {
    const { verdicts, findings } = reportOn({ clause: `${LOSS}, information: yes`, lots: [lot] })
    expect(verdicts[0]?.clauses[0]).toHaveProperty('note')
    expect(findings).toEqual([])
  })
})
