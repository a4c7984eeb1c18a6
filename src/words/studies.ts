/** Studies in words: kinds, routes, conditions, figures. */
import type { NoPrecision } from '../core/studies/interlaboratory/precision.ts'
import type { OutlierTest } from '../core/studies/interlaboratory/outliers.ts'
import type { StudyIndexProperty, StudyKind } from '../core/studies/study-reading.ts'
import type { Quantity } from '../core/measure/units.ts'
import type { UnmadeIndex } from '../core/studies/batch-indices.ts'
import { number, plainNumber } from './numbers.ts'
import { written } from './as-written.ts'

export const STUDY_KINDS: Readonly<Record<StudyKind, string>> = {
  screening: 'screening study',
  interlaboratory: 'round robin',
  ruggedness: 'ruggedness runs',
}

export const STUDY_ROUTES: Readonly<Record<StudyIndexProperty, string>> = {
  'strength-activity-index': 'strength activity index',
  'resistivity-index': 'resistivity index',
}

/** What nobody may conclude from a study, whatever its figures. */
export const NOT_CONCLUDED: readonly string[] = [
  'anything on durability, permeability or expansion',
  'a degree of reaction, or a cause from the ratio alone',
  'conformity with a standard, or that a lot is fit for use',
  'the same result at another w/cm, curing, cement or laboratory',
  'that a material between the classes is inert',
  'safety from zero errors: see the bounds',
]

/** What is said of a condition where it has no title. */
export interface StudyCondition {
  readonly title?: string
  readonly replacement?: Quantity
  readonly temperature?: Quantity
  readonly flow?: 'constant-w/cm' | 'constant-flow'
  readonly curing?: string
}

/** "30 %, 50 °C"; the title of a condition where it has one. */
export function conditionWords(condition: StudyCondition | undefined, code: string): string {
  if (condition === undefined) return code
  if (condition.title !== undefined) return condition.title
  const { replacement, temperature, curing } = condition
  const parts = [
    replacement && written(replacement),
    temperature && written(temperature),
    condition.flow === 'constant-flow' && 'constant flow',
  ]
  const known = parts.filter((part) => typeof part === 'string')
  return known.length === 0 ? (curing ?? code) : known.join(', ')
}

/**
 * The name of a condition among those of its study: what tells it from another of the same words stands with it.
 * @param conditions of the study, by code
 */
export function conditionName(
  conditions: Readonly<Record<string, NamedCondition>> | undefined,
  code: string,
): string {
  const own = conditions?.[code]
  const words = conditionWords(own, code)
  const alike = Object.entries(conditions ?? {}).filter(
    ([other, condition]) => other !== code && conditionWords(condition, other) === words,
  )
  if (own === undefined || alike.length === 0) return words
  const varied = DETAILS.filter((detail) => alike.some(([, other]) => detail(other) !== detail(own)))
  const details = varied.flatMap((detail) => detail(own) ?? [])
  return [words, ...(details.length === 0 ? [code] : details)].join(', ')
}

interface NamedCondition extends StudyCondition {
  readonly 'w/cm'?: number
  readonly cement?: string
}

/** What the words of a condition leave out. */
const DETAILS: readonly ((condition: NamedCondition) => string | undefined)[] = [
  (condition) => (condition['w/cm'] === undefined ? undefined : `w/cm ${condition['w/cm']}`),
  ({ curing }) => curing?.replaceAll('-', ' '),
  ({ cement }) => cement && `cement ${cement}`,
]

/** An index as a study prints it: three digits tell all that a mean of batches can. */
export function indexText(value: number, above = false): string {
  const text = number(value, value < 99.95 ? 1 : 0)
  return above ? `> ${text}` : text
}

/** "1.36-fold"; for a ratio of two indices. */
export function ratioText(ratio: number): string {
  // Close to one, two decimals would call two values alike that are not.
  return `× ${plainNumber(ratio, ratio < 1.005 ? 3 : ratio < 9.995 ? 2 : 1)}`
}

/** A share as whole per cent: "39 %". */
export function shareText(share: number): string {
  return `${plainNumber(100 * share, 0)} %`
}

/** A chance as whole per cent; never printed as none or as certain, which no reading shows. */
export function chanceText(chance: number): string {
  if (chance < 0.005) return '< 1 %'
  return chance < 0.995 ? shareText(chance) : '> 99 %'
}

/** "0 of 6, at most 39 %". */
export function boundText(wrong: number, n: number, bound: number): string {
  return `${wrong} of ${n}, at most ${shareText(bound)}`
}

export const NO_PRECISION: Readonly<Record<NoPrecision, string>> = {
  'one-laboratory': 'one laboratory alone: nothing can be said of others',
  'no-replicates': 'no laboratory has two results: nothing can be said of repeatability',
  'all-equal': 'all results are the same: the readings are too coarse to show a scatter',
}

export const OUTLIER_TESTS: Readonly<Record<OutlierTest['test'], string>> = {
  cochran: 'Cochran, largest scatter',
  'grubbs-low': 'Grubbs, lowest mean',
  'grubbs-high': 'Grubbs, highest mean',
  'grubbs-two-low': 'Grubbs, two lowest means',
  'grubbs-two-high': 'Grubbs, two highest means',
}

export const OUTLIER_STANDINGS: Readonly<Record<OutlierTest['standing'], string>> = {
  'in-line': 'in line',
  straggler: 'straggler (beyond 5 %)',
  outlier: 'outlier (beyond 1 %)',
}

export const UNMADE: Readonly<Record<UnmadeIndex['why'], string>> = {
  'no-control': 'no control batch was read under the same condition, in the same laboratory, at the same age',
  'several-controls': 'several control batches were read there, and none has the code of the test batch',
  'control-above-ceiling': 'its control batch reads above the meter’s ceiling',
  'nothing-left': 'the end contacts resist as much as was read',
}
