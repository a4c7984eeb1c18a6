/**
 * One value against one limit, as specified: nothing is rounded but the value itself, once, to the limit's
 * digits. A value known only within bounds is judged by both of them; where they lie on either side of the limit
 * nothing is decided.
 */
import type { Operator } from '../criteria/criterion.ts'
import { inUnitOf, isWrittenAsStored, limitNumber, storedDecimals, storedFrom } from './limit-unit.ts'
import { defined } from '../measure/defined.ts'
import { decimalsOfStep, roundToStep, stepOfDecimals, withoutDust } from '../measure/rounding.ts'
import type { Quantity } from '../measure/units.ts'
import { type BoundEnd, boundsOf, type Extent, extentOf, isBounded, type Known } from '../result/bounds.ts'

/** A value to be judged, in the stored unit of its kind. */
export interface JudgedValue extends Known {
  /** What the laboratory wrote, for a value that is not computed from others. */
  readonly written?: string
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
 * and shows the end that decides; 3. a value whose bounds lie on both sides of the limit gives `cannot-decide`;
 * 4. for `magnitude-at-most` a value known only as below a bound is read as a magnitude, as laboratories mean it:
 * "< 0.01 %" expansion says that the bar hardly moved.
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
 * not above it, and one that may be below it is not more open at the upper end.
 */
function decidingEnd(lower: ComparedValue, upper: ComparedValue): ComparedValue {
  return lower.answer === 'met' && upper.answer !== 'met' ? upper : lower
}

function magnitude(judged: JudgedValue, limit: Quantity, resolution: Resolution | undefined): ComparedValue {
  const compared = oneSided(magnitudeOf(judged), 'at-most', limit, resolution)
  return judged.value < 0
    ? { ...compared, compared: 0 - compared.compared, shown: 0 - compared.shown }
    : compared
}

/** Of what may be on either side of nothing, the magnitude may be nothing. */
function magnitudeOf({ value, censored, bounds, written }: JudgedValue): JudgedValue {
  const size = Math.abs(value)
  if (bounds === undefined) return { value: size, ...defined({ censored }) }
  const { low, high } = extentOf({ value, bounds })
  const sizeOf = ({ at, open }: BoundEnd): BoundEnd => ({ at: Math.abs(at), open })
  const [nearer, farther] = [sizeOf(low), sizeOf(high)].toSorted((a, b) => a.at - b.at) as [
    BoundEnd,
    BoundEnd,
  ]
  const least = low.at <= 0 && 0 <= high.at ? { at: 0, open: false } : nearer
  return { value: size, ...defined({ written, bounds: boundsOf({ low: least, high: farther }) }) }
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
    answer: isBounded(judged)
      ? boundedAnswer(operator, judged, limit, step)
      : answerOf(holds(operator, shown, limitValue)),
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
 * The ends of what a value may be, held against the limit as a value next to them would be: rounded where the value
 * is, so that what lies just below a limit may still round to it. Where a laboratory reports so in so many words, or
 * nothing is rounded, an end that cannot be reached on the limit itself says on which side of it the value lies.
 */
function boundedAnswer(operator: OneSided, judged: JudgedValue, limit: Quantity, step: Resolution): Answer {
  const { low, high } = extentOf(judged)
  const limitValue = limitNumber(limit)
  const [least, most] = [rounded(low, 'low', limit, step), rounded(high, 'high', limit, step)]
  const isStrict = step === 'none' || isStated(judged)
  const surelyAbove = limitValue < least || (isStrict && isJustBeyond(low, limit))
  const surelyBelow = most < limitValue || (isStrict && isJustBeyond(high, limit))
  switch (operator) {
    case 'at-least':
      return limitValue <= least ? 'met' : surelyBelow ? 'not-met' : 'cannot-decide'
    case 'above':
      return surelyAbove ? 'met' : most <= limitValue ? 'not-met' : 'cannot-decide'
    case 'at-most':
      return most <= limitValue ? 'met' : surelyAbove ? 'not-met' : 'cannot-decide'
    case 'below':
      return surelyBelow ? 'met' : limitValue <= least ? 'not-met' : 'cannot-decide'
  }
}

/** Whether it is the laboratory's own report, rather than what follows from one. */
function isStated({ written, bounds }: JudgedValue): boolean {
  return written !== undefined || bounds === undefined
}

/** An end on the very limit that the value cannot be at. */
function isJustBeyond({ at, open }: BoundEnd, limit: Quantity): boolean {
  return open && Number.isFinite(at) && withoutDust(inUnitOf(limit, at)) === limitNumber(limit)
}

/**
 * An end as a value next to it would be rounded, in the limit's unit: where the end itself cannot be and lies half
 * way between two steps, everything within rounds to the step inside.
 */
function rounded({ at, open }: BoundEnd, end: keyof Extent, limit: Quantity, step: Resolution): number {
  if (!Number.isFinite(at)) return at
  const written = inUnitOf(limit, at)
  if (step === 'none') return withoutDust(written)
  const nearest = roundToStep(written, step)
  const outside = end === 'high' ? nearest - written : written - nearest
  if (!open || withoutDust(2 * outside) !== step) return nearest
  return roundToStep(end === 'high' ? nearest - step : nearest + step, step)
}
