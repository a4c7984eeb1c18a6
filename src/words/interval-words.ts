/** The interval of an index, in words. */
import type { Interval } from '../core/statistics/ratio-interval.ts'
import { plainNumber } from './numbers.ts'

/** "73.9 % to 79.1 %", or what an unbounded set says. */
export function intervalWords(
  { shape, low, high }: Pick<Interval, 'shape' | 'low' | 'high'>,
  decimals: number,
): string {
  const [from, to] = [low, high].map((end) => (end === null ? '' : `${plainNumber(end, decimals)} %`))
  switch (shape) {
    case 'bounded':
      return `${from} to ${to}`
    case 'above':
      return `above ${from}`
    case 'below':
      return `below ${to}`
    case 'outside':
      return `unbounded: everything but ${from} to ${to}`
    case 'all':
      return 'unbounded: the readings exclude no ratio'
  }
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
