/** The interval of an index, in words. */
import type { Interval } from '../core/statistics/ratio-interval.ts'
import { plainNumber } from './numbers.ts'

/** "73.9 % to 79.1 %", what an unbounded set says, or that nothing scatters. */
export function intervalWords(
  { shape, low, high }: Pick<Interval, 'shape' | 'low' | 'high'>,
  decimals: number,
): string {
  if (low !== null && low === high) return NO_SCATTER
  const [from, to] = [low, high].map((end) => (end === null ? '' : `${plainNumber(end, decimals)} %`))
  switch (shape) {
    case 'bounded':
      return `${from} to ${to}`
    case 'above':
      return `above ${from}`
    case 'below':
      return `below ${to}`
    case 'outside':
      return `unbounded: everything except ${from} to ${to}`
    case 'all':
      return 'unbounded: the readings rule out no ratio'
  }
}

/** Equal readings tell nothing of how far another batch of specimens would lie away. */
const NO_SCATTER = 'no scatter between specimens: no interval'

/** The interval at its level, with what it leaves out: "95 %: 73.9 % to 79.1 %, within this batch only". */
export function leveledIntervalWords(interval: Interval, decimals: number): string {
  const words = intervalWords(interval, decimals)
  return words === NO_SCATTER ? words : `${100 * interval.level} %: ${words}, within this batch only`
}

/** How it was found, with its degrees of freedom. */
export function intervalMethodWords({ method, df }: Pick<Interval, 'method' | 'df'>): string {
  return method === 'fieller'
    ? `Fieller, unequal variances, ${plainNumber(df, 1)} degrees of freedom`
    : `log scale, one pooled coefficient of variation, ${df} degrees of freedom`
}

/** The same with what it leaves out: another batch of the same materials may differ by more. */
export function intervalScopeWords(interval: Pick<Interval, 'method' | 'df'>): string {
  return `${intervalMethodWords(interval)}, within this batch only`
}
