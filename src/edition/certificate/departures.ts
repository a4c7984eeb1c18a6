/** What was dropped, repeated or left out of a lot's results: stated with the deviations from the methods. */
import type { ResultReason } from '../../core/result/reason.ts'
import type { Result } from '../../core/result/result.ts'
import { property } from '../../core/measure/properties.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'

type Departures = NonNullable<CertificateFacts['departures']>

const DEPARTURES: readonly ResultReason['code'][] = [
  'specimen-dropped',
  'replaced-by-retest',
  'value-excluded',
]

/**
 * @param results of the lot, in the order of its record
 * @param titleOf a reader's name of a condition
 * @returns each once: a mean and the index made of it share the specimen that was dropped
 */
export function departuresOf(
  results: readonly Result[],
  titleOf: (condition: string) => string,
  units: UnitSystem,
): Departures {
  const found = new Map<string, Departures[number]>()
  for (const result of results)
    for (const reason of result.reasons.filter(departs)) {
      const departure = { of: testWords(result, reason, titleOf), reason: resultReasonIn(reason, units) }
      const key = `${departure.of}|${departure.reason}`
      if (!found.has(key)) found.set(key, departure)
    }
  return [...found.values()]
}

/** A fault of the control carries its own reason. */
function departs(reason: ResultReason): boolean {
  return reason.code === 'control-fault' ? departs(reason.params.reason) : DEPARTURES.includes(reason.code)
}

/** Of a mortar its condition and age, since several properties share them; of an analysis the property. */
function testWords(
  { property: key, condition, age }: Result,
  { code }: ResultReason,
  titleOf: (condition: string) => string,
): string {
  if (condition === undefined || code === 'value-excluded') return property(key).title
  return [titleOf(condition), age?.text].filter((part) => part !== undefined).join(', ')
}
