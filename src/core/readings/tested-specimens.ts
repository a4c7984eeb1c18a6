/** The specimens of one reading: their values, which of them count, and their mean. */
import { defined } from '../measure/defined.ts'
import type { Moment } from '../measure/moment.ts'
import { type BatchJudgement, judgeBatch, rangeRule } from '../mortar/batch-range.ts'
import { type CountJudgement, judgeCount } from '../mortar/specimen-count.ts'
import { exclusionOn } from '../mortar/known-when.ts'
import type { MortarMeasurement, SpecimenOf, SpecimenValue } from '../mortar/mortar-measurement.ts'
import { isQuantity, type MortarCondition, type MortarReading } from '../mortar/mortar.ts'
import type { Bounds } from '../result/bounds.ts'
import type { ResultReason } from '../result/reason.ts'
import { mean } from '../statistics/descriptive.ts'

export interface TestedSpecimen extends SpecimenValue {
  readonly mark: string
  /** Why the laboratory left it out. */
  readonly excluded?: string
}

export interface TestedSpecimens {
  /** Made each time it is asked for: only a working shows them, and ten thousand lots would fill the memory. */
  readonly specimens: () => readonly TestedSpecimen[]
  /** Those that count, in the order of the record; none where only a mean is on record. */
  readonly counted: readonly { readonly mark: string; readonly value: number }[]
  /** Mean of those in the stored unit, or as reported; null where none can be computed. */
  readonly mean: number | null
  /** Specimens behind the mean. */
  readonly n: number
  /** Some that count lie beyond the meter: the mean is at least `mean`. */
  readonly above?: true
  readonly meanOnly: boolean
  /** The laboratory does not say how many specimens its mean is of. */
  readonly uncounted?: true
  /** Mean area that their values were computed with; null where none was. */
  readonly areaMm2: number | null
  /** Some of the values are as the laboratory states them. */
  readonly stated: boolean
  readonly rangeChecks: BatchJudgement['steps']
  readonly valid: boolean
  readonly reasons: readonly ResultReason[]
}

/** Specimens that a mean follows from. */
export type AveragedSpecimens = TestedSpecimens & { readonly mean: number }

/** What a mean may be where some of its specimens lie beyond the meter; undefined for one that is known. */
export function boundsOfMean({ mean: least, above }: TestedSpecimens): Bounds | undefined {
  return above === undefined || least === null ? undefined : { low: least, high: null, open: 'low' }
}

/**
 * Not valid where no specimen counts, where a value is not known or faulty, or where the range rule leaves too few.
 * @param reading specimens by mark, or a mean alone, which is taken as it is
 * @param asOf calendar date; a specimen excluded later still counts
 */
export function testedSpecimens<Reading extends MortarReading>(
  measurement: MortarMeasurement<Reading>,
  reading: Reading,
  condition: MortarCondition,
  asOf: Moment,
): TestedSpecimens {
  if (reading.mean !== undefined) {
    const count = countOf({ tested: reading.of ?? 0, counted: reading.of ?? 0 }, measurement, condition)
    return reportedMean(reading.mean.value, reading.of, count)
  }
  const specimens = specimensOf(measurement, reading, condition, asOf)
  const counting = specimens.filter(({ excluded }) => excluded === undefined)
  const known = counting.flatMap(({ mark, value }) => (value === null ? [] : [{ mark, value }]))
  const faults: ResultReason[] = [
    ...(counting.length === 0 ? [NONE_COUNTS] : []),
    ...whyUnknown(measurement, counting),
  ]
  const judged =
    known.length === 0 || known.length < counting.length
      ? NO_MEAN
      : judgedRange(known, measurement.rangeRulesOf?.(condition) ?? [])
  const count = countOf({ tested: known.length, counted: judged.counted.length }, measurement, condition)
  return {
    ...judged,
    specimens: specimensLater(measurement, reading, condition, asOf),
    n: judged.counted.length,
    meanOnly: false,
    ...(counting.some(({ above }) => above) ? { above: true as const } : {}),
    ...sizesOf(counting),
    valid: judged.valid && faults.length === 0 && count.valid,
    reasons: [
      ...specimens.flatMap(exclusion),
      ...faults,
      ...judged.reasons,
      ...count.reasons,
      ...once(counting.flatMap(({ note }) => note ?? [])),
    ],
  }
}

function whyUnknown(
  { valueUnknown }: Pick<MortarMeasurement, 'valueUnknown'>,
  counting: readonly TestedSpecimen[],
): ResultReason[] {
  return once(counting.filter(({ value }) => value === null).map(({ fault }) => fault ?? valueUnknown))
}

/** Each reason once, however many specimens give it. */
function once(reasons: readonly ResultReason[]): ResultReason[] {
  return reasons.filter(({ code }, place) => reasons.findIndex((other) => other.code === code) === place)
}

/** A number that nobody stated is held against nothing. */
function countOf<Reading extends MortarReading>(
  specimens: Parameters<typeof judgeCount>[0],
  measurement: MortarMeasurement<Reading>,
  condition: MortarCondition,
): CountJudgement {
  const rules = measurement.rangeRulesOf?.(condition) ?? []
  return judgeCount(specimens, measurement.specimenCountOf?.(condition), rules)
}

function specimensOf<Reading extends MortarReading>(
  measurement: MortarMeasurement<Reading>,
  reading: Reading,
  condition: MortarCondition,
  asOf: Moment,
): TestedSpecimen[] {
  const written = (reading.specimens ?? {}) as Readonly<Record<string, SpecimenOf<Reading>>>
  return Object.entries(written).map(([mark, specimen]) => ({
    mark,
    ...measurement.specimenOf(specimen, reading, condition),
    ...defined({ excluded: isQuantity(specimen) ? undefined : exclusionOn(specimen, asOf) }),
  }))
}

/** A function of its own, so that it holds what it was given and nothing that was made from it. */
function specimensLater<Reading extends MortarReading>(
  ...given: Parameters<typeof specimensOf<Reading>>
): TestedSpecimens['specimens'] {
  return () => specimensOf(...given)
}

const NONE_COUNTS: ResultReason = { code: 'no-specimen-counts', params: {} }

type Judged = Pick<TestedSpecimens, 'counted' | 'mean' | 'rangeChecks' | 'valid' | 'reasons'>
const NO_MEAN: Judged = { counted: [], mean: null, rangeChecks: [], valid: false, reasons: [] }

function reportedMean(value: number, of: number | undefined, count: CountJudgement): TestedSpecimens {
  return {
    specimens: () => [],
    counted: [],
    mean: value,
    n: of ?? 1,
    meanOnly: true,
    ...(of === undefined ? { uncounted: true as const } : {}),
    areaMm2: null,
    stated: true,
    rangeChecks: [],
    valid: count.valid,
    reasons: [ONLY_MEAN, ...(of === undefined ? [NOT_COUNTED] : []), ...count.reasons],
  }
}

const ONLY_MEAN: ResultReason = { code: 'only-mean-on-record', params: {} }
const NOT_COUNTED: ResultReason = { code: 'number-not-stated', params: {} }

function sizesOf(counting: readonly TestedSpecimen[]): Pick<TestedSpecimens, 'areaMm2' | 'stated'> {
  const areas = counting.flatMap(({ areaMm2 }) => areaMm2 ?? [])
  return {
    areaMm2: areas.length === 0 ? null : mean(areas),
    stated: counting.some(({ value, terms }) => value !== null && terms.length === 0),
  }
}

function exclusion({ mark, excluded }: TestedSpecimen): ResultReason[] {
  return excluded === undefined ? [] : [{ code: 'specimen-excluded', params: { mark, why: excluded } }]
}

function judgedRange(
  known: TestedSpecimens['counted'],
  rules: ReturnType<NonNullable<MortarMeasurement['rangeRulesOf']>>,
): Judged {
  const judgement = judgeBatch(
    known.map(({ value }) => value),
    rules.map(rangeRule),
  )
  return {
    counted: known.filter((_, place) => judgement.kept.includes(place)),
    mean: judgement.mean,
    rangeChecks: judgement.steps,
    valid: judgement.valid,
    reasons: rangeReasons(judgement, known),
  }
}

/** What the first check found, and what came of it. */
function rangeReasons(
  { steps: [first], valid, dropped, unchecked }: BatchJudgement,
  known: TestedSpecimens['counted'],
): ResultReason[] {
  const notChecked: ResultReason[] =
    unchecked === undefined ? [] : [{ code: 'range-not-checked', params: { of: unchecked } }]
  if (first === undefined || first.kept) return notChecked
  const { measure, of, percent, limit: limitPercent } = first
  const spread = { measure, of, percent, limitPercent }
  if (!valid) return [{ code: 'range-beyond', params: spread }]
  const marks = known.filter((_, place) => dropped.includes(place)).map(({ mark }) => mark)
  return [
    ...marks.map((mark): ResultReason => ({ code: 'specimen-dropped', params: { ...spread, mark } })),
    ...notChecked,
  ]
}
