/** A scatter of more marks than can be told apart. */
import { describe, expect, it } from 'vitest'
import { withoutCovered } from '../../src/charts/paired-thinning.ts'

describe('withoutCovered', () => {
  it('draws all of few marks', () => {
    const points = Array.from({ length: 400 }, () => ({ strength: 80, resistivity: 200 }))
    expect(withoutCovered(points)).toEqual(points)
  })

  it('draws the newest of those that would cover one another, and each that stands alone', () => {
    const crowd = Array.from({ length: 500 }, (_, lot) => ({ strength: 80, resistivity: 200, lot }))
    const alone = { strength: 60, resistivity: 90, lot: 500 }
    const far = { strength: 100, resistivity: 400, lot: 501 }
    expect(withoutCovered([alone, ...crowd, far])).toEqual([alone, crowd.at(-1), far])
  })
})
