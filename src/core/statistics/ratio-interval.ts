/**
 * The interval of a ratio of two means from the specimens' own scatter: what one batch says of itself, and
 * nothing of the next.
 */
import { quantile } from './distributions.ts'
import { mean, standardDeviation } from './descriptive.ts'

/**
 * Bounded: from low to high. Below or above: one end is open. Outside: everything but what lies between low
 * and high. All: every ratio is compatible with the readings. Ends in per cent.
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

/** Own choice. */
const LEVEL = 0.95

/**
 * Fieller's interval of a ratio of two means with unequal variances, from this batch's specimens alone.
 * @param test,control values of the specimens that count, in one unit; the control's mean above zero
 * @param level confidence, between 0 and 1
 * @returns ends in per cent of the control, unrounded; null where either mortar has fewer than two specimens
 * Notes: 1. `bounded` unless the control's mean is not clear of zero, otherwise ends may be null; 2. scatter
 * from batch to batch is not in it; 3. without any scatter both ends are the ratio itself.
 * Source: Fieller 1954, J. R. Stat. Soc. B 16, 175-185, in the form of the R package mratios; degrees of
 * freedom by Welch and Satterthwaite, JCGM 100:2008, G.4.1, equation (G.2b), at the ratio of the means.
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
  // JCGM 100:2008, G.3.2.
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
  // JCGM 100:2008, G.4.1, equation (G.2b), taken at the ratio itself (Tamhane and Logan 2004, as in mratios).
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

/** Below this share of b² the leading term is zero: it is a difference of two numbers with 15 digits each. Own choice. */
const NO_LEAD = 1e-12

/**
 * Where ρ²(b² − t²vb) − 2abρ + (a² − t²va) is not above zero: the roots of Fieller 1954, as the R package
 * mratios and the help of NIST Dataplot (ratio of means) write them. The shapes: von Luxburg and Franz, arXiv
 * 0711.0198, theorem 3; half-lines where the leading term is zero are own arithmetic.
 */
function solutionSet({ a, b, va, vb, t }: Quadratic): Pick<Interval, 'shape' | 'low' | 'high'> {
  if (va === 0 && vb === 0) return { shape: 'bounded', low: (100 * a) / b, high: (100 * a) / b }
  const lead = b * b - t * t * vb
  const last = a * a - t * t * va
  const inner = t * t * (a * a * vb + b * b * va - t * t * va * vb)
  if (Math.abs(lead) <= NO_LEAD * b * b) return halfLine(a * b, last)
  if (inner < 0) return { shape: 'all', low: null, high: null }
  // Both roots without a difference of nearly equal numbers (Press and others, Numerical Recipes, section 5.6).
  const sum = a * b + (a * b < 0 ? -1 : 1) * Math.sqrt(inner)
  const roots = [sum / lead, sum === 0 ? 0 : last / sum].map((root) => 100 * root)
  const shape = 0 < lead ? 'bounded' : 'outside'
  return { shape, low: Math.min(...roots), high: Math.max(...roots) }
}

/** Where 2abρ is at least a² − t²va. @param product a b */
function halfLine(product: number, last: number): Pick<Interval, 'shape' | 'low' | 'high'> {
  if (product === 0) return { shape: 'all', low: null, high: null }
  const end = (100 * last) / (2 * product)
  return 0 < product ? { shape: 'above', low: end, high: null } : { shape: 'below', low: null, high: end }
}

/**
 * Interval of a ratio of two means on the log scale, with one coefficient of variation for both mortars.
 * @param test,control values of the specimens that count, in one unit, all above zero
 * @param level confidence, between 0 and 1
 * @returns bounded, ends in per cent of the control, unrounded; null unless each mortar has a specimen and
 * both together three
 * Notes: 1. own choice, since resistivity scatters in proportion to itself; 2. a mortar of one specimen takes
 * on the other's scatter; 3. scatter from batch to batch is not in it; 4. pooling by degrees of freedom is
 * own, too.
 * Source: log ratio of means, Hedges, Gurevitch and Curtis 1999, Ecology 80, 1150-1156, as the R package
 * metafor documents it.
 */
export function resistivityInterval(
  test: readonly number[],
  control: readonly number[],
  level = LEVEL,
): Interval | null {
  const df = test.length + control.length - 2
  if (test.length === 0 || control.length === 0 || df < 1) return null
  // Own choice: squared coefficients of variation weighted by their degrees of freedom.
  const squares = [test, control].reduce(
    (sum, values) =>
      sum + (values.length < 2 ? 0 : (values.length - 1) * (standardDeviation(values) / mean(values)) ** 2),
    0,
  )
  // Hedges, Gurevitch and Curtis 1999, equation (1) ff., with one pooled c: ln(A/B) ± t c √(1/nA + 1/nB).
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
