import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import {
  newestPoints,
  type PairedPoint,
  type PairedSource,
} from '../../../src/edition/views/paired-points.ts'

const DAYS = ['2026-03-01', '2026-03-02', '2026-03-03', '2026-03-04'].map(readMoment)

/** Sources with the days on which their lots were tested, several on one day. */
const tested = fc.array(fc.array(fc.constantFrom(...DAYS), { maxLength: 8 }), { maxLength: 6 })

/** The order of the day, then of the lot. */
function inOrder(points: readonly PairedPoint[]): PairedPoint[] {
  return points.toSorted((a, b) => a.tested.day - b.tested.day || (a.lot < b.lot ? -1 : 1))
}

function sourceOf(days: readonly (typeof DAYS)[number][], place: number): PairedSource {
  const id = `source-${place}`
  const points = days.map((day, lot) => ({
    lot: `${id}/${lot}`,
    number: String(lot),
    tested: day,
    strength: 90,
    resistivity: 300,
  }))
  return { id, name: id, kind: 'raw-natural-pozzolan', inert: false, points: inOrder(points) }
}

it('newestPoints gives the last of all points, as sorting them does', () => {
  fc.assert(
    fc.property(tested, fc.integer({ min: 1, max: 12 }), (days, most) => {
      const sources = days.map(sourceOf)
      const all = inOrder(sources.flatMap(({ points }) => points))
      expect(newestPoints(sources, most)).toEqual(all.slice(-most))
    }),
  )
})
