/** Results of mortars that a laboratory reports finished, judged like those that are recomputed, and marked. */
import { describe, expect, it } from 'vitest'
import { judgeThroughTheFrontDoor, mortarLot, reportOn, type TrialLot } from './front-door.ts'

const at = (age: string, more = '') =>
  `property: strength-activity-index, condition: cool, age: ${age} d, at-least: 75 %${more}`
const finished = (figure: string, age = '7', more = '') =>
  `strength-activity-index: { value: ${figure}, condition: cool, age: ${age} d${more} }`
/** The control reached 30.0 MPa at 7 d. */
const at7 = (strength: string, day = '12') =>
  `{ age: 7 d, tested: 2026-01-${day}T09:00, mean: ${strength}, of: 3 }`
const guarded = ', decision-rule: { guarded: 2, agreed-in: contract }'
/** A mortar with readings beside the finished figure of the same sample and laboratory. */
const both = (figure: string, ...strength: readonly string[]): TrialLot => ({
  ...mortarLot(...strength),
  analyses: [{ results: finished(figure), tested: '2026-01-12' }],
})

judgeThroughTheFrontDoor('a finished index', [
  {
    title: '84 % at the clause’s condition and age',
    clause: at('7'),
    lots: [finished('84 %')],
    outcome: 'meets',
  },
  { title: '74 % is under it', clause: at('7'), lots: [finished('74 %')], outcome: 'does-not-meet' },
  {
    title: 'of 7 d says nothing at 28 d, and nothing is awaited that was not planned',
    clause: at('28'),
    lots: [finished('84 %')],
    outcome: 'not-reported',
  },
  {
    title: 'of a list the figure of the clause’s age is judged',
    clause: at('28'),
    lots: [
      'strength-activity-index: [{ value: 74 %, condition: cool, age: 7 d }, { value: 84 %, condition: cool, age: 28 d }]',
    ],
    outcome: 'meets',
  },
  {
    title: 'excluded',
    clause: at('7'),
    lots: [finished('84 %', '7', ', excluded: wrong sand')],
    outcome: 'not-valid',
  },
  {
    title: 'without a stated uncertainty under a guarded rule',
    clause: at('7', guarded),
    lots: [finished('84 %')],
    outcome: 'inconclusive',
  },
  {
    title: '84 is 4.5 times the stated 2 points over 75, and the guard is 2 times',
    clause: at('7', guarded),
    lots: [finished('84 %', '7', ', standard-uncertainty: 2 percentage points')],
    outcome: 'meets',
  },
  {
    title: '84 is less than 2 times the stated 5 points over 75',
    clause: at('7', guarded),
    lots: [finished('84 %', '7', ', standard-uncertainty: 5 percentage points')],
    outcome: 'inconclusive',
  },
  {
    title: '90 against a mean of 80 % of two finished ones before it is 10 points off',
    clause:
      'property: strength-activity-index, condition: cool, age: 7 d, deviation-from: { preceding: 10 }, magnitude-at-most: 9 percentage points',
    lots: [finished('78 %'), finished('82 %'), finished('90 %')],
    outcome: 'does-not-meet',
  },
  {
    title: 'of 28 d before it is no preceding result of 7 d',
    clause:
      'property: strength-activity-index, condition: cool, age: 7 d, deviation-from: { preceding: 10 }, magnitude-at-most: 9 percentage points',
    lots: [finished('78 %', '28'), finished('90 %')],
    outcome: 'insufficient-history',
  },
  {
    title: 'a resistivity of its own unit',
    clause: 'property: bulk-resistivity, condition: cool, age: 28 d, at-least: 50 ohm.m',
    lots: ['bulk-resistivity: { value: 6.0 kohm.cm, condition: cool, age: 28 d }'],
    outcome: 'meets',
  },
  {
    title: 'water requirement at a modified condition is none of the usual one',
    clause: 'property: water-requirement, at-most: 105 %',
    lots: ['water-requirement: { value: 98 %, condition: cool }'],
    outcome: 'not-reported',
  },
])

judgeThroughTheFrontDoor('a finished index beside the readings of the same test', [
  {
    title: 'the readings give 27.0 of 30.0 MPa, 90 %, and stand',
    clause: at('7'),
    lots: [both('70 %', at7('27.0 MPa'))],
    outcome: 'meets',
  },
  {
    title: 'the readings give 20.0 of 30.0 MPa, 67 %, and stand',
    clause: at('7'),
    lots: [both('84 %', at7('20.0 MPa'))],
    outcome: 'does-not-meet',
  },
  {
    title: 'broken a day late the readings are not valid, and the figure does not undo that',
    clause: at('7'),
    lots: [both('84 %', at7('27.0 MPa', '13'))],
    outcome: 'not-valid',
  },
  {
    title: 'a finished figure of the 28 d that was planned has arrived',
    clause: at('28'),
    lots: [
      {
        ...mortarLot('{ age: 28 d }'),
        analyses: [{ results: finished('84 %', '28'), tested: '2026-02-02' }],
      },
    ],
    outcome: 'meets',
  },
])

judgeThroughTheFrontDoor('a clause that counts readings alone', [
  {
    title: 'a finished index is none',
    clause: at('7', ', from: readings'),
    lots: [finished('84 %')],
    outcome: 'not-reported',
  },
  {
    title: 'a mean without specimens is none',
    clause: at('7', ', from: readings'),
    lots: [mortarLot(at7('27.0 MPa'))],
    outcome: 'not-reported',
  },
  {
    title: 'the strength of two cubes is one',
    clause: 'property: compressive-strength, condition: cool, age: 7 d, from: readings, at-least: 25.0 MPa',
    lots: [mortarLot('{ age: 7 d, tested: 2026-01-12T09:00, specimens: { a: 26.0 MPa, b: 28.0 MPa } }')],
    outcome: 'meets',
  },
])

/** The clause’s reason, the results of the property and the findings of one lot. */
function told(lot: string | TrialLot, clause = at('7')) {
  const { verdicts, results, findings } = reportOn({ clause, lots: [lot] })
  return {
    reason: verdicts[0]?.clauses[0]?.reason,
    results: results
      .filter(({ key }) => key.startsWith('strength-activity-index'))
      .map(({ value, finished: isFinished, valid }) => ({ value, finished: isFinished, valid })),
    findings: findings.map(({ check, severity, sentence }) => `${check} (${severity}): ${sentence}`),
  }
}

describe('what is said of a finished index', () => {
  it('is marked as reported, and a figure far from its limit needs no more', () => {
    expect(told(finished('84 %'))).toEqual({
      reason: '84 % meets the limit, at least 75 %; as reported by the laboratory, not recomputed',
      results: [{ value: 84, finished: true, valid: true }],
      findings: [],
    })
  })

  it('says where whole per cents leave both sides of the limit open: 75 stands for 74.5 to 75.5', () => {
    expect(told(finished('75 %')).reason).toBe(
      '75 % meets the limit, at least 75 %; as reported by the laboratory, not recomputed; as written it stands for anything from 74.5 % to 75.5 %, which lies on both sides of the limit',
    )
    expect(told(finished('76 %')).reason).not.toContain('both sides')
    expect(told(finished('74.6 %'), at('7').replace('75 %', '74.6 %')).reason).toContain('74.55 % to 74.65 %')
  })

  it('agrees with its readings within half a unit: 90 beside 90.3', () => {
    // 27.1 / 30.0 = 90.33 %.
    expect(told(both('90 %', at7('27.1 MPa')))).toEqual({
      reason: '90 % (90.333 before rounding) meets the limit, at least 75 %',
      results: [
        { value: 90, finished: true, valid: false },
        { value: 90.33333333333333, finished: false, valid: true },
      ],
      findings: [
        'finished-beside-readings (information): Quay reports 90 % for the 7 d strength activity index (20 %, 23 °C) of sample C of lot L1 of Trial, and the readings of that test give 90.3 %, which is the value judged',
      ],
    })
  })

  it('warns where they differ, or where the readings are not valid', () => {
    expect(told(both('84 %', at7('27.0 MPa'))).findings).toEqual([
      'finished-beside-readings (warning): Quay reports 84 % for the 7 d strength activity index (20 %, 23 °C) of sample C of lot L1 of Trial, and the readings of that test give 90.0 %, which is the value judged',
    ])
    expect(told(both('84 %', at7('27.0 MPa', '13'))).findings).toEqual([
      'finished-beside-readings (warning): Quay reports 84 % for the 7 d strength activity index (20 %, 23 °C) of sample C of lot L1 of Trial, and the readings of that test, which are on record, give no valid value',
    ])
  })

  it('is said where it stands among recomputed ones: of 90 % and another laboratory’s 84 % the worst', () => {
    const lot = {
      ...mortarLot(at7('27.0 MPa')),
      analyses: [{ results: finished('84 %'), tested: '2026-01-12', laboratory: 'dock' as const }],
    }
    expect(told(lot).reason).toBe(
      '84 % meets the limit, at least 75 %; worst of 2 results; 1 of these 2 is as reported by the laboratory, not recomputed',
    )
  })

  it('asks for readings in words', () => {
    expect(told(finished('84 %'), at('7', ', from: readings')).reason).toBe(
      'only results computed from the readings of specimens count, and those on record are as reported by the laboratory',
    )
  })
})
