import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import {
  everyClause,
  includesClass,
  isAsRead,
  isUnconfirmed,
  unconfirmedLayers,
  layerOf,
  layerTitle,
  partsOfClass,
  setName,
} from '../../../src/core/criteria/criterion.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { setOf } from '../judging/fixture.ts'

const loi: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }

describe('everyClause', () => {
  it('everyClause gives a group before its members, at any depth', () => {
    const set = setOf([
      { clause: 'g', 'all-of': [{ clause: 'h', 'any-of': [{ ...loi }, { ...loi, clause: 'i' }] }] },
      { ...loi, clause: 'j' },
    ])
    expect([...everyClause(set.clauses)].map(({ id }) => id)).toEqual(['g', 'h', 'loi', 'i', 'j'])
  })
})

describe('classes made of categories', () => {
  it('partsOfClass names the class first, then a category of each axis', () => {
    expect([partsOfClass('F'), partsOfClass('N/A')]).toEqual([['F'], ['N/A', 'N', 'A']])
  })

  it('includesClass speaks of a class by itself or by any of its categories', () => {
    expect([includesClass(['A'], 'N/A'), includesClass(['N/A'], 'N/A'), includesClass(['B'], 'N/A')]).toEqual(
      [true, true, false],
    )
  })
})

describe('names of sets and layers', () => {
  it('setName prefers the designation, and never leaves the edition out', () => {
    expect(setName({ title: 'Coal ash', designation: 'ASTM C618', edition: '12a' })).toBe(
      'ASTM C618, edition 12a',
    )
    expect(setName({ title: 'Coal ash', edition: '3' })).toBe('Coal ash, edition 3')
  })

  it('layerTitle names a layer, and falls back on the id of one that the set does not have', () => {
    const set = setOf([loi], { id: 'own', title: 'Own set', edition: '2' })
    expect([layerTitle(set, 'own'), layerTitle(set, 'other')]).toEqual(['Own set, edition 2', 'other'])
    expect(layerOf(set, 'other')).toBeUndefined()
  })
})

const confirmed = { by: 'A. Lindqvist', date: readMoment('2026-01-12'), edition: '1' }

describe('isAsRead', () => {
  it('asks for a limit that was read, in a layer that nobody has confirmed', () => {
    const read = [{ ...loi, basis: { read: 'table 1' } }]
    expect([
      isAsRead(setOf(read)),
      isAsRead(setOf(read, { confirmed })),
      isAsRead(setOf([{ ...loi, basis: { memory: 'recalled' } }])),
      isAsRead(setOf([loi])),
    ]).toEqual([true, false, false, false])
  })
})

describe('unconfirmedLayers', () => {
  it('lists the layers whose limits from memory nobody has confirmed', () => {
    const recalled = [{ ...loi, basis: { memory: 'recalled' } }]
    const layers = (set: ReturnType<typeof setOf>) => unconfirmedLayers(set).map(({ id }) => id)
    expect(layers(setOf(recalled))).toEqual(setOf(recalled).layers.map(({ id }) => id))
    expect(layers(setOf(recalled, { confirmed }))).toEqual([])
    expect(layers(setOf([loi]))).toEqual([])
  })
})

describe('isUnconfirmed', () => {
  it('isUnconfirmed asks for a limit from memory in a layer that nobody has confirmed', () => {
    const recalled = [{ ...loi, basis: { memory: 'recalled' } }]
    expect([
      isUnconfirmed(setOf(recalled)),
      isUnconfirmed(setOf(recalled, { confirmed })),
      isUnconfirmed(setOf([{ ...loi, basis: { read: 'table 1' } }])),
      isUnconfirmed(setOf([loi])),
    ]).toEqual([true, false, false, false])
  })

  it('isUnconfirmed finds it in a member of a group', () => {
    expect(isUnconfirmed(setOf([{ clause: 'g', 'any-of': [{ ...loi, basis: { memory: 'x' } }] }]))).toBe(true)
  })

  it('isUnconfirmed finds nobody to have confirmed a layer that the set does not list', () => {
    const set = setOf([{ ...loi, basis: { memory: 'recalled' } }], { confirmed })
    expect(isUnconfirmed({ ...set, layers: [] })).toBe(true)
  })
})
