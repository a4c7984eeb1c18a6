/** As many diagnostics as a screen holds, errors first, and what the others are. */
import { countWords, plural } from '../../words/numbers.ts'
import type { Diagnostic } from './diagnostic.ts'
import { drawnDiagnostics, inOrder } from './diagnostic-text.ts'

/** What is shown at once: so many lines of a terminal, or so many diagnostics where nobody scrolls. */
export type Screen = { readonly lines: number } | { readonly diagnostics: number }

/** Lines that the counts below the diagnostics take. */
const COUNTS = 6
/** Files and codes that the count of the rest names. */
const NAMED = 4

/** The diagnostics of a screen, at least one, and a count of the others by code and by file. */
export function firstScreen(diagnostics: readonly Diagnostic[], folder: string, screen: Screen): string {
  const ordered = inOrder(diagnostics)
  const errors = ordered.filter(({ severity }) => severity === 'error')
  const all = [...errors, ...ordered.filter(({ severity }) => severity !== 'error')]
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
    inOrderAgain(ordered, all, shown).join('\n\n'),
    ...(rest.length === 0 ? [] : ['', ...restLines(rest)]),
  ].join('\n')
}

/** Where all are shown they stand in the order of the files. */
function inOrderAgain(
  ordered: readonly Diagnostic[],
  all: readonly Diagnostic[],
  shown: readonly string[],
): readonly string[] {
  if (shown.length < all.length) return shown
  const textOf = new Map(all.map((diagnostic, index) => [diagnostic, shown[index] ?? '']))
  return ordered.map((diagnostic) => textOf.get(diagnostic) ?? '')
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
