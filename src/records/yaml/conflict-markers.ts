/** Marks that a merge left where two people had changed the same lines. */
import type { FileReport } from '../diagnostics/report.ts'

const MARKER = /^(?:<{7}|={7}|>{7}|\|{7})(?=\s|$)/

/** Reports each conflict at its first mark; whether there was one. A text with one is read no further. */
export function reportConflicts(text: string, report: FileReport): boolean {
  if (!text.includes('<<<<<<<') && !text.includes('>>>>>>>')) return false
  const lines = text.split('\n')
  const marked = lines.flatMap((line, index) =>
    MARKER.test(line) ? [{ sign: line[0] ?? '', line: index + 1 }] : [],
  )
  const starts = marked.filter(({ sign }) => sign === '<')
  // What a half-mended conflict left is told by the first mark that is still there.
  const told = starts.length > 0 ? starts : marked.filter(({ sign }) => sign === '>').slice(0, 1)
  for (const { line } of told) {
    const rest = marked.filter((other) => line < other.line)
    const next = rest.findIndex(({ sign }) => sign === '<')
    report.atPosition(
      line,
      1,
      'conflict-marker',
      'a merge left this mark: two people changed the same lines, and both versions stand here',
      'keep the lines that are right, and remove the lines that begin with <<<<<<<, ======= and >>>>>>>',
      (next < 0 ? rest : rest.slice(0, next))
        .filter(({ sign }) => sign !== '|')
        .map((other) => ({
          line: other.line,
          column: 1,
          message: other.sign === '=' ? 'the other version begins here' : 'the conflict ends here',
        })),
    )
  }
  return told.length > 0
}
