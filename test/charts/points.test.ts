import { describe, expect, it } from 'vitest'
import { dotsPath, type Joint, runs } from '../../src/charts/points.ts'

/** "a" joins, "." is passed over, "x" breaks. */
function runsOf(text: string): string[] {
  const joint = (letter: string): Joint =>
    letter === 'x' ? 'break' : letter === '.' ? 'passed-over' : 'joined'
  return runs([...text], joint).map((run) => run.join(''))
}

describe('runs', () => {
  it('joins neighbours, past what is passed over, up to a break', () => {
    expect(runsOf('ab.cxd')).toEqual(['abc', 'd'])
  })
  it('gives no empty run, whether breaks begin, end or follow each other', () => {
    expect(runsOf('xaxx.xbx')).toEqual(['a', 'b'])
    expect(runsOf('')).toEqual([])
    expect(runsOf('x.x')).toEqual([])
  })
})

describe('dotsPath', () => {
  it('moves to each place and draws nothing, and is empty without any', () => {
    expect(
      dotsPath([
        { x: 1, y: 2.5 },
        { x: 0, y: 0 },
      ]),
    ).toBe('M1,2.5h0M0,0h0')
    expect(dotsPath([])).toBe('')
  })
})
