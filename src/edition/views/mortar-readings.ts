/** The readings of one mortar and its control, as written on the bench. */
import { clockTime, shortDate } from '../../words/dates.ts'
import { writtenText } from '../../words/units.ts'
import type { CertificateDocument, DocumentMortar, DocumentReading } from '../shape/document.ts'
import { conditionIn } from './document-names.ts'

export interface MortarReadings {
  readonly condition: string
  readonly sample: string
  readonly particulars: readonly { readonly label: string; readonly text: string }[]
  readonly readings: readonly ReadingLine[]
}
export interface ReadingLine {
  readonly name: string
  readonly tested: string
  readonly specimens: string
  /** How it was read; null where nothing is on record. */
  readonly facts: string | null
}

export function mortarReadings(
  { condition: id, sample, readings }: DocumentMortar,
  document: Pick<CertificateDocument, 'conditions'>,
): MortarReadings {
  const condition = conditionIn(document, id)
  return {
    condition: condition?.title ?? id,
    sample,
    particulars: condition?.particulars ?? [],
    readings: readings.map((reading) => ({
      name: `${reading.of}, ${reading.what}, ${reading.age}`,
      tested: [shortDate(reading.tested), clockTime(reading.tested)]
        .filter((part) => part !== null)
        .join(', '),
      specimens: reading.specimens.map(specimenWords).join('; '),
      facts: factsOf(reading),
    })),
  }
}

function specimenWords({ mark, reading, size, excluded }: DocumentReading['specimens'][number]): string {
  const sized = size === undefined ? '' : ` (${writtenText(size)})`
  return `${mark} ${writtenText(reading)}${sized}${excluded === undefined ? '' : `, excluded: ${excluded}`}`
}

function factsOf(reading: DocumentReading): string | null {
  const { endContact, frequency, verification } = reading
  const facts = [
    temperatureWords(reading),
    endContact === undefined ? undefined : `end contact ${writtenText(endContact)}`,
    frequency === undefined ? undefined : writtenText(frequency),
    reading.conditioning?.replaceAll('-', ' '),
    verification === undefined ? undefined : `check resistor ${writtenText(verification)}`,
    reading.saturation,
    reading.deviations,
  ].filter((part) => part !== undefined)
  return facts.length === 0 ? null : facts.join(', ')
}

/** A resistivity means little without its temperature. */
function temperatureWords({ temperature, what }: DocumentReading): string | undefined {
  if (temperature !== undefined) return `at ${writtenText(temperature)}`
  return what === 'resistivity' ? 'temperature not recorded' : undefined
}
