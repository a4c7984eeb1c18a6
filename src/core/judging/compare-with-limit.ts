/**
 * One value against one limit, as specified: nothing is rounded but the value itself, once, to the limit's
 * digits. A result
 * reported as "below v" is a range with v above it; where that range lies on both sides of the limit nothing
 * is decided.
 */
import type { Operator } from '../criteria/criterion.ts'
import { inUnitOf, isWrittenAsStored, limitNumber, storedDecimals, storedFrom } from './limit-unit.ts'
import { decimalsOfStep, roundToStep, stepOfDecimals, withoutDust } from '../measure/rounding.ts'
import type { Quantity } from '../measure/units.ts'

/** A value to be judged, in the stored unit of its kind; with `censored` the true value lies below it. */
export interface JudgedValue {
  readonly value: number
  readonly censored?: 'below'
}

export type Answer = 'met' | 'not-met' | 'cannot-decide'

/**
 * `compared` is the rounded value in the stored unit; `shown` the same in the limit's written unit, with
 * `shownDecimals`.
 */
export interface ComparedValue {
  readonly answer: Answer
  readonly compared: number
  readonly decimals: number
  readonly shown: number
  readonly shownDecimals: number
  readonly shownUnit: string
  /** The number shown stands for the stored unit too: the limit is written in it, or in one of its size. */
  readonly shownAsStored: boolean
}

/** A rounding step, or none (ASTM E29, absolute method). */
export type Resolution = number | 'none'

type OneSided = 'at-least' | 'at-most' | 'above' | 'below'

/**
 * Compares a value with the limit of an operator, as specified.
 * @param limits the limit's quantities: two for `between`, else one
 * @param resolution rounding step in the limit's written unit; the limit's written decimals without it;
 * `none` compares the value's 12 significant digits
 * @returns the answer, and the value as compared: in the stored unit, and as shown in the limit's own
 * @throws RangeError when the number of limits does not fit the operator, a value to be rounded is not
 * finite, or a limit's unit is none of its kind's
 * Notes: 1. the comparison is made after rounding; 2. `between` judges each end with that end's own digits
 * and shows the end that decides; 3. a censored value on both sides of the limit gives `cannot-decide`;
 * 4. for `magnitude-at-most` a censored value is read as a magnitude, as laboratories mean it: "< 0.01 %"
 * expansion says that the bar hardly moved.
 * Source: ASTM E29, rounding method, 6.4.3, and absolute method, section 5; read second-hand.
 */
export function compareWithLimit(
  judged: JudgedValue,
  operator: Exclude<Operator, 'report'>,
  limits: readonly Quantity[],
  resolution?: Resolution,
): ComparedValue {
  const [first, second] = limits
  if (first === undefined || (operator === 'between') !== (second !== undefined)) {
    throw new RangeError(
      `compareWithLimit needs ${operator === 'between' ? 'two limits' : 'one limit'} for ${operator}, got ${limits.length}`,
    )
  }
  if (second !== undefined)
    return decidingEnd(
      oneSided(judged, 'at-least', first, resolution),
      oneSided(judged, 'at-most', second, resolution),
    )
  if (operator === 'magnitude-at-most') return magnitude(judged, first, resolution)
  return oneSided(judged, operator as OneSided, first, resolution)
}

/**
 * Both ends must be met. The upper one decides only over a lower one that is met: a value below the range is
 * not above it, and a censored one, which never meets the lower end, is not more open at the upper.
 */
function decidingEnd(lower: ComparedValue, upper: ComparedValue): ComparedValue {
  return lower.answer === 'met' && upper.answer !== 'met' ? upper : lower
}

function magnitude(judged: JudgedValue, limit: Quantity, resolution: Resolution | undefined): ComparedValue {
  const compared = oneSided({ ...judged, value: Math.abs(judged.value) }, 'at-most', limit, resolution)
  return judged.value < 0 ? { ...compared, compared: -compared.compared, shown: -compared.shown } : compared
}

function oneSided(
  judged: JudgedValue,
  operator: OneSided,
  limit: Quantity,
  resolution: Resolution | undefined,
): ComparedValue {
  const written = inUnitOf(limit, judged.value)
  const step = resolution ?? stepOfDecimals(limit.decimals)
  const shown = step === 'none' ? withoutDust(written) : roundToStep(written, step)
  const shownDecimals = decimalsOfStep(step === 'none' ? shown : step)
  const limitValue = limitNumber(limit)
  return {
    answer:
      judged.censored === undefined
        ? answerOf(holds(operator, shown, limitValue))
        : censoredAnswer(operator, { limitValue, rounded: shown, unrounded: written }),
    compared: storedFrom(limit, shown),
    decimals: storedDecimals(limit, shownDecimals),
    shown,
    shownDecimals,
    shownUnit: limit.unit,
    shownAsStored: isWrittenAsStored(limit),
  }
}

function holds(operator: OneSided, value: number, limitValue: number): boolean {
  switch (operator) {
    case 'at-least':
      return limitValue <= value
    case 'at-most':
      return value <= limitValue
    case 'above':
      return limitValue < value
    case 'below':
      return value < limitValue
  }
}

function answerOf(met: boolean): Answer {
  return met ? 'met' : 'not-met'
}

/**
 * The true value x lies below v, so its rounded form lies at or below v's. With v on the limit itself the
 * report says in so
 * many words that x is less than the limit, and no rounding of a number that nobody stated can overrule it.
 */
function censoredAnswer(
  operator: OneSided,
  { limitValue, rounded, unrounded }: { limitValue: number; rounded: number; unrounded: number },
): Answer {
  const surelyBelow = rounded < limitValue || unrounded === limitValue
  switch (operator) {
    case 'at-most':
      return rounded <= limitValue ? 'met' : 'cannot-decide'
    case 'below':
      return surelyBelow ? 'met' : 'cannot-decide'
    case 'at-least':
      return surelyBelow ? 'not-met' : 'cannot-decide'
    case 'above':
      return rounded <= limitValue ? 'not-met' : 'cannot-decide'
  }
}
