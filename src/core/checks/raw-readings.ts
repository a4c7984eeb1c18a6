/** Audit checks on raw readings of specimens: their last digits, their scatter, and those that were left out. */
import type { RangeRule } from '../mortar/batch-range.ts'
import { withoutDust } from '../measure/rounding.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { countsTest, varianceTest } from '../statistics/chi-square.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** Specimens of one mortar read at one age, as on the bench sheet. */
export interface ReadBatch {
  readonly lot: string
  readonly laboratory: string
  readonly condition: string
  readonly of: 'strength' | 'resistivity'
  /** Range rules of the condition. */
  readonly rules: readonly RangeRule[]
  readonly specimens: readonly {
    /** As written, in the written unit. */
    readonly written: number
    readonly unit: string
    readonly decimals: number
    readonly excluded?: string
  }[]
}

/** Smallest step that a device shows, in a unit; undefined where no record says so. */
export type StepOf = (laboratory: string, of: ReadBatch['of'], unit: string) => number | undefined

/** Fewer readings do not show a preference: common practice, no source. */
const FEWEST_READINGS = 50
/** Readings spread over fewer steps than this do not use all digits alike: own choice. */
const LEAST_SPREAD = 10
/** Fewer batches say little of a scatter: own choice. */
const FEWEST_BATCHES = 10
/** Of specimens, above which the share left out is worth a question: own choice. */
const MOST_EXCLUDED = 0.05
/** Lots named: own choice. */
const SHOWN = 5

/**
 * One warning for each laboratory, unit and step whose last digits are uneven.
 * @param source id
 * @param batches of one source, in order of sampling
 * @param stepOf the device's own step; without one the last written decimal, or the coarser step that all are multiples
 * of
 * Note: a digit is the number of steps in a reading, modulo ten.
 */
export function unevenLastDigits(source: string, batches: readonly ReadBatch[], stepOf: StepOf): Checked {
  const readings = batches.flatMap(({ laboratory, of, specimens }) =>
    specimens.map(({ written, unit, decimals }) => {
      const step = stepOf(laboratory, of, unit) ?? 10 ** -decimals
      return { laboratory, unit, step, steps: Math.round(withoutDust(written / step)) }
    }),
  )
  const groups = [
    ...Map.groupBy(readings, ({ laboratory, unit, step }) => `${laboratory}|${unit}|${step}`).values(),
  ]
    .filter((own) => FEWEST_READINGS <= own.length)
    .map(inOwnSteps)
    .filter((own) => LEAST_SPREAD <= spreadOf(own))
  const findings = groups.flatMap((own): Finding[] => {
    const counts = Array.from(
      { length: 10 },
      (_, digit) => own.filter(({ steps }) => steps % 10 === digit).length,
    )
    const { pLarge } = countsTest(
      counts,
      counts.map(() => 1),
    )
    const [first] = own
    if (first === undefined || (CHECKS['uneven-last-digits'].rate ?? 0) <= pLarge) return []
    const { laboratory, unit, step } = first
    const params = { source, laboratory, unit, step, readings: own.length, counts, probability: pLarge }
    return [found(source, { code: 'uneven-last-digits', params }, laboratory, unit, String(step))]
  })
  return { check: 'uneven-last-digits', looked: groups.length, findings }
}

/** Coarser steps that a device may show. */
const COARSER = [100, 50, 20, 10, 5, 2]

/** Readings that are all whole numbers of a coarser step were read in it. */
function inOwnSteps<R extends { readonly step: number; readonly steps: number }>(
  readings: readonly R[],
): R[] {
  const coarse = COARSER.find((by) => readings.every(({ steps }) => steps % by === 0)) ?? 1
  return readings.map((one) => ({ ...one, step: withoutDust(one.step * coarse), steps: one.steps / coarse }))
}

function spreadOf(readings: readonly { readonly steps: number }[]): number {
  return standardDeviation(readings.map(({ steps }) => steps))
}

/**
 * Of the standard deviation of a batch, in per cent, that a range rule stands for: the largest range of two or three
 * is exceeded by chance once in twenty, 2.77 and 3.31 standard deviations.
 * Source: upper 5 % points of the studentized range, infinite degrees of freedom, as in ASTM C670, table 1 (from
 * memory).
 */
const RANGE_IN_DEVIATIONS: Readonly<Record<number, number>> = { 2: 2.77, 3: 3.31 }
/** A careful laboratory reaches half of what a method allows: own choice. */
const CAREFUL = 0.5

/**
 * One warning for each laboratory and condition whose specimens agree far better than the range rule of the method
 * leads to expect.
 * @param source id
 * @param batches of one source
 * Note: all specimens that were read count, those left out later among them.
 */
export function scatterSmall(source: string, batches: readonly ReadBatch[]): Checked {
  const strengths = batches.filter(({ of, specimens }) => of === 'strength' && 1 < specimens.length)
  const groups = [
    ...Map.groupBy(strengths, ({ laboratory, condition }) => `${laboratory}|${condition}`).values(),
  ].filter((own) => FEWEST_BATCHES <= own.length && comparedPercent(own) !== null)
  const findings = groups.flatMap((own): Finding[] => {
    const compared = comparedPercent(own)
    const [first] = own
    if (compared === null || first === undefined) return []
    const { percent, df } = pooledPercent(own)
    const { pSmall } = varianceTest(percent, compared, df)
    if ((CHECKS['scatter-small'].rate ?? 0) <= pSmall) return []
    const { laboratory, condition } = first
    const head = { source, laboratory, condition, batches: own.length, degreesOfFreedom: df }
    const params = { ...head, percent, comparedPercent: compared, probability: pSmall }
    return [found(source, { code: 'scatter-small', params }, laboratory, condition)]
  })
  return { check: 'scatter-small', looked: groups.length, findings }
}

/** Null for a condition without a rule for two or three. */
function comparedPercent(batches: readonly ReadBatch[]): number | null {
  for (const { of, rangePercent } of batches[0]?.rules ?? []) {
    const deviations = RANGE_IN_DEVIATIONS[of]
    if (deviations !== undefined && rangePercent !== undefined) return (CAREFUL * rangePercent) / deviations
  }
  return null
}

/** Coefficient of variation within the batches, pooled. */
function pooledPercent(batches: readonly ReadBatch[]): { percent: number; df: number } {
  let [squares, df] = [0, 0]
  for (const { specimens } of batches) {
    const values = specimens.map(({ written }) => written)
    squares += (values.length - 1) * (standardDeviation(values) / mean(values)) ** 2
    df += values.length - 1
  }
  return { percent: 100 * Math.sqrt(squares / df), df }
}

/**
 * One finding for a source of which many specimens were left out.
 * @param source id
 * @param batches of one source, in order of sampling
 */
export function specimensExcluded(source: string, batches: readonly ReadBatch[]): Checked {
  const out = batches.flatMap(({ lot, specimens }) =>
    specimens.flatMap(({ excluded }) => (excluded === undefined ? [] : [{ lot, reason: excluded }])),
  )
  const specimens = batches.reduce((total, batch) => total + batch.specimens.length, 0)
  const params = { source, excluded: out.length, specimens, listed: out.slice(0, SHOWN) }
  const isMany = MOST_EXCLUDED * specimens < out.length
  const findings = isMany ? [found(source, { code: 'specimens-excluded', params })] : []
  return { check: 'specimens-excluded', looked: specimens, findings }
}
