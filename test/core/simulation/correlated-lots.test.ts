/** How often two checks of a source ask without any cause, of lots that resemble their neighbours as of others. */
import { describe, expect, it } from 'vitest'
import type { AuditedLot } from '../../../src/core/checks/audited.ts'
import { CHECKS } from '../../../src/core/checks/catalogue.ts'
import { feedRising } from '../../../src/core/checks/feed-rising.ts'
import { lotsAlike } from '../../../src/core/checks/lots-alike.ts'
import { correlated } from '../../../src/core/statistics/false-alarms.ts'
import { chanceError, normal, shareOf } from './chance.ts'

const stated = (check: 'feed-rising' | 'lots-alike') => CHECKS[check].rate ?? Number.NaN

describe('feedRising, without any cause', () => {
  it.each([
    { phi: 0, lots: 20, seed: 41 },
    { phi: 0.4, lots: 8, seed: 42 },
    { phi: 0.4, lots: 12, seed: 43 },
    { phi: 0.4, lots: 20, seed: 44 },
  ])('asks as seldom as it states of $lots lots of correlation $phi', ({ phi, lots, seed }) => {
    const [trials, draw] = [6000, normal(seed)]
    const share = shareOf(trials, () => {
      const made = correlated(phi, lots, draw).map((value, place) => {
        return { id: `vale/${place}`, results: [], feedMoisture: 20 + value }
      })
      return 0 < feedRising('vale', made).findings.length
    })
    expect(share).toBeLessThan(stated('feed-rising') + chanceError(stated('feed-rising'), trials))
    // Half a per cent, what one end of a 99 % interval leaves out, would not do for lots that are alike.
    if (0 < phi) expect(share).toBeGreaterThan(0.005)
  })
})

describe('lotsAlike, without any cause', () => {
  /** Property, mean, standard deviation and decimals, as an ash has them. */
  const MEASURED = [
    ['density', 2.3, 0.02, 2],
    ['loss-on-ignition', 2.5, 0.3, 2],
    ['moisture', 0.15, 0.04, 2],
    ['residue-45um', 17, 1.5, 1],
  ] as const

  it.each([
    { phi: 0, lots: 100, seed: 51 },
    { phi: 0.4, lots: 40, seed: 52 },
    { phi: 0.4, lots: 100, seed: 53 },
  ])('asks as seldom as it states of $lots lots of correlation $phi', ({ phi, lots, seed }) => {
    const [trials, draw] = [1000, normal(seed)]
    const share = shareOf(trials, () => {
      const columns = MEASURED.map(([property, mean, deviation, decimals]) => ({
        property,
        written: correlated(phi, lots, draw).map((value) => (mean + deviation * value).toFixed(decimals)),
      }))
      const made = Array.from({ length: lots }, (_, place) => ({
        id: `vale/${place}`,
        results: columns.map(({ property, written }) => {
          return { property, role: 'producer', valid: true, written: written[place] }
        }),
      })) as unknown as AuditedLot[]
      return 0 < lotsAlike('vale', made).findings.length
    })
    expect(share).toBeLessThan(stated('lots-alike') + chanceError(stated('lots-alike'), trials))
  })
})
