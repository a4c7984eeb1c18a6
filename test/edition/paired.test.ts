import { describe, expect, it } from 'vitest'
import type { Quantity } from '../../src/core/units.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { pairedGroups, patternSentence, quadrantOf, type RouteLimit, type RoutePair, type SourceCounts } from '../../src/edition/paired.ts'
import { loadRecords } from '../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })
const groups = pairedGroups(edition)

function limit(value: number, more: Partial<RouteLimit> = {}): RouteLimit {
  const quantity: Quantity = { kind: 'fraction', value, unit: '%', written: `${value} %`, decimals: 0 }
  return { value, operator: 'at-least', quantity, words: `at least ${value} %`, sets: [{ id: 'set', name: 'Set' }], sources: ['s'], ...more }
}
const pair: RoutePair = { strength: limit(75), resistivity: limit(250) }

describe('quadrantOf', () => {
  it('counts a value on the limit as met, on either route', () => {
    expect(quadrantOf({ strength: 75, resistivity: 250 }, pair)).toBe('both')
    expect(quadrantOf({ strength: 75, resistivity: 200 }, pair)).toBe('strength')
    expect(quadrantOf({ strength: 70, resistivity: 250 }, pair)).toBe('resistivity')
    expect(quadrantOf({ strength: 70, resistivity: 200 }, pair)).toBe('neither')
  })
  it('rounds to the limit’s digits, or to the clause’s own step, as judging does', () => {
    expect(quadrantOf({ strength: 74.6, resistivity: 249.4 }, pair)).toBe('strength')
    expect(quadrantOf({ strength: 74.6, resistivity: 250 }, { ...pair, strength: limit(75, { resolution: 0.1 }) })).toBe('resistivity')
  })
  it('asks for more than the limit where the limit is "above"', () => {
    expect(quadrantOf({ strength: 75, resistivity: 250 }, { ...pair, strength: limit(75, { operator: 'above' }) })).toBe('resistivity')
  })
})

describe('patternSentence', () => {
  const counts = (quadrants: SourceCounts['quadrants'], inert = false): SourceCounts => ({ source: 's', name: 'Ash', inert, lots: Object.values(quadrants).reduce((a, b) => a + b), quadrants })
  it('says what every lot does, or how many pass by one route alone, and nothing else', () => {
    expect(patternSentence(counts({ both: 4, strength: 0, resistivity: 0, neither: 0 }))).toBe('Every lot of Ash meets both routes.')
    expect(patternSentence(counts({ both: 0, strength: 0, resistivity: 0, neither: 4 }, true))).toBe('No lot of the inert reference Ash meets either route.')
    expect(patternSentence(counts({ both: 2, strength: 1, resistivity: 3, neither: 0 }))).toBe('Of 6 lots of Ash, 1 passes by strength alone and 3 pass by resistivity alone.')
    expect(patternSentence(counts({ both: 2, strength: 0, resistivity: 0, neither: 1 }))).toBeNull()
    expect(patternSentence(counts({ both: 0, strength: 0, resistivity: 0, neither: 0 }))).toBeNull()
  })
})

describe('pairedGroups on the demonstration content', () => {
  it('has a point for every lot with both indices, counted anew from the lots’ results', () => {
    expect(groups.map(({ condition, age }) => `${condition} ${age}`)).toEqual(['modified-50c 28 d', 'c311 28 d'])
    for (const { condition, age, points } of groups) {
      let lots = 0
      for (const lot of edition.lots.values()) {
        const found = new Set(lot.results.filter((result) => result.role === 'producer' && result.valid && result.condition === condition && result.age === age).map((result) => result.property))
        if (lot.withdrawn === undefined && found.has('strength-activity-index') && found.has('resistivity-index')) lots += 1
      }
      expect(points).toHaveLength(lots)
      expect(lots).toBeGreaterThan(100)
    }
  })
  it('counts each lot of a source once, and as the two sets for one route judge it', () => {
    const [group] = groups
    if (group?.pair === undefined) throw new Error('no pair of limits')
    for (const { lots, quadrants } of group.sources) expect(Object.values(quadrants).reduce((a, b) => a + b)).toBe(lots)
    for (const point of group.points) {
      const outcome = (set: string) => edition.lots.get(point.lot)?.verdicts.find(({ criterion }) => criterion === set)?.outcome === 'meets'
      const [strength, resistivity] = [outcome('modified-strength'), outcome('resistivity-option')]
      expect(quadrantOf(point, group.pair)).toBe(strength ? (resistivity ? 'both' : 'strength') : resistivity ? 'resistivity' : 'neither')
    }
  })
  it('has limits of sets in force with the sets’ names, and counts only where each route has one', () => {
    const [modified, standard] = groups
    expect(modified?.limits.strength.map(({ value, sets }) => [value, sets.map(({ id }) => id)])).toEqual([[70, ['strength-or-resistivity', 'modified-strength']]])
    expect(modified?.limits.resistivity.map(({ value, sets }) => [value, sets.map(({ id }) => id)])).toEqual([[250, ['strength-or-resistivity', 'resistivity-option']]])
    expect(standard?.limits.strength.map(({ value }) => value)).toEqual([75])
    expect(standard?.limits.resistivity).toEqual([])
    expect(standard?.pair).toBeUndefined()
  })
  it('knows the inert reference by its kind', () => {
    expect(groups[0]?.sources.filter(({ inert }) => inert).map(({ source }) => source)).toEqual(['tarn-hollow-limestone'])
  })
})
