import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { reportsOf, sourceReportView } from '../../../src/edition/views/source-report.ts'
import type { Source } from '../../../src/records/schema/loaded-records.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { finding, revision, shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const record = {
  name: 'Ash "Upper"\n} of ash',
  producer: 'works',
  kind: 'coal-fly-ash',
  'lot-number-pattern': 'A-YYYY-##',
}
const issued = (id: string, sampled: string, outcome: 'meets' | 'does-not-meet' | 'pending') =>
  tinyLot(id, {
    sampled: readMoment(sampled),
    state: 'complete',
    verdicts: [verdict('plain', outcome)],
    revisions: [revision(0, `${sampled.slice(0, 7)}-28`)],
  })

/** Two lots of 2024, three of 2025 between which A-2025-02 is missing, one of 2026 up to 10 April. */
const edition = tinyEdition(
  [tinySource('ash', { record: record as unknown as Source, criteria: ['plain'] }), tinySource('tuff')],
  [
    issued('ash/A-2024-01', '2024-11-30', 'meets'),
    {
      ...issued('ash/A-2024-02', '2024-12-31', 'meets'),
      shipments: [
        shipment('ash/A-2024-02', 'B1', '2024-12-31', 20),
        shipment('ash/A-2024-02', 'B2', '2025-01-02', 30),
      ],
    },
    issued('ash/A-2025-01', '2025-01-01', 'does-not-meet'),
    {
      ...issued('ash/A-2025-03', '2025-06-15', 'meets'),
      revisions: [revision(0, '2025-06-28'), revision(1, '2025-07-20', { reason: 'residue read again' })],
      findings: [finding('ash/A-2025-03')],
    },
    issued('ash/A-2025-04', '2025-12-31', 'pending'),
    issued('ash/A-2026-01', '2026-02-01', 'meets'),
  ],
)
const report = (year: string | null) => sourceReportView(edition, { source: 'ash', year })
const fact = (year: string | null, label: string) =>
  report(year).completeness.facts.find((own) => own.label === label)?.text

describe('reportsOf', () => {
  it('has a report on all years of every source and one on each year that has lots', () => {
    expect(reportsOf(edition)).toEqual([
      { source: 'ash', year: null },
      { source: 'ash', year: '2026' },
      { source: 'ash', year: '2025' },
      { source: 'ash', year: '2024' },
      { source: 'tuff', year: null },
    ])
  })
})

describe('sourceReportView', () => {
  it('takes the lots sampled in the calendar year, oldest first, the first and last day of it included', () => {
    const numbers = (year: string | null) => report(year).lots.rows.map(({ number }) => number)
    expect(numbers('2025')).toEqual(['A-2025-01', 'A-2025-03', 'A-2025-04'])
    expect(numbers('2024')).toEqual(['A-2024-01', 'A-2024-02'])
    expect(numbers(null)).toHaveLength(6)
  })

  it('counts the lots of the period by what became of them', () => {
    expect(fact('2025', 'Lots')).toBe('3 lots: 1 does not meet, 0 withdrawn, 0 not valid, 1 pending')
    expect(fact(null, 'Lots')).toBe('6 lots: 1 does not meet, 0 withdrawn, 0 not valid, 1 pending')
  })

  it('names a missing number in the year of the lot after it and in no other', () => {
    expect(fact('2025', 'Lot numbers missing')).toBe('A-2025-02')
    expect(fact('2024', 'Lot numbers missing')).toBe('none')
    expect(fact(null, 'Lot numbers missing')).toBe('A-2025-02')
  })

  it('gives a past year twelve months and the present one those that have begun', () => {
    const months = (year: string | null) => report(year).completeness.months.rows.map(({ label }) => label)
    expect(months('2025')).toHaveLength(12)
    expect(months('2026')).toEqual(['Jan 2026', 'Feb', 'Mar', 'Apr'])
    // November 2024 to April 2026.
    expect(months(null)).toHaveLength(18)
  })

  it('counts a shipment in the year in which it was made, whenever its lot was sampled', () => {
    expect(report('2025').shipped.map(({ mass, ...line }) => ({ ...line, mass: plainSpaces(mass) }))).toEqual(
      [{ name: '2025-01', shipments: 1, mass: '30.0 t' }],
    )
    expect(fact('2024', 'Shipped of lots with a certificate in force')).toMatch(/^20\.0\st$/)
    expect(fact('2025', 'Shipped of lots with a certificate in force')).toMatch(/^30\.0\st$/)
  })

  it('keeps a withdrawn lot out of both masses of lots with a certificate, and its sample in the plan', () => {
    const every = { value: 2000, unit: 't', written: '2000 t' }
    const plan = { ...record, 'sampling-plan': [{ kind: 'composite', every }] }
    const withdrawn = tinyLot('ash/A-2025-01', {
      sampled: readMoment('2025-04-01'),
      state: 'withdrawn',
      shipments: [shipment('ash/A-2025-01', 'B1', '2025-04-20', 20)],
    })
    const sound = {
      ...issued('ash/A-2025-02', '2025-05-01', 'meets'),
      shipments: [shipment('ash/A-2025-02', 'B2', '2025-05-20', 30)],
    }
    const of = tinyEdition(
      [tinySource('ash', { record: plan as unknown as Source, criteria: ['plain'] })],
      [withdrawn, sound],
    )
    const { facts, months } = sourceReportView(of, { source: 'ash', year: '2025' }).completeness
    expect(facts.slice(2, 6).map(({ label, text }) => `${label}: ${plainSpaces(text)}`)).toEqual([
      'Lots with a certificate in force: 1000 t',
      'Of them, lots that do not meet: 0.0 t',
      'Shipped of lots with a certificate in force: 30.0 t',
      'Shipped of lots withdrawn or without a certificate: 20.0 t',
    ])
    const april = months.rows.find(({ label }) => label === 'Apr')?.cells.map(({ text }) => text)
    expect(months.heads.slice(0, 5)).toEqual([
      'Lots sampled, of composite samples planned',
      'Lots with a certificate in force, t',
      'of them do not meet, t',
      'Shipped, t',
      'of it, from lots withdrawn or without a certificate, t',
    ])
    expect(april?.slice(0, 5)).toEqual(['1 of 1', '0', '0', '20', '20'])
  })

  it('lists what a later revision was made for', () => {
    const [line] = report('2025').revisions
    expect({ ...line, revisions: line?.revisions.map(plainSpaces) }).toEqual({
      id: 'ash/A-2025-03',
      number: 'A-2025-03',
      revisions: ['1, 20 Jul 2025: residue read again'],
      changed: [],
    })
    expect(report('2024').revisions).toEqual([])
  })

  it('asks about lots of the period alone', () => {
    expect(report('2025').questions.open.map(({ lot }) => lot)).toEqual(['ash/A-2025-03'])
    expect(report('2024').questions.open).toEqual([])
    expect(report('2025').unanswered.map(({ lot }) => lot)).toEqual(['ash/A-2025-03'])
  })

  it('asks nothing of the source as a whole in a year that is over, where later lots may have given reason', () => {
    const about = tinyEdition(
      [
        tinySource('ash', {
          record: record as unknown as Source,
          criteria: ['plain'],
          findings: [finding('ash')],
        }),
      ],
      [issued('ash/A-2025-01', '2025-01-01', 'meets'), issued('ash/A-2026-01', '2026-02-01', 'meets')],
    )
    const asked = (year: string | null) =>
      sourceReportView(about, { source: 'ash', year }).questions.open.map(({ about: of }) => of)
    expect([asked('2025'), asked('2026'), asked(null)]).toEqual([[], ['ash'], ['ash']])
  })

  it('tells where the source stood with the agency on the last day of the period', () => {
    const listing = [
      { by: 'Roads', date: readMoment('2024-03-01'), action: 'listed' },
      { by: 'Roads', date: readMoment('2026-01-15'), action: 'removed' },
    ]
    const listed = tinyEdition(
      [tinySource('ash', { record: { ...record, listing } as unknown as Source, criteria: ['plain'] })],
      [issued('ash/A-2025-01', '2025-01-01', 'meets')],
    )
    const now = (year: string | null) =>
      plainSpaces(sourceReportView(listed, { source: 'ash', year }).listing.now)
    expect(now('2025')).toBe('Listed by Roads since 1 March 2024')
    expect(now(null)).toBe('Roads: taken off the list by the agency on 15 Jan 2026')
  })

  it('draws a year from its first day to its last, with the events of the year alone', () => {
    const events = [
      { date: readMoment('2024-06-01'), title: 'outage' },
      { date: readMoment('2025-06-01'), title: 'new mill' },
    ]
    const drawn = tinyEdition(
      [tinySource('ash', { record: { ...record, events } as unknown as Source, criteria: ['plain'] })],
      [issued('ash/A-2025-01', '2025-03-01', 'meets')],
    )
    const charts = sourceReportView(drawn, { source: 'ash', year: '2025' }).charts
    expect(charts?.rail.words.map(plainSpaces)).toEqual(['new mill (1 June 2025)'])
  })

  it('reports a source without a lot', () => {
    const view = sourceReportView(edition, { source: 'tuff', year: null })
    expect([view.sampled, view.charts, view.completeness.months.rows]).toEqual(['no lot', null, []])
  })

  it('refuses a source that is not in the edition', () => {
    expect(() => sourceReportView(edition, { source: 'none', year: null })).toThrow(RangeError)
  })
})

describe('the report on all years of a very long history', () => {
  const lots = Array.from({ length: 1003 }, (_, place) => ({
    ...tinyLot(`ash/${place}`, { sampled: readMoment(place < 4 ? '2025-03-05' : '2026-03-05') }),
    findings: place === 0 || place === 1002 ? [finding(`ash/${place}`)] : [],
  }))
  const long = tinyEdition([tinySource('ash')], lots)
  const view = (year: string | null) => sourceReportView(long, { source: 'ash', year })

  it('lists the newest lots with their questions, says so, and leads to the years of the others', () => {
    const { lots: listed, newest, questions } = view(null)
    expect(listed.rows.map(({ id }) => id)).toHaveLength(1000)
    expect([listed.rows[0]?.id, listed.rows.at(-1)?.id]).toEqual(['ash/3', 'ash/1002'])
    expect(questions.open.map(({ about }) => about)).toEqual(['ash/1002'])
    expect(newest?.text).toContain('for the newest 1000 of 1003 lots')
    expect(newest?.years).toEqual(['2025'])
  })

  it('leaves the report on a year whole', () => {
    const { lots: listed, newest, questions } = view('2025')
    expect([listed.rows.length, newest, questions.open.map(({ about }) => about)]).toEqual([
      4,
      null,
      ['ash/0'],
    ])
  })
})
