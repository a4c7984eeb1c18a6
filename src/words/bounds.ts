/** What a value may be that is known only within bounds, in words. */
import { withoutDust } from '../core/measure/rounding.ts'
import { number } from './numbers.ts'
import { NO_BREAK } from './signs.ts'
import { printedUnit, type UnitSystem } from './unit-systems.ts'
import { unitSign } from './unit-signs.ts'

/** In one unit; null where nothing bounds the value on that side. */
export interface BoundsToSay {
  readonly low: number | null
  readonly high: number | null
}

/**
 * "between 96.6 and 97.1 %", "at least 96.6 %", "at most 97.1 %".
 * @param decimals of both ends in the stored unit; they are rounded outward: what is printed never says more than is known
 */
export function boundsWords(
  { low, high }: BoundsToSay,
  decimals: number,
  unit: string,
  units: UnitSystem = 'SI',
): string {
  const printed = printedUnit(unit, decimals, units)
  const sign = unitSign(printed.unit).replaceAll(' ', NO_BREAK)
  const withUnit = (text: string) => (sign === '' ? text : `${text}${NO_BREAK}${sign}`)
  const end = (value: number, round: (value: number) => number) =>
    number(outward(printed.of(value), printed.decimals, round), printed.decimals, units)
  const least = low === null ? null : end(low, Math.floor)
  const most = high === null ? null : end(high, Math.ceil)
  if (least === null) return most === null ? 'not known' : `at most ${withUnit(most)}`
  return most === null ? `at least ${withUnit(least)}` : `between ${least} and ${withUnit(most)}`
}

function outward(value: number, decimals: number, round: (value: number) => number): number {
  const scale = 10 ** decimals
  return round(withoutDust(value * scale)) / scale
}

/** Decimals that show both ends whole where they are few, else three more than the comparison used. */
export function decimalsOfBounds({ low, high }: BoundsToSay, decimals: number): number {
  return Math.max(...[low, high].map((end) => (end === null ? 0 : Math.min(ownDecimals(end), decimals + 3))))
}

function ownDecimals(value: number): number {
  const [, fraction = ''] = String(withoutDust(value)).split('.')
  return fraction.length
}
