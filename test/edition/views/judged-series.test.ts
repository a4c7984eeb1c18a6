import { describe, expect, it } from 'vitest'
import { closestToLimit, type JudgedSeries } from '../../../src/edition/views/judged-series.ts'

/** A clause at a limit, with how far inside it each result lies. */
function series(clause: string, limit: number, ...inside: number[]): JudgedSeries {
  return {
    clause,
    title: clause,
    values: inside.map((own) => ({ judged: { clause, kind: 'value', inside: own, ends: [limit] } })),
  } as unknown as JudgedSeries
}

describe('closestToLimit', () => {
  it('takes the mean margin in standard deviations where there are enough results', () => {
    // Means of 6 and 4 in standard deviations of 1 and 0.5: 6 and 8.
    const found = closestToLimit([series('loss', 6, 3.5, 4, 4.5), series('index', 75, 5, 6, 7)])
    expect(found?.clause).toBe('index')
  })
  it('takes the margin as a share of its limit where no series has a scatter yet', () => {
    // 84 % of at least 75 %: 9/75 = 0.120; 96 % of at most 105 %: 9/105 = 0.086; 2.4 % of at most 6.0 %: 0.6.
    const all = [series('loss', 6, 3.6), series('index', 75, 9), series('water', 105, 9)]
    expect(closestToLimit(all)?.clause).toBe('water')
  })
  it('finds none without a result', () => expect(closestToLimit([])).toBeNull())
})
