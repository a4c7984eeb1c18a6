import { describe, expect, it } from 'vitest'
import { activityIndex } from '../../../src/core/strength/activity-index.ts'
import { controlStanding } from '../../../src/core/history/control-standing.ts'

const of = (value: number, cement = 'A') => ({ cement, value })

describe('controlStanding', () => {
  it('takes the index against the mean of earlier batches of the same cement, hand-worked', () => {
    // Test 33 MPa over 44: 75 %. Earlier 39 and 41, mean 40: the control stands 10 % above it, and 33 over 40
    // is 82.5 %.
    const found = controlStanding(75, of(44), [of(39), of(99, 'B'), of(41)])
    expect(found).toEqual({ mean: 40, batches: 2, abovePercent: expect.closeTo(10, 10), indexAtMean: 82.5 })
    expect(found?.indexAtMean).toBe(activityIndex(33, 40))
  })

  it('looks back ten batches and no further', () => {
    const found = controlStanding(80, of(40), [of(1), ...Array.from({ length: 10 }, () => of(40))])
    expect(found).toMatchObject({ mean: 40, batches: 10, abovePercent: 0, indexAtMean: 80 })
  })

  it('knows nothing of the first batch of a cement', () =>
    expect(controlStanding(80, of(40, 'C'), [of(39), of(41, 'B')])).toBeNull())
})
