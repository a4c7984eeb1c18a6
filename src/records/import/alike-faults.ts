/** Faults of one cause told once: a column read wrongly is one thing to mend, however many rows it has. */
import { cellWords } from './grid.ts'
import type { ImportCode } from '../diagnostics/import-codes.ts'
import { type ImportFault, importFaultText } from './import-fault.ts'

/** Faults of one cause, the first of them first. */
export type AlikeFaults = readonly [ImportFault, ...ImportFault[]]

/** Faults by cause, in the order in which each cause is first met. */
export function alikeFaults(faults: readonly ImportFault[]): AlikeFaults[] {
  return [...Map.groupBy(faults, causeOf).values()].map((alike) => alike as unknown as AlikeFaults)
}

/** What differs in value alone is of one cause with the others of its column. */
const BY_COLUMN: readonly ImportCode[] = ['import-differs', 'import-twice']

function causeOf({ code, severity, place, message, mend }: ImportFault): string {
  const where = [place?.sheet, place?.column ?? (place === null ? 'none' : 'row')]
  const what = BY_COLUMN.includes(code) ? [] : [message, mend].map(withoutValues)
  return JSON.stringify([code, severity, ...where, ...what])
}

function withoutValues(text: string): string {
  return text
    .replace(/^(?:lot|control) \S+: /, '')
    .replace(/"[^"]*"/g, '""')
    .replace(/\b(?:[A-Z]{1,3}|row )\d+\b/g, '')
}

/** Places that are named, the first one included. */
const NAMED = 3

/** The first fault as it is, the places of the next ones and how many more there are, and how to fix it. */
export function alikeFaultsText(file: string, [first, ...others]: AlikeFaults): string {
  const text = importFaultText(file, first)
  if (others.length === 0) return text
  const named = others.slice(0, NAMED - 1).flatMap(({ place }) => (place === null ? [] : [cellWords(place)]))
  const rest = others.length - named.length
  const words = [named.join(', '), rest === 0 ? '' : `${rest} more`].filter((part) => part !== '')
  return text.replace(/\n(?= {2}fix: )/, () => `\n  likewise ${words.join(' and ')}; --all shows each\n`)
}
