/**
 * What makes a resistance reading unfit for judgement: its temperature, its conditioning, its contacts and
 * meter.
 */
import { isQuantity, type MortarCondition, type ResistivityReading } from '../mortar/mortar.ts'
import type { Quantity } from '../measure/units.ts'

/** Sentences; empty for a reading taken as its condition asks. */
export function readingFaults(reading: ResistivityReading, condition: MortarCondition): string[] {
  const asked = condition.resistivity
  if (asked === undefined)
    return ['the condition describes no resistivity reading, so its geometry and temperature are not known']
  const faults: string[] = []
  const conditioning = reading.conditioning ?? asked.conditioning
  if (conditioning === undefined) faults.push('the conditioning when read is not on record')
  else if (asked.conditioning !== undefined && conditioning !== asked.conditioning)
    faults.push(`read from ${words(conditioning)}, where the condition asks for ${words(asked.conditioning)}`)
  if (reading.temperature === undefined)
    faults.push('the temperature of the specimens when read is not on record')
  else if (
    Math.abs(reading.temperature.value - asked.reading.temperature.value) >
    asked.reading.within.value + 1e-9
  ) {
    faults.push(
      `read at ${celsius(reading.temperature.value)}, outside ${celsius(asked.reading.temperature.value)} ± ${celsius(asked.reading.within.value)}`,
    )
  }
  return [
    ...faults,
    ...contactFaults(reading, asked.reading['end-contact-at-most']),
    ...resistorFaults(reading, asked.reading['verification-within']),
  ]
}

/** What is worth saying of a reading that still counts. */
export function readingNotes(reading: ResistivityReading, condition: MortarCondition): string[] {
  return condition.resistivity?.saturation === 'stated' && reading.saturation === undefined
    ? ['how saturated the specimens were when read is not stated']
    : []
}

/**
 * End contacts as a share of each reading that counts; resistivities as reported hold no reading to compare
 * with.
 */
function contactFaults(reading: ResistivityReading, allowed: Quantity | undefined): string[] {
  const contact = reading['end-contact']?.value
  if (allowed === undefined || contact === undefined) return []
  const shares = Object.values(reading.specimens ?? {}).flatMap((specimen) => {
    const resistance = isQuantity(specimen)
      ? specimen
      : specimen.excluded === undefined
        ? specimen.resistance
        : undefined
    return resistance?.kind === 'resistance' ? [(100 * contact) / resistance.value] : []
  })
  const largest = Math.max(0, ...shares)
  return largest <= allowed.value + 1e-9
    ? []
    : [`the end contacts are ${largest.toFixed(1)} % of a reading, more than ${allowed.written}`]
}

function resistorFaults({ verification }: ResistivityReading, allowed: Quantity | undefined): string[] {
  if (allowed === undefined) return []
  if (verification === undefined) return ['no reading on a known resistor is on record']
  const off = (100 * Math.abs(verification.read.value - verification.known.value)) / verification.known.value
  return off <= allowed.value + 1e-9
    ? []
    : [
        `the meter read ${verification.read.written} on a resistor of ${verification.known.written}, off by more than ${allowed.written}`,
      ]
}

/** "23.1 °C", without a trailing zero. */
export function celsius(value: number): string {
  return `${Number(value.toFixed(1))} °C`
}

function words(term: string): string {
  return term.replaceAll('-', ' ')
}
