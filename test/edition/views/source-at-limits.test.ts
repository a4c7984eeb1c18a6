/** Histograms of the demonstration's sources at their limits. */
import { describe, expect, it } from 'vitest'
import { atTheLimits } from '../../../src/core/checks/at-the-limits.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { chosenLimits, limitHistograms } from '../../../src/edition/views/source-at-limits.ts'
import { loadRecords } from '../../../src/records/load.ts'

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })
const limitsOf = (id: string) => atTheLimits(edition.lotsOf(id).map((row) => edition.lot(row.id)))

describe('limitHistograms', () => {
  it('draws each value of a limit once, and says bunched where the check does', () => {
    let bunched = 0
    for (const id of edition.sources.keys()) {
      const limits = chosenLimits(limitsOf(id))
      const views = limitHistograms(edition, edition.source(id))
      expect(views, id).toHaveLength(limits.length)
      for (const [place, { model, sentences }] of views.entries()) {
        const limit = limits[place]
        expect(model.bars.reduce((sum, { count }) => sum + count, 0)).toBe(limit?.values.length)
        expect(sentences[0]?.startsWith('Bunched')).toBe(limit?.shown === 'bunched')
        bunched += limit?.shown === 'bunched' ? 1 : 0
      }
    }
    expect(bunched).toBeGreaterThan(0)
  })

  it('has bars of half a side of the window, so that the two on either side add up to what the check counts', () => {
    for (const id of edition.sources.keys())
      for (const [place, { model }] of limitHistograms(edition, edition.source(id)).entries()) {
        const { edge = 0, width = 0, side, admitted, refused } = chosenLimits(limitsOf(id))[place] ?? {}
        const inWindow = (from: number, to: number) =>
          model.bars
            .filter((bar) => from - width / 100 < bar.from && bar.from < to - width / 100)
            .reduce((sum, { count }) => sum + count, 0)
        const [below, above] = [inWindow(edge - width, edge), inWindow(edge, edge + width)]
        expect(side === 'low' ? [above, below] : [below, above]).toEqual([admitted, refused])
      }
  })
})

describe('chosenLimits', () => {
  it('leaves out all limits but those of indices and the closest other', () => {
    const limits = limitsOf('skarnmere-ash')
    const others = chosenLimits(limits).filter(({ property }) => !property.includes('index'))
    expect(others.length).toBe(1)
    expect(chosenLimits(limits).length).toBeLessThan(limits.length)
  })
})
