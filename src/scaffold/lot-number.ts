/** The number of a source's next lot. */
import { lotNumberForm } from '../core/checks/lot-number-form.ts'

export interface Numbering {
  readonly pattern: string
  /** Numbers given so far, as printed, in any order; those that are off the pattern do not count. */
  readonly given: readonly string[]
  /** Year of the new lot. */
  readonly year: string
}

/** One after the highest of the year, or of all where the pattern has no year; null where the pattern counts nothing. */
export function nextLotNumber({ pattern, given, year }: Numbering): string | null {
  const form = lotNumberForm(pattern)
  if (form === null) return null
  const runs = given.flatMap((number) => form.read(number) ?? [])
  const own = pattern.includes('YYYY') ? runs.filter((run) => run.year === year) : runs
  return form.written(year, Math.max(0, ...own.map(({ at }) => at)) + 1)
}
