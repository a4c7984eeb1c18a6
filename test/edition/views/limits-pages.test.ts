import { describe, expect, it } from 'vitest'
import { limitsByProperty } from '../../../src/edition/views/limits-by-property.ts'
import { limitedProperties, limitsPage } from '../../../src/edition/views/limits-pages.ts'
import { tinyEdition } from '../tiny-edition.ts'
import { base, supplement } from './criterion-fixture.ts'

const edition = tinyEdition([], [], {
  criteria: new Map([base, supplement].map((set) => [set.id, set])),
  conditions: new Map([['c311', { title: '20 %, 23 °C' }]]) as never,
})
const page = (key: 'density' | 'strength-activity-index') =>
  limitsPage(edition, key, limitsByProperty(edition.criteria.values()).get(key) ?? [])

describe('limitedProperties', () => {
  it('counts clauses and sets of each property that has a limit', () => {
    const own = limitedProperties(edition)
    expect(own.find(({ title }) => title === 'Density')).toEqual({
      title: 'Density',
      href: '/a/limits/density/',
      count: '2 clauses in 2 specifications',
    })
    expect(own.map(({ title }) => title)).not.toContain('Moisture')
  })
})

describe('limitsPage', () => {
  it('has a heading for each condition of a mortar’s property, and warns of comparing them', () => {
    const { groups, lead, name } = page('strength-activity-index')
    expect(groups.map(({ heading, limits }) => [heading, limits.label])).toEqual([
      ['20\u00a0%, 23\u00a0°C', 'Limits, 20\u00a0%, 23\u00a0°C'],
    ])
    expect(lead).toContain('numbers at different conditions are not comparable')
    expect(name).toBe('strength activity index')
  })
  it('has none for a property without conditions', () => {
    const { groups, lead } = page('density')
    expect(groups.map(({ heading, limits }) => [heading, limits.label])).toEqual([[null, 'Limits']])
    expect(lead).not.toContain('condition and age')
  })
})
