/** Conditions that a programme crosses, beside those that the study writes out. */
import {
  type CrossedCondition,
  type CrossedFactor,
  crossedConditions,
  crossedCount,
} from '../../core/studies/programme/crossed.ts'
import type { FactorsOf } from '../../core/studies/programme/fraction.ts'
import type { Study } from '../schema/loaded-records.ts'

type Written = NonNullable<Study['programme']>
type Condition = NonNullable<Study['conditions']>[string]

/** As many as a study may list. */
export const MOST_CONDITIONS = 400

/** The factors of a programme in the order in which they are written. */
export function crossedFactors({ crossed = {} }: Pick<Written, 'crossed'>): CrossedFactor[] {
  return Object.entries(crossed).map(([name, levels]) => ({ name, levels: Object.keys(levels) }))
}

/** Defining words of the fraction: each factor that is generated, with those that generate it. */
export function definingWords({ fraction }: Pick<Written, 'fraction'>): FactorsOf[] {
  return Object.entries(fraction?.generators ?? {}).map(([factor, generating]) => [factor, ...generating])
}

/** The crossed conditions of a study; none where there are more than a study may list, which is a fault. */
export function crossedOf({ programme, kind }: Pick<Study, 'programme' | 'kind'>): CrossedCondition[] {
  if (programme?.crossed === undefined || kind === 'ruggedness') return []
  const factors = crossedFactors(programme)
  return MOST_CONDITIONS < crossedCount(factors) ? [] : crossedConditions(factors, definingWords(programme))
}

/**
 * A study with the conditions that its programme crosses among its conditions, so that readings can name them.
 * Note: a condition that is written out keeps its place and its details; two of one code are a fault, which is reported elsewhere.
 */
export function withCrossed(study: Study): Study {
  const crossed = crossedOf(study)
  if (crossed.length === 0) return study
  const made = crossed.map(({ code, levels }) => [code, conditionOf(study.programme, levels)])
  return { ...study, conditions: { ...Object.fromEntries(made), ...study.conditions } }
}

/** The conditions that a study writes out itself. */
export function writtenConditions(study: Study): Record<string, Condition> {
  const made = new Set(crossedOf(study).map(({ code }) => code))
  return Object.fromEntries(Object.entries(study.conditions ?? {}).filter(([code]) => !made.has(code)))
}

/** What each level stands for, and what holds for all. */
function conditionOf(programme: Study['programme'], levels: ReadonlyMap<string, string>): Condition {
  const crossed = programme?.crossed as
    | Readonly<Record<string, Readonly<Record<string, unknown>>>>
    | undefined
  return {
    ...programme?.every,
    ...Object.fromEntries([...levels].map(([factor, level]) => [factor, crossed?.[factor]?.[level]])),
  }
}
