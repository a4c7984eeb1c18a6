/** An agency's results beside the producer's, from the record to the report; no outcome depends on them. */
import { describe, expect, it } from 'vitest'
import { reportOn, type TrialLot } from './front-door.ts'

const SPLIT = '{ id: S, kind: split, of: C }'

function lot(own: string, agencys: string): TrialLot {
  return {
    analyses: own,
    samples: [SPLIT],
    more: `verification: [{ kind: split, laboratory: dock, sample: S, tested: 2026-03-05, results: { ${agencys} } }]`,
  }
}

function findings(clause: string, one: TrialLot): string[] {
  return reportOn({ clause, lots: [one] }).findings.map(
    ({ severity, check, sentence }) => `${severity} ${check}: ${sentence.replaceAll(/\s/g, ' ')}`,
  )
}

describe('an agency’s split', () => {
  it('lies on the other side of the limit: 6.00 % beside 6.55 %', () => {
    expect(
      findings(
        'property: loss-on-ignition, at-most: 6.0 %',
        lot('loss-on-ignition: 6.00 %', 'loss-on-ignition: 6.55 %'),
      ),
    ).toEqual([
      'warning agency-other-side: The loss on ignition of lot L1 of Trial is 6.00 % by the producer, which meets the limit of at most 6.0 %, and 6.55 % by the agency’s split S, which would not',
    ])
  })

  it('lies on the same side once rounded as the clause compares', () => {
    const clause = 'property: loss-on-ignition, at-most: 6.0 %'
    expect(findings(clause, lot('loss-on-ignition: 6.00 %', 'loss-on-ignition: 6.04 %'))).toEqual([])
  })

  it('is a finished index at its own condition and age', () => {
    const clause = 'property: strength-activity-index, condition: cool, age: 7 d, at-least: 75 %'
    const index = (figure: string, age = '7 d') =>
      `strength-activity-index: { value: ${figure}, condition: cool, age: ${age} }`
    expect(findings(clause, lot(index('77 %'), index('73 %')))).toHaveLength(1)
    expect(findings(clause, lot(index('77 %'), index('73 %', '28 d')))).toEqual([])
  })
})
