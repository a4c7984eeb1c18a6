/** Values in the curly quotes that a word processor writes: to YAML they are letters like any other. */
import type { FileReport } from '../diagnostics/report.ts'

const CURLY = /^[“”„‘’‚].*[“”‘’]$/s

/**
 * Whether a text was written in curly quotes and nothing else; within straight quotes they are part of the text.
 * @param pointer of the text in its record
 */
export function isInCurlyQuotes(text: string, pointer: string, report: FileReport): boolean {
  if (!mayBeCurly(text)) return false
  const span = report.written(pointer)
  if (span === undefined || span.block || report.text[span.start] !== text[0]) return false
  // A text in straight quotes has its place within them.
  return !/["']/.test(report.text[span.start - 1] ?? '')
}

/** The same without a look at how it was written: most texts are not, and need no place. */
export function mayBeCurly(text: string): boolean {
  return CURLY.test(text)
}

/** Reports such a text. */
export function reportCurlyQuotes(text: string, pointer: string, report: FileReport): void {
  report.at(
    pointer,
    'curly-quotes',
    'the value stands in curly quotes, which YAML takes for part of the text',
    `write straight quotes, "${text.slice(1, -1)}", or none`,
  )
}
