import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { sourceLines, sourcesUnder, sourceUnderView } from '../../../src/edition/views/sources.ts'
import type { Producer } from '../../../src/records/schema/loaded-records.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { evidenceOf, result, setOf } from '../../core/judging/fixture.ts'
import { tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const plain: Criterion = setOf(
  [{ clause: 'loi', title: 'loss on ignition', property: 'loss-on-ignition', 'at-most': '6.0 %' }],
  { id: 'plain', title: 'Plain set', edition: '2' },
)
const edition = tinyEdition(
  [tinySource('ash', { criteria: ['plain'] }), tinySource('tuff')],
  [
    tinyLot('ash/1', {
      sampled: readMoment('2025-03-05'),
      verdicts: [
        verdict('plain', 'meets', {
          reasons: [
            { code: 'all-met', params: { count: 2 } },
            { code: 'decided-by', params: { clause: 'loi' } },
          ],
          clauses: judge(plain, evidenceOf([])).clauses,
        }),
      ],
    }),
    tinyLot('ash/2', {
      sampled: readMoment('2026-03-05'),
      verdicts: [judge(plain, evidenceOf([result('loss-on-ignition', 7)]))],
    }),
    tinyLot('ash/3', { sampled: readMoment('2026-04-05') }),
  ],
  {
    criteria: new Map([['plain', plain]]),
    producers: new Map([['works', { name: 'Works', address: [] } as Producer]]),
  },
)

describe('sourceLines', () => {
  it('says of each source how many lots it has and how the last came out', () => {
    expect(
      sourceLines(edition).map(({ id, producer, lotCount, last, standing }) => [
        id,
        producer,
        lotCount,
        last?.id,
        standing?.text,
      ]),
    ).toEqual([
      ['ash', 'Works', 3, 'ash/3', 'Draft, never issued; not judged'],
      ['tuff', 'Works', 0, undefined, undefined],
    ])
  })
})

describe('sourceUnderView', () => {
  it('has a page for each criterion that lots of the source are judged under', () => {
    expect(sourcesUnder(edition)).toEqual([{ source: 'ash', criterion: 'plain', year: null }])
  })

  it('lists lots by year, the latest first, with what decided: met clauses where it meets, else the fault', () => {
    const { years } = sourceUnderView(edition, { source: 'ash', criterion: 'plain', year: null })
    expect(
      years.map(({ year, lots }) => [
        year,
        lots.map(({ id, standing, remark }) => [id, standing.brief, remark]),
      ]),
    ).toEqual([
      [
        '2026',
        [
          ['ash/3', 'draft (not judged)', undefined],
          [
            'ash/2',
            'draft (would not meet)',
            'loss on ignition: 7.0 % does not meet the limit, at most 6.0 %',
          ],
        ],
      ],
      ['2025', [['ash/1', 'draft (would meet)', 'meets all 2 clauses that apply']]],
    ])
  })

  it('refuses a criterion that is not on record', () => {
    expect(() => sourceUnderView(edition, { source: 'ash', criterion: 'none', year: null })).toThrow(
      'sourceUnderView needs a criterion on record, got none',
    )
  })
})

describe('sourceUnderView of a history too long for one page', () => {
  const lots = Array.from({ length: 301 }, (_, place) =>
    tinyLot(`ash/${place}`, { sampled: readMoment(place < 100 ? '2025-03-05' : '2026-03-05') }),
  )
  const long = tinyEdition([tinySource('ash', { criteria: ['plain'] })], lots, {
    criteria: new Map([['plain', plain]]),
  })
  const under = (year: string | null) => sourceUnderView(long, { source: 'ash', criterion: 'plain', year })
  const listed = (year: string | null) => under(year).years.map((own) => [own.year, own.lots.length])

  it('has a page for each year beside the one that stands for all', () => {
    expect(sourcesUnder(long).map(({ year }) => year)).toEqual([null, '2026', '2025'])
  })

  it('lists the newest year, or the one asked for, says which, and counts every year', () => {
    expect([under(null).only, listed(null)]).toEqual(['2026', [['2026', 201]]])
    expect([under('2025').only, listed('2025')]).toEqual(['2025', [['2025', 100]]])
    expect(under(null).allYears).toEqual([
      { year: '2026', count: 201 },
      { year: '2025', count: 100 },
    ])
  })
})
