import { describe, expect, it } from 'vitest'
import { OUTCOMES, type Outcome } from '../../src/core/criteria/outcome.ts'
import { readAge } from '../../src/core/measure/age.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import {
  everyMark,
  certificateStateWords,
  lotStanding,
  markWords,
  type NamedTest,
  type StandingFacts,
  standingCounts,
  withdrawnNotCounted,
} from '../../src/words/standing.ts'

const due: NamedTest = {
  property: 'strength-activity-index',
  age: readAge('28 d'),
  due: readMoment('2026-07-04T09:20'),
  conditionName: null,
}
const late: NamedTest = {
  ...due,
  due: readMoment('2026-01-28'),
  overdueSince: readMoment('2026-02-04T09:20'),
}
const hot = 'modified (50 %, 50 °C, w/cm 0.485)'
const STATES = ['draft', 'provisional', 'complete', 'withdrawn', 'superseded'] as const
const AWAITED = { nothing: [], due: [due], overdue: [late] } as const

const textOf = (
  state: StandingFacts['state'],
  outcome: Outcome | null,
  awaited: readonly NamedTest[] = [],
  withdrawn?: string,
) =>
  lotStanding({
    state,
    outcome,
    awaited,
    ...(withdrawn === undefined ? {} : { withdrawn: readMoment(withdrawn) }),
  }).text

/** Outcome; in force with nothing, something and something overdue awaited; never issued; withdrawn. */
const DUE = '28 d strength activity index due 4 July 2026'
const LATE = '28 d strength activity index overdue since 4 February 2026'
const TABLE: readonly (readonly [Outcome | null, string, string, string, string])[] = [
  ['meets', 'Meets', 'Meets so far', 'would meet', 'meets'],
  [
    'meets-by-approval',
    'Meets by approval',
    'Meets by approval so far',
    'would meet by approval',
    'meets by approval',
  ],
  ['does-not-meet', 'Does not meet', 'Does not meet', 'would not meet', 'does not meet'],
  ['inconclusive', 'Inconclusive', 'Inconclusive', 'would be inconclusive', 'inconclusive'],
  ['pending', 'Pending', 'Pending', 'pending', 'pending'],
  [
    'not-reported',
    'Required results not reported',
    'Required results not reported',
    'required results not reported',
    'required results not reported',
  ],
  [
    'insufficient-history',
    'Meets all that can be evaluated',
    'Meets all that can be evaluated',
    'would meet all that can be evaluated',
    'meets all that can be evaluated',
  ],
  ['not-valid', 'A test is not valid', 'A test is not valid', 'a test is not valid', 'a test is not valid'],
  ['not-applicable', 'No clause applies', 'No clause applies', 'no clause applies', 'no clause applies'],
  [
    'not-invoked',
    'Nothing was requested',
    'Nothing was requested',
    'nothing was requested',
    'nothing was requested',
  ],
  [
    'reported',
    'Reported, no limit applies',
    'Reported, no limit applies',
    'reported, no limit applies',
    'reported, no limit applies',
  ],
  [null, 'Not judged', 'Not judged', 'not judged', 'not judged'],
]

describe('lotStanding', () => {
  it('says that a set has no class for the lot in place of missing results', () => {
    const of = (state: StandingFacts['state']) =>
      lotStanding({ state, outcome: 'not-reported', noClass: true, awaited: [] }).text
    expect(STATES.map(of)).toEqual([
      'Draft, never issued; no class for this lot',
      'No class for this lot; certificate still provisional',
      'No class for this lot',
      'Withdrawn; was: no class for this lot',
      'Superseded by a later revision; was: no class for this lot',
    ])
  })

  it('says where nothing was evaluated, so that nothing is met', () => {
    const of = (state: StandingFacts['state']) =>
      lotStanding({ state, outcome: 'insufficient-history', unevaluated: true, awaited: [] }).text
    expect(of('draft')).toBe('Draft, never issued; nothing can be evaluated yet')
    expect(of('complete')).toBe('Nothing can be evaluated yet')
  })

  it('says of a lot whose other age is only late that it does not meet so far, and that the age can still meet', () => {
    const of = (state: StandingFacts['state'], ...awaited: NamedTest[]) =>
      lotStanding({ state, outcome: 'does-not-meet', soFar: true, awaited })
    expect(of('provisional', late)).toMatchObject({
      text: `Does not meet on the results so far; ${LATE}; it can still meet the clause`,
      brief: 'does not meet on the results so far (result overdue)',
      mark: 'does-not-meet',
    })
    expect(of('draft', late, { ...late, age: readAge('7 d') }, due).text).toBe(
      `Draft, never issued; would not meet on the results so far; 28 d strength activity index and 1 other result overdue since 4 February 2026; an overdue result can still meet the clause; ${DUE}`,
    )
    expect(of('withdrawn', late).text).toBe('Withdrawn; was: does not meet on the results so far')
  })

  it('has a row here for every outcome', () => {
    expect(TABLE.flatMap(([outcome]) => outcome ?? [])).toEqual([...OUTCOMES])
  })

  it.each(TABLE)('says of %s in every state what holds', (outcome, whole, open, would, was) => {
    expect(textOf('complete', outcome)).toBe(whole)
    expect(textOf('complete', outcome, [due])).toBe(`${open}; ${DUE}`)
    expect(textOf('complete', outcome, [late])).toBe(`${open}; ${LATE}`)
    const isMet = outcome === 'meets' || outcome === 'meets-by-approval'
    const allIn = isMet ? `${whole} with all results in` : open
    expect(textOf('provisional', outcome)).toBe(`${allIn}; certificate still provisional`)
    expect(textOf('provisional', outcome, [due])).toBe(`${open}; ${DUE}`)
    expect(textOf('provisional', outcome, [late])).toBe(`${open}; ${LATE}`)
    const soFar = isMet ? `${would} so far` : would
    expect(textOf('draft', outcome)).toBe(`Draft, never issued; ${would}`)
    expect(textOf('draft', outcome, [due])).toBe(`Draft, never issued; ${soFar}; ${DUE}`)
    expect(textOf('draft', outcome, [late])).toBe(`Draft, never issued; ${soFar}; ${LATE}`)
    expect(textOf('superseded', outcome, [late])).toBe(`Superseded by a later revision; was: ${was}`)
    expect(textOf('withdrawn', outcome, [due, late])).toBe(`Withdrawn; was: ${was}`)
    expect(textOf('withdrawn', outcome, [], '2026-03-03')).toBe(`Withdrawn 3 March 2026; was: ${was}`)
  })

  it('begins with “meets”, and has its mark, only for a certificate in force with nothing awaited', () => {
    for (const state of STATES)
      for (const outcome of [...OUTCOMES, null])
        for (const [what, awaited] of Object.entries(AWAITED)) {
          const { mark, head, text } = lotStanding({ state, outcome, awaited })
          const plain = state === 'complete' && outcome === 'meets' && what === 'nothing'
          expect(
            [text === 'Meets', head === 'Meets', mark === 'meets'],
            `${state} ${outcome} ${what}`,
          ).toEqual([plain, plain, plain])
          // Praise of the certificate beside a lot that fails would be read as praise of the lot.
          expect(text).not.toMatch(/complete|good|valid\b(?<!not valid)/i)
        }
  })

  it('marks a lot without a certificate in force as such, whatever its outcome', () => {
    const markOf = (state: StandingFacts['state']) =>
      OUTCOMES.map((outcome) => lotStanding({ state, outcome, awaited: [] }).mark)
    expect(new Set(markOf('draft'))).toEqual(new Set(['draft']))
    expect(new Set([...markOf('withdrawn'), ...markOf('superseded')])).toEqual(new Set(['withdrawn']))
    expect(lotStanding({ state: 'provisional', outcome: 'meets', awaited: [due] }).mark).toBe('meets-so-far')
    expect(lotStanding({ state: 'provisional', outcome: 'does-not-meet', awaited: [due] }).mark).toBe(
      'does-not-meet',
    )
  })

  it('names the first result of each kind with its condition where it is not the standard’s, and counts the others', () => {
    const modified = { ...due, conditionName: hot }
    expect(textOf('provisional', 'pending', [late, late, modified, due, due])).toBe(
      `Pending; 28 d strength activity index and 1 other result overdue since 4 February 2026; 28 d strength activity index, ${hot} and 2 other results due 4 July 2026`,
    )
  })

  it('gives no date to results that have another than the first', () => {
    const laterDue = { ...due, due: readMoment('2026-08-30') }
    const laterLate = { ...late, overdueSince: readMoment('2026-02-05') }
    expect(textOf('provisional', 'meets', [laterLate, late, due, due, laterDue])).toBe(
      'Meets so far; 28 d strength activity index overdue since 4 February 2026 (and 1 other result since a later date); 28 d strength activity index due 4 July 2026 (and 2 other results later)',
    )
  })

  it('is late only where a result of a lot not withdrawn is overdue', () => {
    const lateOf = (state: StandingFacts['state'], ...awaited: NamedTest[]) =>
      lotStanding({ state, outcome: 'meets', awaited }).late
    expect(STATES.filter((state) => lateOf(state, due, late))).toEqual(['draft', 'provisional', 'complete'])
    expect(STATES.filter((state) => lateOf(state, due))).toEqual([])
  })

  it('leaves the results awaited out of its brief form, but not that one is overdue, nor what it means', () => {
    const briefOf = (state: StandingFacts['state'], outcome: Outcome, test = late) =>
      lotStanding({ state, outcome, awaited: [test] }).brief
    expect([
      briefOf('provisional', 'meets', due),
      briefOf('draft', 'meets', due),
      briefOf('provisional', 'meets'),
      briefOf('complete', 'does-not-meet'),
      briefOf('draft', 'meets'),
      briefOf('withdrawn', 'meets'),
      briefOf('superseded', 'pending'),
    ]).toEqual([
      'meets so far',
      'draft (would meet so far)',
      'meets so far (result overdue)',
      'does not meet (result overdue)',
      'draft (would meet so far; result overdue)',
      'withdrawn (was: meets)',
      'superseded by a later revision (was: pending)',
    ])
  })
})

describe('standingCounts', () => {
  it('counts lots that stand alike in the order of the marks, withdrawn ones by what they were', () => {
    const standing = (state: StandingFacts['state'], outcome: Outcome | null) =>
      lotStanding({ state, outcome, awaited: [] })
    expect(
      standingCounts([
        standing('complete', null),
        standing('withdrawn', 'meets'),
        standing('complete', 'does-not-meet'),
        standing('complete', 'meets'),
        standing('withdrawn', 'does-not-meet'),
        standing('complete', 'meets'),
      ]).map(({ standing: { brief }, count }) => `${count} ${brief}`),
    ).toEqual([
      '2 meets',
      '1 does not meet',
      '1 withdrawn (was: meets)',
      '1 withdrawn (was: does not meet)',
      '1 not judged',
    ])
  })
})

describe('withdrawnNotCounted', () => {
  it('says how many, and nothing where there is none', () => {
    expect([0, 1, 2].map(withdrawnNotCounted)).toEqual([
      null,
      '1 withdrawn lot not counted',
      '2 withdrawn lots not counted',
    ])
  })
})

describe('markWords', () => {
  it('names every mark once, each in other words', () => {
    const marks = everyMark()
    expect(new Set(marks.map(markWords)).size).toBe(marks.length)
    expect(new Set(marks)).toEqual(new Set([...OUTCOMES, 'meets-so-far', 'draft', 'withdrawn']))
  })
})

describe('certificateStateWords', () => {
  it('says that planned tests are reported only where a mortar is on record', () => {
    expect([certificateStateWords('complete', 1), certificateStateWords('complete', 0)]).toEqual([
      'all planned test ages reported',
      'no mortar on record, so no later result is due',
    ])
    expect(certificateStateWords('withdrawn', 0)).toBe('withdrawn')
  })
})
