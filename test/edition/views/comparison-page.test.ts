import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { CertificateState } from '../../../src/core/evidence/certificate-state.ts'
import { comparisonPage } from '../../../src/edition/views/comparison-page.ts'
import { tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'
import { base, supplement } from './criterion-fixture.ts'

type Outcome = Parameters<typeof verdict>[1]

function pageOf(
  outcomes: readonly (readonly [Outcome, Outcome | null])[],
  stateOf: (place: number) => CertificateState = () => 'draft',
) {
  const lots = outcomes.map(([first, second], place) =>
    tinyLot(`ash/${place}`, {
      state: stateOf(place),
      sampled: readMoment(`2026-03-${String(place + 1).padStart(2, '0')}`),
      verdicts: [
        verdict('base', first),
        ...(second === null ? [] : [verdict('agency', second, { decidedBy: ['loi'] })]),
      ],
    }),
  )
  const sources = [
    tinySource('ash', { criteria: ['base', 'agency'] }),
    tinySource('tuff', { criteria: ['base'] }),
  ]
  return comparisonPage(
    tinyEdition(sources, lots, {
      site: { title: 'Register', units: 'SI', criteria: ['agency'] } as never,
      criteria: new Map([base, supplement].map((set) => [set.id, set])),
    }),
  )
}

type Cell = NonNullable<
  ReturnType<typeof pageOf>['compared'][number]['changed']
>['rows'][number]['cells'][number]

/** A cell as the page prints it. */
function judged(cell: Cell | undefined) {
  return [cell?.verdict?.standing.brief, cell?.verdict?.decidedBy]
}

describe('comparisonPage', () => {
  it('lets a reader choose sets and sources, the governing sets ticked', () => {
    const { sets, sources, asOf } = pageOf([])
    expect(sets.map(({ id, checked }) => [id, checked])).toEqual([
      ['base', false],
      ['agency', true],
    ])
    expect(sources).toEqual([
      { id: 'ash', name: 'Ash of ash', checked: true },
      { id: 'tuff', name: 'Ash of tuff', checked: true },
    ])
    expect(asOf).toBe('10\u00a0Apr\u00a02026')
  })
  it('counts what is alike and each change, for sources judged under several sets', () => {
    const { compared } = pageOf([
      ['meets', 'meets'],
      ['does-not-meet', 'meets'],
      ['does-not-meet', 'meets'],
      ['meets', null],
    ])
    expect(compared.map(({ name, first, against }) => ({ name, first, against }))).toEqual([
      {
        name: 'Ash of ash',
        first: 'VALE 1, edition 1',
        against: [
          {
            set: { text: 'Agency rules, edition 1', href: '/a/sources/ash/agency/' },
            alike: '1 lot',
            oneSided: '1 lot with a verdict under only one of the two, counted apart',
            scope: null,
            changes: [{ from: 'does-not-meet', to: 'meets', count: 2 }],
          },
        ],
      },
    ])
  })
  it('lists changed lots, the newest first, with what decided where the set is not met', () => {
    const [ash] = pageOf([
      ['meets', 'does-not-meet'],
      ['pending', 'meets'],
    ]).compared
    expect(ash?.changed).toMatchObject({
      summary: '2 lots change outcome',
      sets: ['VALE 1, edition 1', 'Agency rules, edition 1'],
      newest: null,
    })
    expect(ash?.changed?.rows.map(({ lot, sampled, cells }) => [lot, sampled, judged(cells[1])])).toEqual([
      [{ text: '1', href: '/a/lots/ash/1/' }, '2\u00a0Mar\u00a02026', ['draft (would meet)', null]],
      [
        { text: '0', href: '/a/lots/ash/0/' },
        '1\u00a0Mar\u00a02026',
        ['draft (would not meet)', 'Loss on ignition'],
      ],
    ])
  })
  it('counts no withdrawn lot, but lists it as withdrawn', () => {
    const [ash] = pageOf(
      [
        ['meets', 'does-not-meet'],
        ['meets', 'does-not-meet'],
        ['meets', 'meets'],
      ],
      (place) => (place === 0 ? 'withdrawn' : 'complete'),
    ).compared
    expect(ash?.against[0]?.changes).toEqual([{ from: 'meets', to: 'does-not-meet', count: 1 }])
    expect([ash?.against[0]?.alike, ash?.notCounted]).toEqual(['1 lot', '1 withdrawn lot not counted'])
    expect(ash?.changed?.rows.map(({ cells }) => judged(cells[0])[0])).toEqual([
      'meets',
      'withdrawn (was: meets)',
    ])
    expect(pageOf([['meets', 'meets']]).compared[0]?.notCounted).toBeNull()
  })
  it('lists forty and says so where more have changed', () => {
    const [ash] = pageOf(Array.from({ length: 41 }, () => ['meets', 'pending'] as const)).compared
    expect([ash?.changed?.rows.length, ash?.changed?.newest]).toEqual([40, 40])
  })
  it('has nothing to list where every lot comes out alike', () => {
    expect(pageOf([['meets', 'meets']]).compared[0]?.changed).toBeNull()
  })
})
