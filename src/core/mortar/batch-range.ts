/**
 * The permissible range of the specimens of one batch at one age, with the step that drops one specimen and
 * judges the rest.
 */
import { mean, range } from '../statistics/descriptive.ts'
import { toSignificant } from '../measure/rounding.ts'
import type { BatchRangeRule } from './mortar.ts'

/**
 * Rule for a number of specimens: largest range, or largest distance of one specimen, both as per cent of the
 * mean.
 */
export interface RangeRule {
  readonly of: number
  readonly rangePercent?: number
  readonly withinPercent?: number
}

/** A rule as its condition states it. @param rule with its percentages as quantities */
export function rangeRule(rule: BatchRangeRule): RangeRule {
  return { of: rule.of, rangePercent: rule['at-most']?.value, withinPercent: rule.within?.value }
}

export interface BatchJudgement {
  /** Positions of the values that count. */
  readonly kept: readonly number[]
  readonly dropped: readonly number[]
  readonly mean: number
  /** False when the batch is beyond repair and the test must be repeated. */
  readonly valid: boolean
  /** A number of specimens that there was no rule for, although there are rules; absent where all was checked. */
  readonly unchecked?: number
  /** What was checked, in the order of the steps. */
  readonly steps: readonly {
    readonly of: number
    readonly percent: number
    readonly limit: number
    readonly measure: 'range' | 'distance'
    readonly kept: boolean
  }[]
}

/**
 * Which specimens of a batch count, and their mean.
 * @param values strengths of the specimens, at least one, all in one unit
 * @param rules by number of specimens; a number without a rule is not checked, which is told where there are others
 * @returns which are kept and dropped, the mean of those kept, and what was checked; where dropping one does
 * not bring the batch into range it is not valid, with the mean of all
 * @throws RangeError for no value
 * Notes: 1. at most one specimen is dropped, the one farthest from the mean, the first of two as far;
 * 2. fewer than two left of several makes the batch not valid; 3. a spread on the very limit is kept,
 * compared at 12 significant digits; 4. the figures are data of the condition.
 * Source: ASTM C109, section 13 and note 12 (8.7 % for three cubes, 7.6 % for two), read second-hand; EN
 * 196-1 and ISO 679 (one of six beyond 10 % of their mean is dropped), read second-hand (10.2 from memory).
 */
export function judgeBatch(values: readonly number[], rules: readonly RangeRule[]): BatchJudgement {
  const judged = judgeByRules(values, rules)
  const unchecked = judged.valid ? uncheckedNumber(judged.kept.length, rules) : undefined
  return unchecked === undefined ? judged : { ...judged, unchecked }
}

/** One specimen has no range. */
function uncheckedNumber(kept: number, rules: readonly RangeRule[]): number | undefined {
  return 1 < kept && 0 < rules.length && rules.every(({ of }) => of !== kept) ? kept : undefined
}

function judgeByRules(values: readonly number[], rules: readonly RangeRule[]): BatchJudgement {
  const all = values.map((_, index) => index)
  const first = check(values, rules)
  if (first === null || first.kept)
    return { kept: all, dropped: [], mean: mean(values), valid: true, steps: first === null ? [] : [first] }
  const out = farthest(values)
  const kept = all.filter((index) => index !== out)
  const rest = kept.map((index) => values[index] ?? Number.NaN)
  if (rest.length < 2) return { kept: all, dropped: [], mean: mean(values), valid: false, steps: [first] }
  const second = check(rest, rules)
  const steps = second === null ? [first] : [first, second]
  return second === null || second.kept
    ? { kept, dropped: [out], mean: mean(rest), valid: true, steps }
    : { kept: all, dropped: [], mean: mean(values), valid: false, steps }
}

function check(
  values: readonly number[],
  rules: readonly RangeRule[],
): BatchJudgement['steps'][number] | null {
  const rule = rules.find((candidate) => candidate.of === values.length)
  if (rule === undefined) return null
  const centre = mean(values)
  const [measure, limit, spread] =
    rule.rangePercent === undefined
      ? ([
          'distance',
          rule.withinPercent ?? Number.POSITIVE_INFINITY,
          Math.max(...values.map((value) => Math.abs(value - centre))),
        ] as const)
      : (['range', rule.rangePercent, range(values)] as const)
  const percent = (100 * spread) / centre
  return { of: values.length, percent, limit, measure, kept: toSignificant(percent, 12) <= limit }
}

/** Position of the value farthest from the mean; of two at the same distance the first. */
function farthest(values: readonly number[]): number {
  const centre = mean(values)
  let position = 0
  for (const [index, value] of values.entries())
    if (Math.abs(value - centre) > Math.abs((values[position] ?? centre) - centre) * (1 + 1e-12))
      position = index
  return position
}
