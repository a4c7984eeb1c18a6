import { describe, expect, it } from 'vitest'
import { judgeCount } from '../../../src/core/mortar/specimen-count.ts'

const CUBES = [{ of: 3 }, { of: 2 }]
const of = (n: number) => ({ tested: n, counted: n })

describe('judgeCount', () => {
  it('judgeCount notes fewer than planned: as the condition says, else as the range rules speak of', () => {
    expect(judgeCount(of(1), { planned: 6 }, CUBES)).toEqual({
      valid: true,
      reasons: [{ code: 'fewer-specimens', params: { n: 1, planned: 6 } }],
    })
    expect(judgeCount(of(2), undefined, CUBES).reasons).toEqual([
      { code: 'fewer-specimens', params: { n: 2, planned: 3 } },
    ])
    expect(judgeCount(of(3), undefined, CUBES)).toEqual({ valid: true, reasons: [] })
    expect(judgeCount(of(1), undefined, [])).toEqual({ valid: true, reasons: [] })
  })

  it('judgeCount counts a specimen that the range drops as tested, not as one behind the mean', () => {
    const judged = judgeCount({ tested: 3, counted: 2 }, { 'at-least': 3 }, CUBES)
    expect(judged).toEqual({
      valid: false,
      reasons: [{ code: 'too-few-specimens', params: { n: 2, atLeast: 3 } }],
    })
  })

  it('judgeCount is not valid below the least, unless the condition only notes it', () => {
    const least = { planned: 3, 'at-least': 2 }
    expect(judgeCount(of(2), least, []).valid).toBe(true)
    expect(judgeCount(of(1), least, []).valid).toBe(false)
    const flagged = judgeCount(of(1), { ...least, fewer: 'flag' }, [])
    expect(flagged.valid).toBe(true)
    expect(flagged.reasons.map(({ code }) => code)).toEqual(['fewer-specimens', 'too-few-specimens'])
  })

  it('judgeCount says nothing of a number that is not known', () => {
    expect(judgeCount(of(0), { planned: 3, 'at-least': 2 }, CUBES)).toEqual({ valid: true, reasons: [] })
  })
})
