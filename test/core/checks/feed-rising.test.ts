import { describe, expect, it } from 'vitest'
import { feedRising } from '../../../src/core/checks/feed-rising.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const RISING = [20, 21, 20, 22, 22, 23, 22, 24]

const lots = (moistures: readonly number[]) =>
  moistures.map((feedMoisture, place) => ({ id: `vale/${place}`, results: [], feedMoisture }))

describe('feedRising', () => {
  it('asks about a slope whose 99 % interval lies above nothing', () => {
    const [finding] = feedRising('vale', lots(RISING)).findings
    // scipy.stats.linregress and t.ppf(0.995, 6) of scipy 1.17.1: 0.5 ± 0.40451 per lot; neighbours do not resemble.
    expect(finding?.reason.params).toMatchObject({
      slope: expect.closeTo(5, 10),
      half: expect.closeTo(4.045135605076495, 6),
    })
    expect(finding && wordedFinding(finding, PLAIN_NAMES).sentence).toBe(
      'The moisture of the feed of vale rises by 5.00 ± 4.05 points per ten lots over its last 8',
    )
  })
  it('asks nothing of a feed that dries, of scatter, nor of fewer than eight lots', () => {
    expect(feedRising('vale', lots(RISING.toReversed())).findings).toEqual([])
    expect(feedRising('vale', lots([20, 24, 19, 25, 20, 24, 19, 25])).findings).toEqual([])
    expect(feedRising('vale', lots(RISING.slice(1))).looked).toBe(0)
  })
})
