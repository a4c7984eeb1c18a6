/**
 * The interval of a ratio of two means from the specimens' own scatter: what one batch says of itself, and
 * nothing of the next.
 */
import { quantile } from './distributions.ts'
import { mean, standardDeviation } from './descriptive.ts'

/**
 * Bounded: from low to high. Below or above: one end is open. Outside: everything but what lies between low
 * and high. All: every
 * ratio is compatible with the readings. Ends in per cent.
 */
export interface Interval {
  readonly level: number
  /** Fieller's with unequal variances; on the log scale with one pooled coefficient of variation. */
  readonly method: 'fieller' | 'log-scale'
  readonly df: number
  readonly shape: 'bounded' | 'below' | 'above' | 'outside' | 'all'
  readonly low: number | null
  readonly high: number | null
}

const LEVEL = 0.95

/**
 * Fieller's interval with unequal variances, in per cent.
 * @param test,control specimens that count, two or more each, one unit, control mean above zero
 * @returns null where either mortar has fewer than two specimens: one specimen has no scatter
 * Method: the ratios ρ with |A − ρB| ≤ t √(VA + ρ² VB), V variances of the means, Satterthwaite's degrees of
 * freedom taken at A/B.
 * Source: Fieller 1954 (J. R. Stat. Soc. B 16, 175-185; from memory); unequal variances as the R package
 * mratios does it.
 */
export function strengthInterval(
  test: readonly number[],
  control: readonly number[],
  level = LEVEL,
): Interval | null {
  if (test.length < 2 || control.length < 2) return null
  const [a, b] = [mean(test), mean(control)]
  const [va, vb] = [
    standardDeviation(test) ** 2 / test.length,
    standardDeviation(control) ** 2 / control.length,
  ]
  const df = satterthwaite({ va, vb, ratio: a / b, na: test.length, nb: control.length })
  const t = quantile((1 + level) / 2, df)
  return {
    level,
    method: 'fieller',
    df,
    ...solutionSet({ a, b, va, vb, t }),
  }
}

interface Satterthwaite {
  readonly va: number
  readonly vb: number
  readonly ratio: number
  readonly na: number
  readonly nb: number
}

/** Without any scatter the degrees of freedom of both together. */
function satterthwaite({ va, vb, ratio, na, nb }: Satterthwaite): number {
  const other = ratio * ratio * vb
  const below = va ** 2 / (na - 1) + other ** 2 / (nb - 1)
  return below === 0 ? na + nb - 2 : (va + other) ** 2 / below
}

interface Quadratic {
  readonly a: number
  readonly b: number
  readonly va: number
  readonly vb: number
  readonly t: number
}

/** Where ρ²(b² − t²vb) − 2abρ + (a² − t²va) is not above zero. */
function solutionSet({ a, b, va, vb, t }: Quadratic): Pick<Interval, 'shape' | 'low' | 'high'> {
  const lead = b * b - t * t * vb
  const last = a * a - t * t * va
  const inner = t * t * (a * a * vb + b * b * va - t * t * va * vb)
  const percent = (value: number) => 100 * value
  if (lead === 0)
    return a * b === 0
      ? { shape: 'all', low: null, high: null }
      : a * b > 0
        ? { shape: 'above', low: percent(last / (2 * a * b)), high: null }
        : { shape: 'below', low: null, high: percent(last / (2 * a * b)) }
  if (inner < 0) return { shape: 'all', low: null, high: null }
  const root = Math.sqrt(inner)
  const ends = [(a * b - root) / lead, (a * b + root) / lead].map(percent).sort((x, y) => x - y) as [
    number,
    number,
  ]
  return { shape: 0 < lead ? 'bounded' : 'outside', low: ends[0], high: ends[1] }
}

/**
 * Interval on the log scale with one coefficient of variation pooled over both mortars, in per cent.
 * @param test,control specimens that count, at least one each and three together, one unit, all above zero
 * @returns null with fewer specimens
 * Method: ln(A/B) ± t c √(1/nA + 1/nB), c² the mean of both squared coefficients of variation weighted by
 * their degrees of freedom.
 * Source: own choice, since resistivity scatters in proportion to itself; the delta method for a log ratio.
 */
export function resistivityInterval(
  test: readonly number[],
  control: readonly number[],
  level = LEVEL,
): Interval | null {
  const df = test.length + control.length - 2
  if (test.length === 0 || control.length === 0 || df < 1) return null
  const squares = [test, control].reduce(
    (sum, values) =>
      sum + (values.length < 2 ? 0 : (values.length - 1) * (standardDeviation(values) / mean(values)) ** 2),
    0,
  )
  const half =
    quantile((1 + level) / 2, df) * Math.sqrt((squares / df) * (1 / test.length + 1 / control.length))
  const ratio = (100 * mean(test)) / mean(control)
  return {
    level,
    method: 'log-scale',
    df,
    shape: 'bounded',
    low: ratio * Math.exp(-half),
    high: ratio * Math.exp(half),
  }
}
