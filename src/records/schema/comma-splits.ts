/**
 * A number with a comma inside { }: YAML ends the entry at the comma and takes the rest, "500 lbf" of
 * "17,500 lbf", for a key without a value. Where any name may be a key, only the text tells.
 */
import { commaReadings } from '../../core/measure/comma-numbers.ts'
import type { FileReport } from '../diagnostics/report.ts'

/** Captures the digits behind a comma that no blank follows, and the unit after them. */
const REST = /^,(\d+)(\s*[^\s\d,:}\]][^,:}\]\n]*)?(?=[,}\n])/

/**
 * Every quantity that a number and the text behind its comma may stand for.
 * @param pointer of a value that YAML read as a number
 * @returns undefined where no comma and digits follow it
 */
export function splitReadings(pointer: string, report: FileReport): readonly string[] | undefined {
  const span = report.written(pointer)
  if (span?.written === undefined) return undefined
  const [rest, digits = '', unit = ''] = REST.exec(report.text.slice(span.end)) ?? []
  return rest === undefined
    ? undefined
    : commaReadings(`${span.written},${digits}`).map((reading) => `${reading}${unit.trimEnd()}`)
}

/** Whether an entry without a value is the rest of the number before it, where that is told. */
export function isRestOfNumber(pointer: string, report: FileReport): boolean {
  const key = report.written(pointer)?.key
  if (key === undefined) return false
  return /\d,$/.test(report.text.slice(0, key.start)) && REST.test(report.text.slice(key.start - 1))
}
