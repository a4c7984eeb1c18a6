/** The same materials by two limits: who changes verdict. */
import { incompleteBeta } from '../../statistics/incomplete-beta.ts'

export interface TwoByTwo {
  readonly bothPass: readonly string[]
  readonly firstOnly: readonly string[]
  readonly secondOnly: readonly string[]
  readonly bothFail: readonly string[]
  /** Two-sided, exact: chance of so uneven a change where neither limit is the stricter. */
  readonly p: number
}

/** A material under the usual limit and under the new one. */
export interface JudgedTwice {
  readonly material: string
  readonly first: boolean
  readonly second: boolean
}

/**
 * Two verdicts on the same materials.
 * @param judged each material once
 * Source: McNemar 1947, Psychometrika 12, 153-157, as an exact sign test (from memory).
 */
export function twoByTwo(judged: readonly JudgedTwice[]): TwoByTwo {
  const of = (first: boolean, second: boolean) =>
    judged.filter((one) => one.first === first && one.second === second).map(({ material }) => material)
  const [firstOnly, secondOnly] = [of(true, false), of(false, true)]
  const n = firstOnly.length + secondOnly.length
  const fewer = Math.min(firstOnly.length, secondOnly.length)
  return {
    bothPass: of(true, true),
    firstOnly,
    secondOnly,
    bothFail: of(false, false),
    // P(X ≤ k) = I(½; n − k, k + 1) for k below n.
    p: n === 0 ? 1 : Math.min(1, 2 * incompleteBeta(0.5, n - fewer, fewer + 1)),
  }
}
