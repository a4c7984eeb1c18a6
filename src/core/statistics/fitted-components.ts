/** Variance components of several random terms, crossed or nested, balanced or not, by fitting one after another. */
import { sum } from './descriptive.ts'

/** What a random term calls each value's group; null where the term has no part in the value. */
export interface RandomTerm {
  readonly name: string
  readonly groups: readonly (string | null)[]
}

export interface TermComponent {
  readonly name: string
  /** Degrees of freedom that the term adds to those before it; 0 where these leave it nothing, so that it cannot be told from them. */
  readonly df: number
  /** Of the squares that it adds; 0 without a degree of freedom. */
  readonly meanSquare: number
  /** In the square of the unit; below zero where chance alone scatters less than it should; null without a degree of freedom. */
  readonly variance: number | null
}

export interface FittedComponents {
  /** In the order given. */
  readonly terms: readonly TermComponent[]
  /** What no term explains. */
  readonly residual: MeanOfSquares
  /** Terms that the residual holds as well, since every value has a group of its own in them. */
  readonly withinResidual: readonly string[]
  /** By term and then the residual: each variance as a sum of mean squares, with the factor of each. */
  readonly factors: readonly (readonly number[])[]
}

interface MeanOfSquares {
  readonly df: number
  readonly meanSquare: number
}

/** What is left of a column's square below this share of it is rounding, and the column is none of its own. */
const SMALLEST = 1e-9

/**
 * Variance components by sequential sums of squares.
 * @param values in one unit
 * @param fixed group of each value whose mean is not random
 * @param terms random ones, those that hold others first: materials before batches
 * @returns null where nothing scatters freely: each value has a mean of its own
 * Notes: 1. unbiased, balanced or not; in balanced data the classical analysis of variance; 2. negative variances are given as
 * they are: set them to zero and say so where they are printed; 3. a term without a degree of freedom is held by those
 * before it, whose variance then is that of both.
 * Source: Henderson 1953, Biometrics 9, 226-252, method 3, one term after another; expectations by traces, Searle, Casella
 * and McCulloch 1992, Variance Components, 5.5 (from memory); numpy on projections written out is the check.
 */
export function fittedComponents(
  values: readonly number[],
  fixed: readonly string[],
  terms: readonly RandomTerm[],
): FittedComponents | null {
  const layout = laidOut(fixed, terms)
  const { directions, alongValues, squaresLeft } = decomposed(layout, values)
  const steps = terms.map(({ name }, place) => ({
    name,
    added: directions.filter(({ term }) => term === place),
  }))
  const left = values.length - directions.length
  const last = left === 0 ? steps.findLastIndex(({ added }) => 0 < added.length) : steps.length
  if (last < 0) return null
  const fitted = steps.slice(0, last)
  const within = steps.slice(last).flatMap(({ added }) => added)
  const squaresOf = (all: readonly Direction[]) =>
    sum(all.map(({ column }) => (alongValues[column] ?? 0) ** 2))
  const freedom = left + within.length
  const residual = { df: freedom, meanSquare: (squaresLeft + squaresOf(within)) / freedom }
  const df = [...fitted.map(({ added }) => added.length), residual.df]
  const factors = solved(expectations(layout, fitted), df)
  const meanSquares = [
    ...fitted.map(({ added }) => squaresOf(added) / (added.length || 1)),
    residual.meanSquare,
  ]
  return {
    terms: steps.map(({ name }, place) => {
      const own = place < fitted.length ? (df[place] ?? 0) : 0
      return own === 0
        ? { name, df: 0, meanSquare: 0, variance: null }
        : {
            name,
            df: own,
            meanSquare: meanSquares[place] ?? 0,
            variance: dot(factors[place] ?? [], meanSquares),
          }
    }),
    residual,
    withinResidual: steps.slice(last).flatMap(({ name, added }) => (added.length === 0 ? [] : [name])),
    factors,
  }
}

/**
 * A component by its place: a term, or behind the last of them the residual.
 * @param found components
 * @param place from 0 to the number of terms
 * @returns its variance, null without a degree of freedom, and the factors of the mean squares that it is the sum of
 */
export function componentAt(
  { terms, residual, factors }: FittedComponents,
  place: number,
): { readonly variance: number | null; readonly factors: readonly number[] } {
  // Fewer terms than all may be fitted, so that the residual's factors stand at the end.
  return place === terms.length
    ? { variance: residual.meanSquare, factors: factors.at(-1) ?? [] }
    : { variance: terms[place]?.variance ?? null, factors: factors[place] ?? [] }
}

/**
 * A sum of mean squares, as `satterthwaite` takes it.
 * @param found components
 * @param weights factor of each mean square, the residual's last
 */
export function meanSquareParts(
  { terms, residual, factors }: FittedComponents,
  weights: readonly number[],
): { readonly factor: number; readonly meanSquare: number; readonly df: number }[] {
  return weights.map((factor, place) => {
    const { meanSquare, df } = place === factors.length - 1 ? residual : (terms[place] ?? residual)
    return { factor, meanSquare, df }
  })
}

/**
 * Degrees of freedom of a sum of mean squares that do not depend on each other.
 * @param parts factor, mean square and degrees of freedom of each
 * @returns null where the sum is not above zero
 * Source: Satterthwaite 1946, Biometrics Bulletin 2, 110-114.
 */
export function satterthwaite(
  parts: readonly { readonly factor: number; readonly meanSquare: number; readonly df: number }[],
): number | null {
  const whole = sum(parts.map(({ factor, meanSquare }) => factor * meanSquare))
  const spread = sum(
    parts.map(({ factor, meanSquare, df }) => (factor === 0 ? 0 : (factor * meanSquare) ** 2 / df)),
  )
  return 0 < whole && 0 < spread ? whole ** 2 / spread : null
}

/** One column for each group of the fixed part, then of each term. */
interface Layout {
  readonly columns: readonly { readonly term: number; readonly members: readonly number[] }[]
  /** Columns that each value stands in. */
  readonly ofValue: readonly (readonly number[])[]
}

function laidOut(fixed: readonly string[], terms: readonly RandomTerm[]): Layout {
  const columns = [fixed, ...terms.map(({ groups }) => groups)].flatMap((groups, step) => {
    const members = Map.groupBy(groups.keys(), (place) => groups[place] ?? null)
    return [...members].flatMap(([name, all]) => (name === null ? [] : [{ term: step - 1, members: all }]))
  })
  const ofValue = fixed.map((): number[] => [])
  for (const [column, { members }] of columns.entries())
    for (const place of members) ofValue[place]?.push(column)
  return { columns, ofValue }
}

/** A direction that a column adds to those before it, by its products with all columns. */
interface Direction {
  readonly term: number
  readonly column: number
  readonly row: Float64Array
}

/**
 * Cholesky's factor of the columns' products, a column that lies within those before it passed over: its rows are the
 * products of orthonormal directions with the columns, so that no projection is ever written out.
 */
function decomposed({ columns, ofValue }: Layout, values: readonly number[]) {
  const p = columns.length
  const products = columns.map(({ members }) => {
    const row = new Float64Array(p)
    for (const place of members)
      for (const column of ofValue[place] ?? []) row[column] = (row[column] ?? 0) + 1
    return row
  })
  // About their mean the values lose no digits to what all of them share.
  const centre = sum(values) / (values.length || 1)
  const about = values.map((value) => value - centre)
  const alongValues = columns.map(({ members }) => sum(members.map((place) => about[place] ?? 0)))
  let squaresLeft = sum(about.map((value) => value * value))
  const directions: Direction[] = []
  for (const [column, { term, members }] of columns.entries()) {
    const row = products[column] ?? new Float64Array(p)
    const pivot = row[column] ?? 0
    if (pivot <= SMALLEST * members.length) continue
    const size = Math.sqrt(pivot)
    for (let place = column; place < p; place += 1) row[place] = (row[place] ?? 0) / size
    const along = (alongValues[column] ?? 0) / size
    alongValues[column] = along
    squaresLeft -= along * along
    for (let below = column + 1; below < p; below += 1) {
      const factor = row[below] ?? 0
      const own = products[below]
      if (factor === 0 || own === undefined) continue
      for (let place = below; place < p; place += 1)
        own[place] = (own[place] ?? 0) - factor * (row[place] ?? 0)
      alongValues[below] = (alongValues[below] ?? 0) - factor * along
    }
    directions.push({ term, column, row: row.fill(0, 0, column) })
  }
  return { directions, alongValues, squaresLeft: Math.max(0, squaresLeft) }
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, one, place) => total + one * (b[place] ?? 0), 0)
}

/** t(i, k): how much of the variance of term k the squares of term i hold. */
function expectations(
  { columns }: Layout,
  fitted: readonly { readonly added: readonly Direction[] }[],
): number[][] {
  const columnsOf = fitted.map((_, place) =>
    columns.flatMap(({ term }, column) => (term === place ? [column] : [])),
  )
  return fitted.map(({ added }) =>
    columnsOf.map((own) =>
      sum(added.map(({ row }) => own.reduce((total, column) => total + (row[column] ?? 0) ** 2, 0))),
    ),
  )
}

/** E[squares i] = Σ (k ≥ i) t(i, k) σ²(k) + df(i) σ²(e), solved from the last term up; each σ² by its factors of mean squares. */
function solved(table: readonly (readonly number[])[], df: readonly number[]): number[][] {
  const n = table.length
  const factors: number[][] = Array.from({ length: n + 1 }, () => new Array<number>(n + 1).fill(0))
  const rest = factors[n]
  if (rest !== undefined) rest[n] = 1
  for (let i = n - 1; 0 <= i; i -= 1) {
    const [own, row] = [factors[i], table[i]]
    const scale = row?.[i] ?? 0
    const free = df[i] ?? 0
    if (own === undefined || row === undefined || free === 0) continue
    own[i] = free / scale
    for (let place = 0; place <= n; place += 1) {
      const later = sum(
        Array.from(
          { length: n - i - 1 },
          (_, step) => (row[i + 1 + step] ?? 0) * (factors[i + 1 + step]?.[place] ?? 0),
        ),
      )
      own[place] = (own[place] ?? 0) - (later + free * (rest?.[place] ?? 0)) / scale
    }
  }
  return factors
}
