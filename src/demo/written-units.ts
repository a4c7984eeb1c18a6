/** Quantities in the units in which a source's laboratory writes them. */
import type { DemoSource } from './scenario.ts'

type Units = DemoSource['units']

/** Newtons of one pound-force, exact: NIST SP 811, B.8. */
const NEWTON_A_POUND = 4.4482216152605
const TONNES_A_SHORT_TON = 0.90718474

/** @param step the mass is a multiple of it in the unit written; 0 for any mass */
export function mass(
  tonnes: number,
  units: Units,
  { decimals, step }: { decimals: number; step: number },
): string {
  const value = units === 'US' ? tonnes / TONNES_A_SHORT_TON : tonnes
  const even = step === 0 ? value : Math.round(value / step) * step
  return `${even.toFixed(decimals)} ${units === 'US' ? 'short ton' : 't'}`
}

/** To 0.1 kN, or to 10 lbf. */
export function load(kilonewton: number, units: Units): string {
  return units === 'SI'
    ? `${kilonewton.toFixed(1)} kN`
    : `${(Math.round((kilonewton * 1000) / NEWTON_A_POUND / 10) * 10).toFixed(0)} lbf`
}

export function temperature(celsius: number, units: Units): string {
  return units === 'US' ? `${((celsius * 9) / 5 + 32).toFixed(1)} degF` : `${celsius.toFixed(1)} degC`
}
