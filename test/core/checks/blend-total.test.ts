import { describe, expect, it } from 'vitest'
import { blendTotal } from '../../../src/core/checks/blend-total.ts'
import { wordedFinding } from '../../../src/words/findings.ts'
import { PLAIN_NAMES } from '../../words/plain-names.ts'

const blend = (...percents: readonly number[]) =>
  blendTotal(
    'vale/A',
    percents.map((percent, place) => ({ source: `s${place + 1}`, percent })),
  )

describe('blendTotal', () => {
  it('asks about shares that are not 100 % together, beyond half a point of rounding', () => {
    const [finding] = blend(60, 30).flatMap(({ findings }) => findings)
    expect(finding && wordedFinding(finding, PLAIN_NAMES)).toMatchObject({
      id: 'blend-total/vale/A',
      sentence: 'The constituents of lot A of vale add up to 90.0 %',
      evidence: ['s1 60.0 %, s2 30.0 %'],
    })
    expect(blend(60, 40.6).flatMap(({ findings }) => findings)).toHaveLength(1)
  })
  it('asks nothing of a whole, nor of a lot that is no blend', () => {
    expect(blend(60, 40.5).flatMap(({ findings }) => findings)).toEqual([])
    expect(blend()).toEqual([])
  })
})
