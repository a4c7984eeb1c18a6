import { describe, expect, it } from 'vitest'
import { CHECKS } from '../../../src/core/checks/catalogue.ts'
import { checksRun, poissonRange } from '../../../src/core/checks/checked.ts'
import { checksRunWords } from '../../../src/words/checks-run.ts'

describe('poissonRange', () => {
  // scipy 1.17.1, poisson.ppf(0.025) and ppf(0.975).
  it.each([
    [0, 0, 0],
    [0.4, 0, 2],
    [4.4, 1, 9],
    [20, 12, 29],
    [200, 173, 228],
  ])('of %f goes from %i to %i', (expected, low, high) => {
    expect(poissonRange(expected)).toEqual({ low, high })
  })
})

describe('checksRun', () => {
  const looks = [
    { check: 'split-beyond-limit', looked: 40, findings: [] },
    { check: 'out-of-control', looked: 3, expected: 0.11, findings: [] },
    { check: 'out-of-control', looked: 1, expected: 0.02, findings: [] },
    { check: 'number-gap', looked: 12, findings: [] },
  ] as const

  it('by hand: 40 pairs at 0.045 and four charts at their own 0.13 make 1.93 in 44 tests', () => {
    const run = checksRun(looks, 12)
    expect(run).toMatchObject({ run: 3, lots: 12, tests: 44 })
    expect(run.expectedByChance).toEqual({ expected: expect.closeTo(1.93, 9), low: 0, high: 5 })
    expect(run.looks.map(({ check, expected }) => [check, expected])).toEqual([
      ['number-gap', null],
      ['out-of-control', expect.closeTo(0.13, 9)],
      ['split-beyond-limit', expect.closeTo(1.8, 9)],
    ])
    expect(checksRunWords(run)).toBe(
      '3 checks on 12 lots; about 1.9 flags expected by chance (0 to 5) in 44 tests, each at its own level',
    )
    expect(checksRunWords(checksRun(looks.slice(3), 12))).toBe(
      '1 check on 12 lots, none of them a statistical test, so chance alone raises no flag',
    )
    expect(checksRunWords(checksRun(looks.slice(1, 2), 12))).toBe(
      '1 check on 12 lots; about 0.1 flags expected by chance (0 to 1) in 3 tests, each at its own level',
    )
    expect(checksRunWords(checksRun([{ ...looks[2], expected: 0.01, looked: 2 }], 3))).toBe(
      '1 check on 3 lots, with 2 statistical tests among them, of which chance alone should flag none',
    )
    expect(checksRunWords(checksRun([], 0))).toBe('nothing on record to check yet')
  })
  it('has a rate for every check of an agency that tests, and none for one that compares with a limit', () => {
    expect(CHECKS['split-bias'].rate).toBe(0.01)
    expect(CHECKS['agency-other-side'].rate).toBeUndefined()
    expect(CHECKS['uniformity-exceeded'].rate).toBeUndefined()
  })
})
