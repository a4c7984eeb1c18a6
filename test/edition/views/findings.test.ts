import type { Finding } from '../../../src/core/checks/finding.ts'
import { found } from '../../../src/core/checks/finding.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { countedByYear, findingYears, findingYearView } from '../../../src/edition/views/findings-by-year.ts'
import { findingsView } from '../../../src/edition/views/findings.ts'
import { finding, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash', { findings: [finding('ash')] })],
  [
    tinyLot('ash/1', { findings: [finding('ash/1'), finding('ash/1', 'blocks')] }),
    tinyLot('ash/2', { sampled: readMoment('2026-03-06'), findings: [finding('ash/2')] }),
  ],
)

describe('findingsView', () => {
  it('groups by severity, the gravest first, sources before lots and the newest lot before older ones', () => {
    const { published, groups } = findingsView(edition)
    expect(published).toBe(true)
    expect(groups.map(({ heading, findings }) => [heading, findings.map(({ about }) => about)])).toEqual([
      ['Blocks', ['ash/1']],
      ['Warnings', ['ash', 'ash/2', 'ash/1']],
    ])
  })

  it('leads to the certificate of a lot, and to none from a finding about a source', () => {
    const [, warnings] = findingsView(edition).groups
    expect(warnings?.findings.map(({ lot }) => lot)).toEqual([undefined, 'ash/2', 'ash/1'])
  })

  it('says so where the public may not see findings', () => {
    expect(findingsView({ ...edition, audience: 'public' }).published).toBe(false)
  })
})

/** A round that a laboratory of two sources lacks. */
const lapsed = (source: string): Finding =>
  found(source, { code: 'proficiency-lapsed', params: { source, laboratory: 'quay', last: null } }, 'quay')

describe('findingsView beside answers and checks', () => {
  const answer = (of: string, more: object = {}) =>
    ({ finding: of, date: readMoment('2026-03-08'), by: 'T. Vesterby', answer: 'a slip', ...more }) as never
  const withAnswers = (source: string, ...answers: never[]) => {
    const entry = tinySource(source, { findings: [finding(source), lapsed(source)] })
    return { ...entry, record: { ...entry.record, answers } }
  }

  it('shows what was answered beside its finding, and a closed one after the open ones', () => {
    const closed = answer('changed-after-issue/ash', {
      cause: 'a form used twice',
      bills: ['BL-1', 'BL-2'],
      told: [{ who: 'Roads', on: readMoment('2026-03-09') }],
      disposition: 'seen',
      closed: readMoment('2026-03-10'),
    })
    const { groups } = findingsView(tinyEdition([withAnswers('ash', closed)], []))
    expect(groups.map(({ heading, findings }) => [heading, findings.map(({ check }) => check)])).toEqual([
      ['Warnings', ['proficiency-lapsed']],
      ['Answered and closed', ['changed-after-issue']],
    ])
    const parts = groups[1]?.findings[0]?.answerParts.map(({ term, text }) => `${term}: ${text}`)
    expect(parts?.map((text) => text.replaceAll(/\s/g, ' '))).toEqual([
      'Answer: 8 March 2026 (T. Vesterby): a slip',
      'Cause: A form used twice',
      'Bills affected: BL-1 and BL-2',
      'Told: Roads on 9 March 2026',
      'Disposition: Seen',
      'Closed: 10 March 2026',
    ])
  })

  it('asks once what is found alike of two sources, with both named and both ids', () => {
    const { groups } = findingsView(tinyEdition([withAnswers('ash'), withAnswers('tuff')], []))
    const [once] = groups[0]?.findings.filter(({ check }) => check === 'proficiency-lapsed') ?? []
    expect([once?.sources.map(({ text }) => text), once?.ids]).toEqual([
      ['Ash of ash', 'Ash of tuff'],
      ['proficiency-lapsed/ash/quay', 'proficiency-lapsed/tuff/quay'],
    ])
  })

  it('asks apart what one of the two has answered', () => {
    const answered = withAnswers('ash', answer('proficiency-lapsed/ash/quay'))
    const { groups } = findingsView(tinyEdition([answered, withAnswers('tuff')], []))
    const apart = groups[0]?.findings.filter(({ check }) => check === 'proficiency-lapsed')
    expect(apart?.map(({ ids }) => ids)).toEqual([
      ['proficiency-lapsed/ash/quay'],
      ['proficiency-lapsed/tuff/quay'],
    ])
  })

  it('lists an answer whose finding is no longer made', () => {
    const { leftOver } = findingsView(tinyEdition([withAnswers('ash', answer('number-gap/ash/2'))], []))
    expect(leftOver.map(({ finding: id, about }) => [id, about.text])).toEqual([
      ['number-gap/ash/2', 'Ash of ash'],
    ])
  })

  it('finds an answer to a finding of a lot in the record of its source, and the other way round', () => {
    const lot = tinyLot('ash/1', { findings: [finding('ash/1')] })
    const ofLot = { ...lot, record: { ...lot.record, answers: [answer('changed-after-issue/ash')] } }
    const source = withAnswers('ash', answer('changed-after-issue/ash/1'))
    const { groups, leftOver } = findingsView(tinyEdition([source], [ofLot]))
    const open = groups[0]?.findings.map(({ check, about, recorded }) => [check, about, recorded?.answer])
    expect(open).toEqual([
      ['changed-after-issue', 'ash', 'a slip'],
      ['proficiency-lapsed', 'ash', undefined],
      ['changed-after-issue', 'ash/1', 'a slip'],
    ])
    expect(leftOver).toEqual([])
  })

  it('lists the checks by family with their looks and flags, and says where the site set another severity', () => {
    const looks = [
      { check: 'proficiency-open', looked: 10, found: 1 },
      { check: 'number-gap', looked: 4, found: 0 },
    ] as const
    const checks = { run: 2, lots: 1, looks, expectedByChance: { expected: 0, low: 0, high: 0 } }
    const sources = ['ash', 'tuff'].map((id) => ({ ...tinySource(id), checks }))
    const site = { ...edition.site, checks: { 'number-gap': 'information' } } as never
    const view = findingsView(tinyEdition(sources as never, [], { site })).checks
    expect(view?.families.map(({ heading, rows }) => [heading, rows.map(({ check }) => check)])).toEqual([
      ['Completeness', ['number-gap']],
      ['Laboratories and control mortar', ['proficiency-open']],
    ])
    const [gap, open] = view?.families.flatMap(({ rows }) => rows) ?? []
    expect(gap).toMatchObject({ severity: 'information', insteadOf: 'warning', looked: '8', expected: null })
    // Twenty looks at 4.55 %.
    expect(open).toMatchObject({
      severity: 'warning',
      insteadOf: null,
      looked: '20',
      found: '2',
      expected: '0.9',
    })
    expect(view?.idle.map(({ check }) => check)).toContain('bill-twice')
  })
})

describe('findings too many for one page', () => {
  const lots = Array.from({ length: 501 }, (_, place) =>
    tinyLot(`ash/${place}`, {
      sampled: readMoment(place < 200 ? '2025-03-06' : '2026-03-06'),
      findings: [finding(`ash/${place}`, place === 7 ? 'blocks' : 'warning')],
    }),
  )
  const many = tinyEdition([tinySource('ash', { findings: [finding('ash')] }), tinySource('tuff')], lots)

  it('list those about sources, and leave those about lots to a page for each source and year', () => {
    const { byYear, groups } = findingsView(many)
    expect([byYear, groups.flatMap(({ findings }) => findings.map(({ about }) => about))]).toEqual([
      true,
      ['ash'],
    ])
    expect([findingsView(edition).byYear, findingYears(edition)]).toEqual([false, []])
    expect(findingYears(many)).toEqual([
      { source: 'ash', year: '2026' },
      { source: 'ash', year: '2025' },
    ])
  })

  it('are counted by source and year, as many as the page of each lists', () => {
    const { years, sources, total } = countedByYear(many)
    expect(years).toEqual(['2026', '2025'])
    expect(sources.map(({ counts }) => counts.map(({ count, blocks }) => [count, blocks]))).toEqual([
      [
        [301, 0],
        [200, 1],
      ],
      [
        [0, 0],
        [0, 0],
      ],
    ])
    expect(total).toEqual({ count: 501, blocks: 1 })
    const { groups } = findingYearView(many, { source: 'ash', year: '2025' })
    expect(groups.map(({ heading, findings }) => [heading, findings.length])).toEqual([
      ['Blocks', 1],
      ['Warnings', 199],
    ])
  })

  it('have no page where findings are not published', () => {
    expect(findingYears({ ...many, audience: 'public' })).toEqual([])
  })
})
