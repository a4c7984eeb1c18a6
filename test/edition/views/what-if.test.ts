import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import type { LotEntry } from '../../../src/edition/shape/edition.ts'
import { whatIfLink, whatIfSources, whatIfView } from '../../../src/edition/views/what-if.ts'
import { index, result, setOf } from '../../core/judging/fixture.ts'
import { tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const at28 = { age: readAge('28 d') }
const governing = setOf(
  [
    { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' },
    { clause: 'sai', property: 'strength-activity-index', condition: 'c311', ...at28, 'at-least': '75 %' },
  ],
  { id: 'vale', designation: 'VALE 1' },
)
const hot = setOf(
  [
    {
      clause: 'hot',
      property: 'strength-activity-index',
      condition: 'modified-50c',
      ...at28,
      'at-least': '70 %',
    },
  ],
  { id: 'hot', title: 'Strength at 50 °C' },
)

/** Lost on ignition, index at 23 °C and at 50 °C, all in per cent. */
function lot(id: string, day: string, loi: number, cool: number, warm: number, more: Partial<LotEntry> = {}) {
  return tinyLot(`ash/${id}`, {
    state: 'complete',
    sampled: readMoment(`2026-03-${day}`),
    results: [
      result('loss-on-ignition', loi),
      index('28 d', cool),
      result('strength-activity-index', warm, { condition: 'modified-50c', ...at28 }),
    ],
    ...more,
  })
}

const edition = tinyEdition(
  [tinySource('ash', { criteria: ['vale'] }), tinySource('tuff', { criteria: ['hot'] }), tinySource('none')],
  [
    lot('1', '01', 4, 80, 72),
    lot('2', '02', 4, 80, 66),
    lot('3', '03', 4, 70, 75),
    lot('4', '04', 7, 80, 66),
    lot('5', '05', 4, 80, 60, { state: 'withdrawn', withdrawn: readMoment('2026-04-01') }),
  ],
  { criteria: new Map([governing, hot].map((set) => [set.id, set])) },
)

describe('whatIfView', () => {
  it('tells by hand-worked lots which change outcome, and which clause decides', () => {
    const [replaced] = whatIfView(edition, 'ash').replaced
    // 72 ≥ 70 as before; 66 < 70 fails now; 70 < 75 failed and 75 ≥ 70 meets; 7 % lost fails either way.
    expect(replaced?.alike).toBe('2 lots')
    expect(replaced?.changes).toEqual([
      { from: 'meets', to: 'does-not-meet', count: 1 },
      { from: 'does-not-meet', to: 'meets', count: 1 },
    ])
    const said = (text: string | null) => text?.replaceAll(/\s/g, ' ') ?? null
    expect(
      replaced?.rows.map(({ lot, now, then }) => [lot.text, said(now.decidedBy), said(then.decidedBy)]),
    ).toEqual([
      ['5', null, 'Strength activity index, modified-50c, 28 d: 60 % against ≥ 70 %, beyond it by 10 points'],
      ['3', 'Strength activity index, c311, 28 d: 70 % against ≥ 75 %, beyond it by 5 points', null],
      ['2', null, 'Strength activity index, modified-50c, 28 d: 66 % against ≥ 70 %, beyond it by 4 points'],
    ])
  })

  it('leaves a withdrawn lot out of the counts, and says so', () => {
    expect(whatIfView(edition, 'ash').replaced[0]?.notCounted).toBe('1 withdrawn lot not counted')
  })

  it('leads to the sets themselves and to a comparison of the same source', () => {
    const { governing: set, compare, replaced } = whatIfView(edition, 'ash')
    expect([set?.text, set?.href]).toEqual(['VALE 1, edition 1', '/a/criteria/vale/'])
    expect(replaced[0]?.by).toEqual({ text: 'Strength at 50 °C, edition 1', href: '/a/criteria/hot/' })
    expect(compare).toBe('/a/comparison/?set=vale&source=ash')
  })

  it('has a page for a source whose activity clause can be replaced, and none without a governing set', () => {
    expect(whatIfSources(edition)).not.toContain('none')
    expect(whatIfLink(edition, 'none')).toBeNull()
    expect(whatIfLink(edition, 'ash')).toMatchObject({
      href: '/a/sources/ash/what-if/',
      note: 'This is no judgement under any contract.',
    })
  })
})
