import { expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { type CheckedFaults, type CheckedScope, checkedLots } from '../../../src/edition/views/check-lots.ts'
import { plannedTest, revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const tested = { role: 'producer', age: readAge('28 d'), tested: readMoment('2026-02-27') } as Result
const NO_FAULT: CheckedFaults = { unjudged: [], blocks: () => [], left: () => null }

/** Two lots that need nothing, one overdue, one that fails before it is complete, one to issue. */
function lines(faults: CheckedFaults = NO_FAULT, scope: CheckedScope = {}): string[] {
  const lot = (name: string, sampled: string, more: object) =>
    tinyLot(`ash/${name}`, { number: name, sampled: readMoment(sampled), planned: [], ...more } as never)
  const complete = { state: 'complete', revisions: [revision(0, '2026-02-20')] }
  const lots = [
    lot('A-1', '2026-01-01', { ...complete, verdicts: [verdict('plain', 'meets')] }),
    lot('A-2', '2026-01-02', {
      state: 'provisional',
      revisions: [revision(0, '2026-01-20')],
      verdicts: [verdict('plain', 'not-reported')],
      planned: [plannedTest('2026-02-01', '2026-02-08')],
    }),
    lot('A-3', '2026-01-03', { results: [tested], verdicts: [verdict('plain', 'meets')] }),
    lot('A-4', '2026-01-04', { ...complete, verdicts: [verdict('plain', 'does-not-meet')] }),
    lot('A-5', '2026-01-05', {
      planned: [plannedTest('2026-03-20')],
      verdicts: [verdict('plain', 'does-not-meet'), verdict('strict', 'does-not-meet')],
    }),
  ]
  const edition = tinyEdition([tinySource('ash')], lots, { asOf: readMoment('2026-03-05') })
  return checkedLots(edition, faults, scope).map(({ need, lines: [head] }) => `${need} ${head}`)
}

it('checkedLots puts what needs a hand first, then the newest, and names set, state, verdict and dates', () => {
  const index = '28 d strength activity index, modified (hot)'
  expect(lines()).toEqual([
    `overdue ash/A-2, 2 January 2026, plain: Required results not reported; ${index} overdue since 8 February 2026`,
    `failing ash/A-5, 5 January 2026, plain: Draft, never issued; would not meet; ${index} due 20 March 2026`,
    'to-issue ash/A-3, 3 January 2026, plain: Draft, never issued; would meet; ready to issue',
    'nothing ash/A-4, 4 January 2026, plain: Does not meet',
    'nothing ash/A-1, 1 January 2026, plain: Meets',
  ])
})

it('checkedLots says which text is still to be replaced before a lot can be issued', () => {
  const left = { file: 'producers/hill.yaml', text: '<your company>' }
  expect(lines({ ...NO_FAULT, left: () => left })[2]).toBe(
    'to-issue ash/A-3, 3 January 2026, plain: Draft, never issued; would meet; to be issued once producers/hill.yaml no longer says <your company>',
  )
})

it('checkedLots begins with the records that were not judged, and says what keeps a lot from being issued', () => {
  const faults: CheckedFaults = {
    unjudged: [
      { id: 'ash/A-0', errors: 2, lots: 0 },
      { id: 'tuff', errors: 1, lots: 3 },
    ],
    blocks: () => [{ file: 'lots/ash/A-0.yaml', reason: 'undated' }],
    left: () => null,
  }
  expect(lines(faults).slice(0, 2)).toEqual([
    'fault ash/A-0: not judged, its record has 2 errors',
    'fault tuff: not judged, its record has 1 error; nor were its 3 lots',
  ])
  const edition = tinyEdition(
    [tinySource('ash')],
    [tinyLot('ash/A-3', { planned: [], results: [tested], verdicts: [] } as never)],
  )
  expect(checkedLots(edition, faults, { lots: new Set(['ash/A-3']) })).toEqual([
    {
      id: 'ash/A-3',
      need: 'to-issue',
      lines: [
        'ash/A-3, 5 March 2026: Draft, never issued; not judged',
        'ash/A-3 cannot be issued because of a fault in lots/ash/A-0.yaml, which is a lot of the same source, perhaps sampled before it: its dates cannot be read',
      ],
    },
  ])
})

it('checkedLots keeps to the lots and the set that are asked for', () => {
  expect(lines(NO_FAULT, { criteria: new Set(['strict']) })).toHaveLength(1)
  expect(lines(NO_FAULT, { lots: new Set(['ash/A-1', 'tuff']) })).toEqual([
    'nothing ash/A-1, 1 January 2026, plain: Meets',
  ])
})

it('checkedLots puts a withdrawn lot behind older ones, since nobody has more to do for it', () => {
  const lot = (name: string, sampled: string, state: string) =>
    tinyLot(`ash/${name}`, {
      ...{ sampled: readMoment(sampled), planned: [], state, revisions: [revision(0, '2026-02-20')] },
      verdicts: [verdict('plain', 'meets')],
    } as never)
  const lots = [lot('A-1', '2026-01-01', 'complete'), lot('A-2', '2026-01-02', 'withdrawn')]
  const edition = tinyEdition([tinySource('ash')], lots, { asOf: readMoment('2026-03-05') })
  expect(checkedLots(edition, NO_FAULT, {}).map(({ id }) => id)).toEqual(['ash/A-1', 'ash/A-2'])
})
