/** What makes a resistance reading unfit for judgement: its temperature, its conditioning. */
import type { MortarCondition, ResistivityReading } from './mortar.ts'

/** Sentences; empty for a reading taken as its condition asks. */
export function readingFaults(reading: ResistivityReading, condition: MortarCondition): string[] {
  const asked = condition.resistivity
  if (asked === undefined) return ['the condition describes no resistivity reading, so its geometry and temperature are not known']
  const faults: string[] = []
  const conditioning = reading.conditioning ?? asked.conditioning
  if (conditioning === undefined) faults.push('the conditioning when read is not on record')
  else if (asked.conditioning !== undefined && conditioning !== asked.conditioning) faults.push(`read from ${words(conditioning)}, where the condition asks for ${words(asked.conditioning)}`)
  if (reading.temperature === undefined) faults.push('the temperature of the specimens when read is not on record')
  else if (Math.abs(reading.temperature.value - asked.reading.temperature.value) > asked.reading.within.value + 1e-9) {
    faults.push(`read at ${celsius(reading.temperature.value)}, outside ${celsius(asked.reading.temperature.value)} ± ${celsius(asked.reading.within.value)}`)
  }
  return faults
}

/** "23.1 °C", without a trailing zero. */
export function celsius(value: number): string {
  return `${Number(value.toFixed(1))} °C`
}

function words(term: string): string {
  return term.replaceAll('-', ' ')
}
