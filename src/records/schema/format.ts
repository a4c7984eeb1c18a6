/** The format of records, which rises where a record of before would be read otherwise or not at all. */
import type { FileReport } from '../diagnostics/report.ts'

/** The latest that this program reads. */
export const FORMAT = 1

/**
 * Reports a site whose records are of a later format.
 * @param site as written
 * @returns whether they are: nothing else of them is to be told then, for what they mean is not known here
 */
export function reportNewerFormat(site: unknown, report: FileReport): boolean {
  const format = (site as { readonly format?: unknown } | null)?.format
  if (typeof format !== 'number' || format <= FORMAT) return false
  report.at(
    '/format',
    'format-newer',
    `the records are in format ${format}, and this program reads formats up to ${FORMAT}`,
    'install a later version of the program; the records stay as they are',
  )
  return true
}
