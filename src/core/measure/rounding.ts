/**
 * Rounding before a comparison, on decimal text with whole-number arithmetic: a binary product such as 0.1 ×
 * 3 never enters.
 */

/** A decimal number without binary dust: `digits` times ten to the power of minus `scale`. */
interface Decimal {
  readonly digits: bigint
  readonly scale: number
}

/**
 * A computed value keeps 12 significant digits before it is rounded. Own rule: 100 × A / B in binary
 * arithmetic can give 74.50000000000001 for an exact 74.5, and half to even would then go up to 75.
 */
const SIGNIFICANT_DIGITS = 12

/**
 * Rounds a value to a step, an exact half to the even multiple.
 * @param value computed or reported value, in the unit of the limit; finite
 * @param step rounding step in the same unit, above zero: 0.1, 1, 5, 0.05
 * @returns the multiple of the step nearest to the value's 12 significant digits; never minus zero
 * @throws RangeError when the value is not finite or the step not above zero
 * Source: ASTM E29, rounding method, 6.4.3 and 6.4.4, read second-hand; steps such as 5 or 0.05 by the same
 * rule (clause not seen).
 */
export function roundToStep(value: number, step: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`roundToStep needs a finite value, got ${value}`)
  if (!(0 < step && Number.isFinite(step)))
    throw new RangeError(`roundToStep needs a step above zero, got ${step}`)
  const exact = decimal(value.toPrecision(SIGNIFICANT_DIGITS))
  const grid = decimal(String(step))
  const scale = Math.max(exact.scale, grid.scale)
  const stepDigits = atScale(grid, scale)
  return numberOf({ digits: nearestEvenMultiple(atScale(exact, scale), stepDigits) * stepDigits, scale })
}

/**
 * The step that a limit's written decimals stand for.
 * @param decimals written after the point; below none for tens and hundreds
 * @returns 1 for "75", 0.1 for "70.0", in the unit written; 10 for -1
 * Source: ASTM E29, section 6, the last place of the specified limit; read second-hand.
 */
export function stepOfDecimals(decimals: number): number {
  return Number(`1e${-decimals}`)
}

/**
 * How many decimals multiples of a step are printed with.
 * @param step above zero
 * @returns 1 for 0.1, 2 for 0.05, 0 for 5
 */
export function decimalsOfStep(step: number): number {
  return Math.max(0, decimal(String(step)).scale)
}

/**
 * A value without the dust of binary arithmetic, for print and for comparing without rounding. Own rule.
 * @param value finite, in any unit
 * @returns its 12 significant digits: no reading of a bench has as many
 */
export function withoutDust(value: number): number {
  return toSignificant(value, SIGNIFICANT_DIGITS)
}

/**
 * A value with so many significant digits: for data files and drawings, and to take binary dust off a factor.
 * @param value finite, in any unit
 * @param digits from 1 to 21
 * @returns the nearest number with as many digits, by binary rounding: not for what is judged or printed
 */
export function toSignificant(value: number, digits: number): number {
  return Number(value.toPrecision(digits))
}

function decimal(text: string): Decimal {
  const [mantissa = '0', exponent = '0'] = text.split('e')
  const point = mantissa.indexOf('.')
  const decimals = point < 0 ? 0 : mantissa.length - point - 1
  return { digits: BigInt(mantissa.replace('.', '')), scale: decimals - Number(exponent) }
}

function atScale({ digits, scale }: Decimal, wanted: number): bigint {
  return digits * 10n ** BigInt(wanted - scale)
}

function nearestEvenMultiple(value: bigint, step: bigint): bigint {
  const magnitude = value < 0n ? -value : value
  const whole = magnitude / step
  const twice = 2n * (magnitude % step)
  // ASTM E29, 6.4.3 and 6.4.4: half to even (read second-hand).
  const up = step < twice || (twice === step && whole % 2n === 1n)
  const rounded = up ? whole + 1n : whole
  return value < 0n ? -rounded : rounded
}

function numberOf({ digits, scale }: Decimal): number {
  return digits === 0n ? 0 : Number(`${digits}e${-scale}`)
}
