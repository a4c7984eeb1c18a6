/** How far two laboratories may differ on one material by the scatter of testing alone. */
import { type Age, isSameAge } from '../measure/age.ts'
import { defined } from '../measure/defined.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../measure/units.ts'

/** A row as site.yaml states it. */
export interface WrittenPrecision {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly laboratories: 'single' | 'several'
  readonly 'standard-deviation'?: string
  readonly 'coefficient-of-variation'?: Quantity
  readonly from?: string
  readonly to?: string
  readonly source: string
}

/** Standard deviation (1s), or that in per cent of the mean of the two results. */
export type StatedScatter =
  | { readonly standardDeviation: number }
  | { readonly coefficientOfVariationPercent: number }

/** A row in the stored unit of its property. */
export interface PrecisionRow {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly laboratories: 'single' | 'several'
  readonly scatter: StatedScatter
  /** Range of values that it holds for; open without an end. */
  readonly from?: number
  readonly to?: number
  /** Where it stands. */
  readonly source: string
}

/** What two results may differ by, and where that comes from. */
export interface DifferenceLimit {
  /** In the stored unit of the property. */
  readonly limit: number
  readonly standardDeviation: number
  readonly source: string
}

/**
 * Two results of one material differ by more than so many standard deviations in 5 % of cases: 1.96 √2 is
 * 2.77, printed as 2.8 or 2.83. Source: ASTM C670, difference limit d2s (from memory; the factor as common
 * practice prints it, 2 √2).
 */
export const D2S_FACTOR = 2.83

/** Share of pairs beyond the limit where nothing but the scatter of testing is at work: 4.5 %, said as 5. */
export const SHARE_BEYOND = 0.05

/**
 * The kind of quantity that a row states a standard deviation in.
 * @param key property
 * @returns percentage points for a percentage, else the property's own kind
 */
export function scatterKind(key: PropertyKey): QuantityKind {
  const { kind } = property(key)
  return kind === 'fraction' ? 'points' : kind
}

/**
 * A written row as numbers.
 * @returns undefined for a row that states no scatter or one that cannot be read, which has its diagnostic
 */
export function precisionRow(written: WrittenPrecision): PrecisionRow | undefined {
  const { property: key, condition, age, laboratories, source } = written
  const scatter = scatterOf(written)
  if (scatter === undefined) return undefined
  const end = (text: string | undefined) => numberIn(text, property(key).kind)
  return defined({
    property: key,
    condition,
    age,
    laboratories,
    scatter,
    from: end(written.from),
    to: end(written.to),
    source,
  })
}

function scatterOf(written: WrittenPrecision): StatedScatter | undefined {
  const percent = written['coefficient-of-variation']?.value
  if (percent !== undefined) return { coefficientOfVariationPercent: percent }
  const deviation = numberIn(written['standard-deviation'], scatterKind(written.property))
  return deviation === undefined ? undefined : { standardDeviation: deviation }
}

function numberIn(text: string | undefined, kind: QuantityKind): number | undefined {
  if (text === undefined) return undefined
  const read = readQuantity(text, kind)
  return isFault(read) ? undefined : read.value
}

/** What was tested: results of one are compared, results of two never. */
export interface TestKey {
  readonly property: PropertyKey
  readonly condition?: string | undefined
  readonly age?: Age | undefined
}

/**
 * The limit for the difference of results of two laboratories.
 * @param rows of the site
 * @param test what both laboratories tested
 * @param meanOfTwo of the two results, in the stored unit
 * @returns undefined where no row for several laboratories speaks of the test at that level
 * Notes: 1. of rows that speak of it the one that names condition and age goes before one that does not, then
 * the earlier in the list; 2. no row is ever made from the pairs that it is to judge.
 * Source: ASTM C670 and E177 (from memory): d2s, or d2s % of the mean of the two.
 */
export function differenceLimit(
  rows: readonly PrecisionRow[],
  test: TestKey,
  meanOfTwo: number,
): DifferenceLimit | undefined {
  let best: PrecisionRow | undefined
  for (const row of rows)
    if (speaksOf(row, test, meanOfTwo) && (best === undefined || named(best) < named(row))) best = row
  if (best === undefined) return undefined
  const { scatter, source } = best
  const standardDeviation =
    'standardDeviation' in scatter
      ? scatter.standardDeviation
      : (scatter.coefficientOfVariationPercent / 100) * Math.abs(meanOfTwo)
  return { limit: D2S_FACTOR * standardDeviation, standardDeviation, source }
}

function speaksOf(row: PrecisionRow, test: TestKey, level: number): boolean {
  return (
    row.laboratories === 'several' &&
    row.property === test.property &&
    (row.condition === undefined || row.condition === test.condition) &&
    (row.age === undefined || isSameAge(row.age, test.age)) &&
    (row.from ?? Number.NEGATIVE_INFINITY) <= level &&
    level <= (row.to ?? Number.POSITIVE_INFINITY)
  )
}

function named({ condition, age }: PrecisionRow): number {
  return (condition === undefined ? 0 : 1) + (age === undefined ? 0 : 1)
}
