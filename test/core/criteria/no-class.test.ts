import { describe, expect, it } from 'vitest'
import { hasNoClass } from '../../../src/core/criteria/no-class.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, result, setOf } from '../judging/fixture.ts'

const loi: WrittenClause = {
  clause: 'loi',
  property: 'loss-on-ignition',
  'at-most': { F: '6.0 %', C: '6.0 %' },
}
const moisture: WrittenClause = { clause: 'moisture', property: 'moisture', 'at-most': '3.0 %' }
const set = setOf([loi, moisture], { classes: ['F', 'C'] })
const dry = result('moisture', 1)
const burnt = result('loss-on-ignition', 2)
const isWithoutClass = (lotClass: string | null, results: ReturnType<typeof result>[]) =>
  hasNoClass(judge(set, evidenceOf(results, { class: lotClass })))

describe('hasNoClass', () => {
  it('holds where the claimed class is none of the set’s and no result is missing', () => {
    expect(isWithoutClass('S', [burnt, dry])).toBe(true)
  })
  it('does not hold where a result is missing as well, as under a class of the set', () => {
    expect(isWithoutClass('S', [burnt])).toBe(false)
    expect(isWithoutClass('F', [burnt])).toBe(false)
  })
  it('does not hold where no class is claimed, nor where all is judged', () => {
    expect(isWithoutClass(null, [burnt, dry])).toBe(false)
    expect(isWithoutClass('F', [burnt, dry])).toBe(false)
  })
})
