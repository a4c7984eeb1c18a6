/** As many diagnostics as a screen holds, errors first, and what the others are. */
import { countWords, plural } from '../../words/numbers.ts'
import type { Code } from './codes.ts'
import type { Diagnostic } from './diagnostic.ts'
import { drawnDiagnostics, inOrder } from './diagnostic-text.ts'

/** What is shown at once: so many lines of a terminal, or so many diagnostics where nobody scrolls. */
export type Screen = { readonly lines: number } | { readonly diagnostics: number }

/** Lines that the counts below the diagnostics take. */
const COUNTS = 6
/** Files and codes that the count of the rest names. */
const NAMED = 4

/**
 * The diagnostics of a screen, at least one, errors first, and a count of the others by code and by file. Records that
 * await values are one line, since nothing is wrong with them.
 */
export function firstScreen(diagnostics: readonly Diagnostic[], folder: string, screen: Screen): string {
  const ordered = inOrder(diagnostics)
  const blanks = ordered.filter(({ code }) => code === BLANK)
  const isFolded = 1 < blanks.length
  const listed = isFolded ? ordered.filter(({ code }) => code !== BLANK) : ordered
  const errors = listed.filter(({ severity }) => severity === 'error')
  const all = [...errors, ...listed.filter(({ severity }) => severity !== 'error')]
  const shown: string[] = []
  let lines = 0
  for (const text of drawnDiagnostics(all, folder)) {
    lines += text.split('\n').length + 1
    const isFull =
      'lines' in screen
        ? screen.lines - COUNTS < lines && all.length > 1
        : shown.length === screen.diagnostics
    if (isFull && shown.length > 0) break
    shown.push(text)
  }
  const rest = all.slice(shown.length)
  return [
    ...shown.flatMap((text, place) => (place === 0 ? [text] : ['', text])),
    ...(rest.length === 0 ? [] : ['', ...restLines(rest)]),
    ...(isFolded ? [...(shown.length === 0 ? [] : ['']), blankLine(blanks)] : []),
  ].join('\n')
}

/** A value that is not written yet. */
const BLANK: Code = 'value-blank'

function blankLine(blanks: readonly Diagnostic[]): string {
  const files = [...new Set(blanks.map(({ file }) => file))]
  const more = files.length - NAMED
  const named = files.slice(0, NAMED).join(', ')
  return `still to be filled in: ${named}${0 < more ? ` and ${countWords(more, 'other record')}` : ''}; check --all shows what is blank`
}

function restLines(rest: readonly Diagnostic[]): string[] {
  return [
    `${plural(rest.length, 'further diagnostic is', 'further diagnostics are')} not shown; check --all shows every one`,
    `  by code: ${countsOf(
      rest.map(({ code }) => code),
      'code',
    )}`,
    `  by file: ${countsOf(
      rest.map(({ file }) => file),
      'file',
    )}`,
  ]
}

/** "quantity-unit 12, date 3 and 2 other codes": the most frequent first. */
function countsOf(names: readonly string[], noun: string): string {
  const counts = [...Map.groupBy(names, (name) => name)]
    .map(([name, members]) => ({ name, count: members.length }))
    .sort((a, b) => b.count - a.count || (a.name < b.name ? -1 : 1))
  const more = counts.length - NAMED
  const named = counts.slice(0, NAMED).map(({ name, count }) => `${name} ${count}`)
  return `${named.join(', ')}${more > 0 ? ` and ${countWords(more, `other ${noun}`)}` : ''}`
}
