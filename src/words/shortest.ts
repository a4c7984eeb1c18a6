/** Numbers within a sentence: as few digits as say it. */
import { unitSign } from './unit-signs.ts'
import { inSystem, type UnitSystem } from './unit-systems.ts'
import { shortNumber } from './numbers.ts'

/**
 * A number without trailing zeros and its unit's sign: "23.1 °C", "23 °C".
 * @param decimals that it is rounded to first
 * @param unit stored unit; "" for none
 */
export function shortest(value: number, decimals: number, unit: string, units: UnitSystem = 'SI'): string {
  const figure = inSystem({ value, decimals, unit }, units)
  const text = shortNumber(figure.value, figure.decimals)
  return unit === '' ? text : `${text} ${unitSign(figure.unit)}`
}
