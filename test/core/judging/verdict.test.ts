import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { bestClass, judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, history, index, judgeInWords, plannedIndex, result, setOf } from './fixture.ts'

const eitherAge: WrittenClause = {
  clause: 'activity',
  title: 'Activity, either age',
  'any-of': [
    {
      title: 'index at 7 d',
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('7 d'),
      'at-least': '75 %',
    },
    {
      title: 'index at 28 d',
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      'at-least': '75 %',
    },
  ],
}
const loi: WrittenClause = {
  clause: 'loi',
  title: 'Loss on ignition',
  property: 'loss-on-ignition',
  'at-most': '6.0 %',
}
const uniform: WrittenClause = {
  clause: 'uniform',
  title: 'Density, uniformity',
  property: 'density',
  'deviation-from': { preceding: 10 },
  relative: 'yes',
  'magnitude-at-most': '5 %',
}

describe('judge, groups', () => {
  it('judge gives members without their own id the id of the group and their place', () => {
    expect(
      judgeInWords(setOf([eitherAge]), evidenceOf([])).clauses[0]?.clauses?.map((clause) => clause.id),
    ).toEqual(['activity-1', 'activity-2'])
  })

  it('judge says which age was used, and marks only that member as deciding', () => {
    const verdict = judgeInWords(setOf([eitherAge]), evidenceOf([index('7 d', 72), index('28 d', 80)]))
    expect(verdict).toMatchObject({ outcome: 'meets', decidedBy: ['activity-2'] })
    expect(clauseOf(verdict, 'activity').reason).toBe(
      'met by index at 28 d; one is enough (index at 7 d: not met)',
    )
    expect(
      [clauseOf(verdict, 'activity'), clauseOf(verdict, 'activity-1'), clauseOf(verdict, 'activity-2')].map(
        (clause) => clause.decides,
      ),
    ).toEqual([true, false, true])
  })

  it('judge shows the earliest due date of a pending group', () => {
    const verdict = judgeInWords(
      setOf([eitherAge]),
      evidenceOf([], {
        planned: [
          plannedIndex('28 d', { due: readMoment('2026-04-29') }),
          plannedIndex('7 d', { due: readMoment('2026-04-08') }),
        ],
      }),
    )
    expect(clauseOf(verdict, 'activity')).toMatchObject({
      outcome: 'pending',
      due: '2026-04-08',
      reason: 'awaiting index at 7 d and index at 28 d',
    })
  })

  it('judge does not hide a failed route behind one that was never run', () => {
    expect(judgeInWords(setOf([eitherAge]), evidenceOf([index('7 d', 72)]))).toMatchObject({
      outcome: 'does-not-meet',
      decidedBy: ['activity-1'],
    })
  })

  it('judge holds all members of an all-of group, and leaves members for information out', () => {
    const both: WrittenClause = {
      clause: 'both',
      'all-of': [loi, { clause: 'so3', property: 'SO3', 'at-most': '5.0 %', information: 'yes' }],
    }
    const verdict = judgeInWords(setOf([both]), evidenceOf([result('loss-on-ignition', 2), result('SO3', 9)]))
    expect(verdict).toMatchObject({ outcome: 'meets', decidedBy: ['loi'] })
    expect(clauseOf(verdict, 'so3')).toMatchObject({ outcome: 'does-not-meet', decides: false })
  })

  it('judge nests groups and names the innermost clauses that decided', () => {
    const nested: WrittenClause = {
      clause: 'outer',
      'all-of': [
        { 'any-of': [loi, { clause: 'so3', property: 'SO3', 'at-most': '5.0 %' }] },
        { clause: 'moist', property: 'moisture', 'at-most': '3.0 %' },
      ],
    }
    const verdict = judgeInWords(
      setOf([nested]),
      evidenceOf([result('loss-on-ignition', 9), result('SO3', 9), result('moisture', 1)]),
    )
    expect(verdict).toMatchObject({ outcome: 'does-not-meet', decidedBy: ['loi', 'so3'] })
    expect(clauseOf(verdict, 'outer-1')).toMatchObject({ decides: true, combine: 'any-of' })
  })

  it('judge of a group whose members all stand aside is not applicable', () => {
    const group: WrittenClause = {
      clause: 'natural',
      'any-of': [{ ...loi, kinds: ['raw-natural-pozzolan'] }],
    }
    expect(judgeInWords(setOf([group]), evidenceOf([result('loss-on-ignition', 9)]))).toMatchObject({
      outcome: 'reported',
      clauses: [{ outcome: 'not-applicable', reason: 'no member applies' }],
    })
  })

  it('judge leaves the members of an optional group out until the purchaser asks for it', () => {
    const set = setOf([{ ...eitherAge, optional: 'yes' }])
    expect(judgeInWords(set, evidenceOf([index('7 d', 60)])).clauses[0]).toMatchObject({
      outcome: 'not-invoked',
    })
    expect(
      judgeInWords(set, evidenceOf([index('7 d', 60)], { requested: { trial: ['activity'] } })).outcome,
    ).toBe('does-not-meet')
  })
})

describe('judge, verdicts', () => {
  it('judge names what decided, and what is met so far', () => {
    const evidence = evidenceOf([result('loss-on-ignition', 2)], { planned: [plannedIndex('7 d')] })
    expect(judgeInWords(setOf([loi, eitherAge]), evidence).reasons[0]).toBe(
      'pending for 1 clause; meets the other one',
    )
  })

  it('judge says of a new source that uniformity is not yet evaluable', () => {
    const verdict = judgeInWords(
      setOf([loi, uniform]),
      evidenceOf([result('loss-on-ignition', 2), result('density', 2.4)]),
    )
    expect(verdict).toMatchObject({ outcome: 'insufficient-history', decidedBy: ['uniform'] })
    expect(verdict.reasons[0]).toBe(
      'meets all clauses that can be evaluated; uniformity cannot be evaluated yet',
    )
  })

  it('judge says that all clauses are met, and which route was used', () => {
    const evidence = evidenceOf([result('loss-on-ignition', 2), index('7 d', 75), result('density', 2.4)], {
      preceding: history('density', [2.4]),
    })
    expect(judgeInWords(setOf([loi, eitherAge, uniform]), evidence).reasons).toEqual([
      'meets all 3 clauses that apply',
      'Activity, either age: met by index at 7 d; one is enough (index at 28 d: not reported)',
    ])
  })

  it('judge says how far the set is met, then the failing clause, then what else is open', () => {
    const { outcome, reasons, decidedBy } = judgeInWords(
      setOf([loi, eitherAge, uniform]),
      evidenceOf([result('loss-on-ignition', 6.1), result('density', 2.4)]),
    )
    expect([outcome, decidedBy]).toEqual(['does-not-meet', ['loi']])
    expect(reasons).toEqual([
      'fails 1 of 3 clauses; the others are still open',
      'Loss on ignition: 6.1 % does not meet the limit, at most 6.0 %',
      'also not reported: Activity, either age',
      'also insufficient history: Density, uniformity',
    ])
  })

  it('judge says that an edition is superseded, and marks a judgement under unconfirmed limits as a trial', () => {
    const recalled = setOf([{ ...loi, basis: { memory: 'recalled' } }], { 'superseded-by': 'c618-19' })
    const verdict = judgeInWords(recalled, evidenceOf([result('loss-on-ignition', 2)]))
    expect(verdict.trial).toBe(true)
    expect(verdict.reasons.at(-1)).toBe('judged under edition 1, which is superseded by c618-19')
    const confirmed = setOf([{ ...loi, basis: { memory: 'recalled' } }], {
      confirmed: { by: 'A. Lindqvist', date: readMoment('2026-01-12'), edition: '1' },
    })
    expect(judgeInWords(confirmed, evidenceOf([])).trial).toBe(false)
  })

  it('judge shows no class under a set that has none', () => {
    expect(judgeInWords(setOf([loi]), evidenceOf([], { class: 'F' })).class).toBeNull()
    expect(judgeInWords(setOf([loi], { classes: ['F'] }), evidenceOf([], { class: 'F' })).class).toBe('F')
  })

  it('judge names the class accepted, wherever the clause on classes stands', () => {
    const classes: WrittenClause = {
      clause: 'class',
      'allowed-classes': ['F'],
      'accepted-as': [{ class: 'C', as: 'F', when: [{ property: 'CaO', 'at-most': '18.0 %' }] }],
    }
    const set = setOf([loi, classes], { classes: ['F', 'C'] })
    const results = [result('loss-on-ignition', 2), result('CaO', 10)]
    expect(judgeInWords(set, evidenceOf(results, { class: 'C' })).acceptedAs).toBe('F')
    const own = judge(set, evidenceOf(results, { class: 'F' }))
    expect(own).not.toHaveProperty('acceptedAs')
    expect(own).not.toHaveProperty('release')
  })

  it('judge gives plain data that survives being stored', () => {
    const verdict = judgeInWords(
      setOf([loi, eitherAge, uniform]),
      evidenceOf([result('loss-on-ignition', 2), index('7 d', 80)]),
    )
    expect(JSON.parse(JSON.stringify(verdict))).toEqual(verdict)
  })
})

describe('judge, release on early results', () => {
  const strict28: WrittenClause = {
    clause: 'sai',
    title: 'index at 28 d',
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    'at-least': '75 %',
  }
  const set = setOf([loi, strict28], {
    release: [{ clause: 'sai', with: { age: readAge('7 d'), 'at-least': '70 %' } }, { clause: 'loi' }],
  })
  const planned = [plannedIndex('28 d', { due: readMoment('2026-04-29') })]

  it('judge states what a release is conditional on while the verdict is pending', () => {
    const verdict = judgeInWords(
      set,
      evidenceOf([result('loss-on-ignition', 2), index('7 d', 70)], { planned }),
    )
    expect(verdict).toMatchObject({
      outcome: 'pending',
      release: 'conditional on index at 28 d, due 29\u00a0April 2026',
    })
  })

  it('judge releases nothing when the lesser demand is missed or not determined', () => {
    expect(
      judgeInWords(set, evidenceOf([result('loss-on-ignition', 2), index('7 d', 69)], { planned })).release,
    ).toBeUndefined()
    expect(
      judgeInWords(set, evidenceOf([result('loss-on-ignition', 2)], { planned })).release,
    ).toBeUndefined()
  })

  it('judge releases nothing once the verdict is no longer pending', () => {
    expect(
      judgeInWords(set, evidenceOf([result('loss-on-ignition', 2), index('7 d', 80), index('28 d', 80)]))
        .release,
    ).toBeUndefined()
    expect(
      judgeInWords(set, evidenceOf([result('loss-on-ignition', 9), index('7 d', 80)], { planned })),
    ).toMatchObject({ outcome: 'does-not-meet' })
  })
})

describe('bestClass', () => {
  const approved: WrittenClause = {
    ...loi,
    'at-most': { A: '2.0 %', B: '6.0 %' },
    approval: { 'at-most': '12.0 %', classes: ['B'], evidence: 'records' },
  }
  const approvals = [
    { from: readMoment('2026-01-01'), by: 'the agency', scope: 'paving', set: 'trial', clause: 'loi' },
  ]

  it('bestClass counts a class that is met by approval, or met but for a history', () => {
    const set = setOf([approved], { classes: ['A', 'B'], 'best-first': 'yes' })
    expect(bestClass(set, evidenceOf([result('loss-on-ignition', 9)], { approvals }))?.best).toBe('B')
    const young = setOf([uniform], { classes: ['A', 'B'], 'best-first': 'yes' })
    expect(bestClass(young, evidenceOf([result('density', 2.4)]))).toEqual({ best: 'A', next: null })
  })

  it('bestClass of a set without classes, or without an order of merit, is none', () => {
    const ordered = { ...setOf([loi]), bestFirst: true }
    expect([bestClass(ordered, evidenceOf([])), bestClass(setOf([loi]), evidenceOf([]))]).toEqual([
      null,
      null,
    ])
  })
})
