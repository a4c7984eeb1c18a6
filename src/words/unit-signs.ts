/** Units as they are printed. */

const UNITS: Readonly<Record<string, string>> = {
  '%': '%',
  'percentage points': 'points',
  'ohm m': 'Ω·m',
  ohm: 'Ω',
  degC: '°C',
  'g/cm3': 'g/cm³',
  'm2/kg': 'm²/kg',
  mm2: 'mm²',
  t: 't',
  MPa: 'MPa',
  kN: 'kN',
  g: 'g',
  mm: 'mm',
  h: 'h',
  'J/g': 'J/g',
  Hz: 'Hz',
  mL: 'mL',
}

/** The printed sign of a stored unit. */
export function unitSign(unit: string): string {
  return UNITS[unit] ?? unit
}

/** The unit as it stands in a sentence, where a difference of per cents keeps its full name. */
export function unitInWords(unit: string): string {
  return unit === 'percentage points' ? unit : unitSign(unit)
}
