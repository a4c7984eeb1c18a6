import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import type { ClauseOutcome } from '../../../src/core/criteria/verdict.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { frontView } from '../../../src/edition/views/front.ts'
import type { Site } from '../../../src/records/schema/loaded-records.ts'
import { finding, plannedTest, revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

function clause(
  property: ClauseOutcome['property'],
  value: number,
  outcome: ClauseOutcome['outcome'],
): ClauseOutcome {
  return {
    id: `${property}`,
    outcome,
    decides: false,
    information: false,
    ...(property === undefined ? {} : { property }),
    kind: 'value',
    value,
    compared: value,
    unit: '%',
    decimals: 1,
    limit: { operator: 'at-least', values: [75], unit: '%', written: ['75 %'], layer: 'plain' },
    result: null,
    reasons: [{ code: 'no-result', params: {} }],
  }
}

const index = clause('strength-activity-index', 91.26, 'meets')
const ignition = clause('loss-on-ignition', 7.2, 'does-not-meet')
const plain = { id: 'plain', title: 'Plain set', edition: '2', layers: [] } as unknown as Criterion

function front(lots: Parameters<typeof tinyEdition>[1]) {
  const points = lots.map(({ id }) => ({
    lot: id,
    at: readMoment('2026-03-05'),
    value: 90,
    status: 'valid' as const,
  }))
  const series = [{ property: 'strength-activity-index' as const, unit: '%', decimals: 0, points }]
  return frontView(
    tinyEdition([tinySource('ash', { series })], lots, { criteria: new Map([['plain', plain]]) }),
  )
}

const certified = (id: string, clauses: readonly ClauseOutcome[], outcome: ClauseOutcome['outcome']) =>
  tinyLot(id, {
    state: 'complete',
    verdicts: [verdict('plain', outcome, { clauses })],
    revisions: [revision(0, '2026-03-10')],
  })

describe('frontView', () => {
  it('takes the last lot with a certificate in force, past drafts and withdrawn ones', () => {
    const { sources } = front([
      certified('ash/1', [index], 'meets'),
      { ...certified('ash/2', [index], 'meets'), state: 'withdrawn' },
      tinyLot('ash/3', { findings: [finding('ash/3')] }),
    ])
    expect(sources[0]).toMatchObject({ last: { id: 'ash/1' }, lotCount: 3, openFindings: 1 })
    expect(sources[0]?.governing?.points).toHaveLength(3)
  })

  it('says nothing of questions where findings are not published', () => {
    const asked = tinyLot('ash/1', { findings: [finding('ash/1')] })
    const glance = (publish: readonly string[]) => {
      const site = { title: 'Register', units: 'SI', criteria: [], publish, drafts: 'yes' } as unknown as Site
      const shown = forAudience(tinyEdition([tinySource('ash')], [asked], { site }), 'public')
      return frontView(shown).sources[0]?.openFindings
    }
    expect([glance([]), glance(['findings'])]).toEqual([null, 1])
  })

  it('shows the clause that is not met, else an activity index that is, looking into groups', () => {
    const group: ClauseOutcome = { ...index, kind: 'group', clauses: [index] }
    const shown = (clauses: readonly ClauseOutcome[], outcome: ClauseOutcome['outcome']) =>
      front([certified('ash/1', clauses, outcome)]).sources[0]?.governing
    expect(shown([ignition, group], 'does-not-meet')).toMatchObject({
      title: 'Loss on ignition',
      strip: { value: 7.2 },
    })
    expect(shown([{ ...ignition, outcome: 'meets' }, group], 'meets')).toMatchObject({
      title: 'Strength activity index',
      printed: '91.3\u00a0%',
      lotNumber: null,
    })
  })

  it('falls back on an earlier lot for its result, and names it', () => {
    const { sources } = front([certified('ash/1', [index], 'meets'), certified('ash/2', [], 'meets')])
    expect(sources[0]).toMatchObject({ last: { id: 'ash/2' }, governing: { lotNumber: '1' } })
  })

  it('says state and verdict together of each source, and lists what is overdue, the longest missing first', () => {
    const late = (id: string, day: number) =>
      ({
        ...certified(id, [index], 'meets'),
        state: 'provisional',
        planned: [plannedTest(`2026-03-${day}`, `2026-04-0${day - 20}`)],
      }) as const
    const { sources, overdue } = front([late('ash/1', 28), late('ash/2', 25)])
    expect(sources[0]).toMatchObject({
      overdue: 2,
      verdict: {
        set: 'Plain set, edition 1',
        standing: {
          mark: 'meets-so-far',
          text: 'Meets so far; 28 d strength activity index, modified (hot) overdue since 5 April 2026',
        },
      },
    })
    expect(overdue.map(({ lot, text }) => `${lot.text}: ${text}`)).toEqual([
      '2: 28 d strength activity index, modified (hot), due 25\u00a0March 2026, overdue since 5\u00a0April 2026',
      '1: 28 d strength activity index, modified (hot), due 28\u00a0March 2026, overdue since 8\u00a0April 2026',
    ])
  })

  it('has neither verdict nor result for a source without lots', () => {
    expect(front([]).sources[0]).toMatchObject({ last: null, verdict: null, governing: null })
  })

  it('lists ten certificates by their newest revision, the latest first, and no draft', () => {
    const lots = Array.from({ length: 12 }, (_, place) =>
      tinyLot(`ash/${place}`, {
        state: 'complete',
        revisions: [revision(0, `2026-03-${String(10 + place)}`)],
      }),
    )
    const { newest } = front([...lots, tinyLot('ash/draft')])
    expect(newest.map(({ id }) => id)).toEqual(
      [11, 10, 9, 8, 7, 6, 5, 4, 3, 2].map((place) => `ash/${place}`),
    )
    expect(newest[0]).toMatchObject({
      source: 'Ash of ash',
      issued: { date: readMoment('2026-03-21') },
      standing: { text: 'Not judged' },
    })
  })

  it('lists a certificate withdrawn since as withdrawn', () => {
    const lot = certified('ash/1', [index], 'meets')
    const { newest } = front([{ ...lot, state: 'withdrawn', withdrawn: readMoment('2026-03-20') }])
    expect(newest[0]?.standing).toMatchObject({
      mark: 'withdrawn',
      text: 'Withdrawn 20 March 2026; was: meets',
    })
  })
})
