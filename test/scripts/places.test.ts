import { describe, expect, it } from 'vitest'
import { nearestPlace, placesOf, steppedIndex } from '../../src/scripts/places.ts'

describe('placesOf', () => {
  it('reads pairs of coordinates and gives none for an empty text', () => {
    expect(placesOf('12.3,45.6 78,90')).toEqual([
      [12.3, 45.6],
      [78, 90],
    ])
    expect(placesOf('')).toEqual([])
  })
})

describe('nearestPlace', () => {
  it('gives the place nearest across, the first of two at one distance', () => {
    const places = placesOf('10,0 20,0 30,0')
    expect([
      nearestPlace(places, -5),
      nearestPlace(places, 15),
      nearestPlace(places, 16),
      nearestPlace(places, 99),
    ]).toEqual([0, 0, 1, 2])
    expect(nearestPlace([], 5)).toBe(-1)
  })
})

describe('steppedIndex', () => {
  it('starts at the newest, stays within the series and leaves other keys alone', () => {
    expect(steppedIndex('ArrowLeft', -1, 5)).toBe(4)
    expect(steppedIndex('ArrowLeft', 0, 5)).toBe(0)
    expect(steppedIndex('ArrowRight', 4, 5)).toBe(4)
    expect(steppedIndex('ArrowRight', 1, 5)).toBe(2)
    expect([steppedIndex('Home', 3, 5), steppedIndex('End', 3, 5), steppedIndex('Tab', 3, 5)]).toEqual([
      0,
      4,
      null,
    ])
  })
})
