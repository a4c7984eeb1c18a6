/** A loaded record back in its written form. */
import { isTime } from '../../core/measure/texts-of-times.ts'

/** The plain JSON of a record with every quantity, moment and age as its written text. */
export function writtenForm(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(writtenForm)
  if ('written' in value && 'kind' in value) return value.written
  if (isTime(value)) return value.text
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .map(([key, member]) => [key, writtenForm(member)]),
  )
}
