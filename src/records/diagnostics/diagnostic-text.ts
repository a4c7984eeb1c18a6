/** Draws diagnostics: place, what was found, the line with a caret, the fix. */
import type { Diagnostic } from './diagnostic.ts'
import { readText } from '../files.ts'

/** Characters of a long line that are shown around the fault. */
const WINDOW = 80

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be made visible.
const CONTROL = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g

/** All diagnostics in order of file, line and column, a blank line between them. */
export function diagnosticsText(diagnostics: readonly Diagnostic[], folder: string): string {
  return [...drawnDiagnostics(inOrder(diagnostics), folder)].join('\n\n')
}

/** The text of each diagnostic, drawn when it is asked for. */
export function* drawnDiagnostics(diagnostics: Iterable<Diagnostic>, folder: string): Generator<string> {
  const texts = new Map<string, string | undefined>()
  const textOf = (file: string) => {
    if (!texts.has(file)) {
      const reading = readText(folder, file)
      texts.set(file, 'text' in reading ? reading.text : undefined)
    }
    return texts.get(file)
  }
  for (const diagnostic of diagnostics) yield diagnosticText(diagnostic, textOf)
}

export function inOrder(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...diagnostics].sort((a, b) =>
    a.file === b.file
      ? a.line - b.line || a.column - b.column || (a.code < b.code ? -1 : 1)
      : a.file < b.file
        ? -1
        : 1,
  )
}

/** One diagnostic; where the text of a file cannot be had, its line is left out. */
export function diagnosticText(diagnostic: Diagnostic, textOf: (file: string) => string | undefined): string {
  const mark = diagnostic.severity === 'warning' ? 'warning: ' : ''
  return [
    printable(`${placeText(diagnostic)}: ${mark}${diagnostic.message} [${diagnostic.code}]`),
    ...frameOf(textOf(diagnostic.file), diagnostic),
    ...(diagnostic.related ?? []).flatMap((place) => [
      printable(`see ${placeText(place)}: ${place.message}`),
      ...frameOf(textOf(place.file), place),
    ]),
    ...(diagnostic.mend === '' ? [] : [printable(`fix: ${diagnostic.mend}`)]),
  ].join('\n')
}

/** One line for editors and build servers: place, severity, message, code. */
export function compactText(diagnostic: Diagnostic): string {
  const { severity, message, code } = diagnostic
  return printable(`${placeText(diagnostic)}: ${severity}: ${message} [${code}]`)
}

type Marked = Pick<Diagnostic, 'file' | 'line' | 'column' | 'endColumn'>

function placeText({ file, line, column }: Marked): string {
  return `${file}:${line}:${column}`
}

/** The line with its number and a caret under the fault; a long line is cut to a window around it. */
function frameOf(text: string | undefined, { line, column, endColumn }: Marked): string[] {
  const whole = text?.split('\n')[line - 1]?.replace(/\r$/, '').replace(CONTROL, '\ufffd')
  if (whole === undefined || whole.trim() === '') return []
  const from =
    WINDOW < whole.length ? Math.max(0, Math.min(column - 1 - WINDOW / 2, whole.length - WINDOW)) : 0
  const shown = whole.slice(from, from + WINDOW)
  const start = column - 1 - from
  const marks = Math.max(1, Math.min((endColumn ?? column + 1) - column, shown.length - start))
  const number = String(line)
  // A tab is kept as a tab, so that the caret stays under its sign whatever width a terminal gives it.
  const lead = shown.slice(0, start).replace(/[^\t]/g, ' ')
  return [`  ${number} | ${shown}`, `  ${' '.repeat(number.length)} | ${lead}${'^'.repeat(marks)}`]
}

/**
 * Control characters of a record must not steer a terminal, nor line ends in a key or a file's name break a
 * diagnostic over lines; within the line drawn one sign stands for each, so that the caret is right.
 */
function printable(text: string): string {
  return text
    .replace(/[\t\n]/g, (sign) => (sign === '\t' ? '\\t' : '\\n'))
    .replace(CONTROL, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)
}
