import { describe, expect, it } from 'vitest'
import type { Clause, Criterion } from '../../../src/core/criteria/criterion.ts'
import { criterionPage } from '../../../src/edition/views/criterion-page.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'
import { base, supplement } from './criterion-fixture.ts'

const sets = new Map([base, supplement].map((set) => [set.id, set]))
const page = (set: Criterion, edition = tinyEdition([], [], { criteria: sets })) =>
  criterionPage(edition, set)

describe('criterionPage', () => {
  it('heads a set with its name, edition and scope', () => {
    expect(page(base)).toMatchObject({
      name: 'VALE 1, edition 1',
      title: 'Trial set',
      authority: null,
      materials: 'Coal fly ash, raw natural pozzolan',
      classes: 'F: ; C: ',
      relaxed: null,
      unconfirmed: false,
      later: null,
    })
    expect(page(base).rule).toMatch(/^As specified: .+\. A lot whose true value lies on a limit .+\.$/)
  })
  it('says of a set alone who confirmed it, of a supplement so of each layer', () => {
    expect(page(base).layers).toEqual([
      { label: 'Limits', layer: null, confirmed: 'not checked against the published standard' },
    ])
    const confirmed = { by: 'M. Okafor', date: '2026-01-05', edition: '1' }
    const [below, own] = supplement.layers
    const set = { ...supplement, layers: [{ ...below, confirmed }, own] } as Criterion
    expect(page(set).layers).toEqual([
      {
        label: 'Extends',
        layer: { name: { text: 'VALE 1, edition 1', href: '/a/criteria/base/' }, clauses: '3 clauses' },
        confirmed: 'checked by M. Okafor, 5\u00a0January 2026, against edition 1',
      },
      {
        label: 'This supplement',
        layer: { name: { text: 'Agency rules, edition 1', href: null }, clauses: '1 clause' },
        confirmed: 'not checked against the published standard',
      },
    ])
  })
  it('counts clauses relaxed and clauses taken out', () => {
    expect(page(supplement).relaxed).toBe('1 place')
    const [former] = setOf([{ clause: 'sum', property: 'oxide-sum', 'at-least': '70.0 %' }]).clauses as [
      Clause,
    ]
    const removed = [{ id: 'sum', layer: 'base', by: 'agency', former }]
    const shorter = page({ ...supplement, removed })
    expect(shorter.relaxed).toBe('2 places')
    expect(shorter.removed).toEqual([
      { id: 'sum', of: 'VALE 1, edition 1', by: 'Agency rules, edition 1', was: 'at least 70.0 %' },
    ])
  })
  it('lists where limits were read, by layer where there are several', () => {
    const documents = ['abstract with tables']
    const most = 'Limits without a remark of their own were read in abstract with tables.'
    expect(page(base).sources).toEqual([{ layer: null, most, documents }])
    expect(page(supplement).sources).toEqual([{ layer: 'VALE 1, edition 1', most: null, documents }])
  })
  it('links a later edition only where it is on record', () => {
    expect(page({ ...base, supersededBy: 'agency' }).later).toEqual({
      text: 'Agency rules, edition 1',
      href: '/a/criteria/agency/',
    })
    expect(page({ ...base, supersededBy: 'gone' }).later).toBeNull()
  })
  it('counts how the lots of each source stand, a withdrawn one apart, without sources that have none', () => {
    const issued = (id: string, more: Parameters<typeof tinyLot>[1]) =>
      tinyLot(id, { state: 'complete', ...more })
    const lots = [
      issued('ash/1', { verdicts: [verdict('base', 'pending')] }),
      issued('ash/2', { verdicts: [verdict('base', 'meets')], state: 'withdrawn' }),
      issued('ash/3', { verdicts: [verdict('other', 'meets'), verdict('base', 'meets')] }),
      issued('ash/4', { verdicts: [verdict('base', 'meets')] }),
    ]
    const edition = tinyEdition([tinySource('ash'), tinySource('tuff')], lots)
    expect(page(base, edition).counts).toEqual([
      {
        source: 'Ash of ash',
        href: '/a/sources/ash/base/',
        counts: [
          { standing: { mark: 'meets', brief: 'meets' }, count: 2 },
          { standing: { mark: 'pending', brief: 'pending' }, count: 1 },
          { standing: { mark: 'withdrawn', brief: 'withdrawn (was: meets)' }, count: 1 },
        ],
      },
    ])
  })
})
