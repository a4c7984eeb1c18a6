/** Readings that stand alike in two lots, by a plain comparison of every lot with every other. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readingsIndex, type ReadingsOfLot } from '../../../src/core/checks/readings-alike.ts'

function analysis(...values: readonly string[]): ReadingsOfLot {
  return { of: 'oxides', sample: 'C', laboratory: 'works', values }
}

function indexOf(lots: Readonly<Record<string, readonly ReadingsOfLot[]>>) {
  return readingsIndex(Object.keys(lots), (lot) => lots[lot] ?? [])
}

// "Aa" and "BB" have the same number under the rule of 31, as two texts of different readings may.
const [ONE, OTHER] = [analysis('Aa', '2', '3', '4', '5'), analysis('BB', '2', '3', '4', '5')]

it('readingsIndex keeps texts that stand in several lots, and no other, though their numbers agree', () => {
  expect([...indexOf({ 'ash/1': [ONE], 'ash/2': [OTHER] })]).toEqual([])
  expect([...indexOf({ 'ash/1': [ONE], 'ash/2': [OTHER], 'ash/3': [ONE, ONE] }).values()]).toEqual([
    ['ash/1', 'ash/3'],
  ])
})

it('readingsIndex leaves out readings of fewer values than could not agree by chance', () => {
  expect([...indexOf({ 'ash/1': [analysis('1', '2')], 'ash/2': [analysis('1', '2')] })]).toEqual([])
})

it('readingsIndex knows for each reading the lots that a comparison with all others finds', () => {
  const reading = fc.constantFrom(ONE, OTHER, analysis('1', '2', '3', '4', '5'), analysis('1'))
  fc.assert(
    fc.property(fc.array(fc.array(reading, { maxLength: 3 }), { maxLength: 8 }), (drawn) => {
      const lots = Object.fromEntries(drawn.map((readings, place) => [`ash/${place}`, readings]))
      const index = indexOf(lots)
      const text = ({ values }: ReadingsOfLot) => `oxides|${values.join('|')}`
      for (const known of [ONE, OTHER, analysis('1', '2', '3', '4', '5')]) {
        const holders = Object.keys(lots).filter((id) => lots[id]?.some((own) => text(own) === text(known)))
        expect(index.get(text(known)) ?? []).toEqual(holders.length < 2 ? [] : holders)
      }
    }),
  )
})
