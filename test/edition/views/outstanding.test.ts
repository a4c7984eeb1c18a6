import { expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { outstandingView } from '../../../src/edition/views/outstanding.ts'
import type { Site } from '../../../src/records/schema/loaded-records.ts'
import { plannedTest, revision, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const issued = { state: 'provisional', revisions: [revision(0, '2025-12-20')] } as const
const at = (age: string, tested: string) =>
  ({ role: 'producer', age: readAge(age), tested: readMoment(tested) }) as Result

/** As of 5 March 2026; reports are due 10 days after a month, and that for January came. */
function outstanding() {
  const plain = tinySource('ash')
  const record = {
    ...plain.record,
    'lot-number-pattern': 'A-###',
    reports: {
      from: '2025-11',
      due: { kind: 'duration', value: 240 },
      received: [{ month: '2026-01', on: readMoment('2026-02-12') }],
    },
  }
  const lot = (number: string, sampled: string, more: object) =>
    tinyLot(`ash/${number}`, { number, sampled: readMoment(sampled), ...more } as never)
  const lots = [
    lot('A-001', '2025-12-01', { ...issued, planned: [plannedTest('2026-01-02', '2026-01-09')] }),
    lot('A-003', '2026-01-20', { ...issued, planned: [plannedTest('2026-03-20')] }),
    lot('A-004', '2026-01-30', { ...issued, planned: [], results: [at('28 d', '2026-02-27')] }),
    lot('A-005', '2026-02-03', { state: 'complete', revisions: [revision(0, '2026-02-20')], planned: [] }),
  ]
  const site = { title: 'Register', units: 'SI', criteria: [], publish: [] } as unknown as Site
  return outstandingView(
    tinyEdition([{ ...plain, record } as never], lots, { site, asOf: readMoment('2026-03-05') }),
  )
}

it('outstandingView lists what is overdue or missing by day, then what is due, each with its lot or source', () => {
  const { past, coming } = outstanding()
  const said = [...past, ...coming].map(({ day, label, lot, source, text }) => [
    day.text,
    label,
    lot?.href ?? source.href,
    text.replaceAll('\u00a0', ' '),
  ])
  const index = '28 d strength activity index, modified (hot)'
  expect(said).toEqual([
    [
      '2025-12-10',
      'Report missing',
      '/a/sources/ash/',
      'no report for 2 months, November 2025 to December 2025; the first was due by 10 December 2025',
    ],
    [
      '2026-01-09',
      'Result overdue',
      '/a/lots/ash/A-001/',
      `${index}, due 2 January 2026, overdue since 9 January 2026`,
    ],
    ['2026-01-20', 'Lot number missing', '/a/sources/ash/', 'no lot bears A-002'],
    [
      '2026-02-27',
      'Certificate to issue',
      '/a/lots/ash/A-004/',
      'further results on record since 27 February 2026, which the certificate does not state',
    ],
    ['2026-03-10', 'Report due', '/a/sources/ash/', 'report for February 2026, due by 10 March 2026'],
    ['2026-03-20', 'Result due', '/a/lots/ash/A-003/', `${index}, due 20 March 2026`],
  ])
})
