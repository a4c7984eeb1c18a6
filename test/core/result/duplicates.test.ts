import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { duplicatesOf } from '../../../src/core/result/duplicates.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { result } from '../judging/fixture.ts'

const on = (day: number, value: number, more: Partial<Result> = {}) =>
  result('density', value, { tested: readMoment(`2026-03-0${day}`), ...more })

describe('duplicatesOf', () => {
  it('duplicatesOf takes the first two tests of one sample, in any order of the record', () => {
    const tests = [on(3, 2.7), on(1, 2.4), on(2, 2.5)]
    for (const some of [tests, tests.toReversed()])
      expect(duplicatesOf(on(3, 2.7), some)).toEqual({ first: 2.4, difference: expect.closeTo(0.1, 12) })
  })

  it('duplicatesOf takes no other sample, no other laboratory, nothing that is not valid or only a bound', () => {
    const own = on(1, 2.4)
    for (const more of [
      { sample: 'G' },
      { laboratory: 'hill' },
      { valid: false },
      { censored: 'below' as const },
    ])
      expect(duplicatesOf(own, [own, on(2, 2.5, more)])).toBeUndefined()
    expect(duplicatesOf(own, [own])).toBeUndefined()
  })
})
