/** Independent samples of one test against the producer's lots of the same period: two sets, F then t. */
import { type Moment, compareMoments } from '../measure/moment.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { type FTest, fTest } from '../statistics/f-test.ts'
import { type TForm, type TwoSampleT, twoSampleT } from '../statistics/student-t-test.ts'
import { tPower } from '../statistics/t-power.ts'
import { areOpposite, byTestDate, type Pair } from './pairs.ts'
import type { TestKey } from './precision.ts'

/** One side's results. */
export interface SetOfResults {
  readonly n: number
  readonly mean: number
  /** null of a single result. */
  readonly standardDeviation: number | null
}

export interface IndependentComparison extends TestKey {
  /** In order of the agency's tests, each beside what the producer reports of the same lot. */
  readonly pairs: readonly Pair[]
  /** From the first to the last lot that the agency sampled. */
  readonly from: Moment
  readonly to: Moment
  readonly agency: SetOfResults
  /** Lots of that period. */
  readonly producer: SetOfResults
  /** Level at which both tests are read. */
  readonly level: number
  /** null with fewer than two results on a side. */
  readonly f: FTest | null
  readonly form: TForm
  readonly t: TwoSampleT | null
  /** Share of cases in which the t test shows a shift of `SHIFT` standard deviations; null with too few. */
  readonly power: number | null
  readonly opposite: number
}

/**
 * Level of F and t where an agency states none: its own choice for most, 1 % in the agencies' practice for
 * quality assurance (23 CFR 637 and state manuals, from memory).
 */
export const LEVEL = 0.01

/** The shift that the power is stated for, in standard deviations: own choice. */
export const SHIFT = 1.5

/** A value of the producer's history with its lot's sampling. */
export interface ProducerValue {
  readonly sampled: Moment
  readonly value: number
}

/**
 * F, then t: with a common standard deviation unless F shows that the sets scatter differently, then Welch's.
 * @param pairs of one property, condition, age and class, at least one, all on independent samples
 * @param producer all values of the same test and class
 * @param level of both tests, between 0 and 1
 * @returns null where no pair has a known value
 * Notes: 1. only the producer's lots of the period that the agency sampled count, which include the lots sampled
 * by both; 2. assumes results that do not depend on each other: lots that resemble their neighbours, or share a
 * control batch, count for fewer than they are.
 * Source: F and t tests of 23 CFR 637 verification (common practice, from memory).
 */
export function compareIndependent(
  pairs: readonly Pair[],
  producer: readonly ProducerValue[],
  level = LEVEL,
): IndependentComparison | null {
  const ordered = pairs.filter(({ difference }) => difference !== null).toSorted(byTestDate)
  const days = ordered.map(({ sampled }) => sampled).sort(compareMoments)
  const [first, from, to] = [ordered[0], days[0], days.at(-1)]
  if (first === undefined || from === undefined || to === undefined) return null
  const agencys = ordered.map(({ agency }) => agency.value)
  const producers = producer
    .filter(({ sampled }) => from.day <= sampled.day && sampled.day <= to.day)
    .map(({ value }) => value)
  const f = fTest(agencys, producers)
  const form = f !== null && f.p < level ? 'welch' : 'pooled'
  const { property, condition, age } = first
  return {
    property,
    condition,
    age,
    pairs: ordered,
    from,
    to,
    agency: setOf(agencys),
    producer: setOf(producers),
    level,
    f,
    form,
    t: twoSampleT(agencys, producers, { form, confidence: 1 - level }),
    power: powerOf(agencys.length, producers.length, level),
    opposite: ordered.filter(areOpposite).length,
  }
}

function setOf(values: readonly number[]): SetOfResults {
  return {
    n: values.length,
    mean: mean(values),
    standardDeviation: values.length < 2 ? null : standardDeviation(values),
  }
}

function powerOf(first: number, second: number, level: number): number | null {
  return Math.min(first, second) < 2 ? null : tPower({ first, second, level, shift: SHIFT })
}
