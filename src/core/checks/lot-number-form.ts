/** How a source numbers its lots: the year and a running number within a pattern such as TH-YYYY-###. */
import { literalPattern } from '../measure/text-pattern.ts'

/** A pattern that reads and writes numbers. */
export interface LotNumberForm {
  /** Year, empty where the pattern has none, and running number of a printed lot number; null for one off the pattern. */
  readonly read: (number: string) => { readonly year: string; readonly at: number } | null
  readonly written: (year: string, at: number) => string
}

/**
 * The form of a pattern: YYYY stands for the year, the last group of # for the running number.
 * @param pattern as the source states it
 * @returns null for a pattern without a running number
 */
export function lotNumberForm(pattern: string): LotNumberForm | null {
  const digits = /#+(?=[^#]*$)/.exec(pattern)?.[0]
  if (digits === undefined) return null
  const escaped = literalPattern(pattern)
  const text = escaped
    .replace('YYYY', '(?<year>\\d{4})')
    .replace(/#+(?=[^#]*$)/, (run) => `(?<at>\\d{${run.length}})`)
    .replaceAll('#', '\\d')
  const regular = new RegExp(`^${text}$`, 'i')
  const hasOther = pattern.replace(digits, '').includes('#')
  return {
    read: (number) => {
      const groups = hasOther ? undefined : regular.exec(number)?.groups
      return groups === undefined ? null : { year: groups['year'] ?? '', at: Number(groups['at']) }
    },
    written: (year, at) =>
      pattern.replace('YYYY', year).replace(digits, String(at).padStart(digits.length, '0')),
  }
}
