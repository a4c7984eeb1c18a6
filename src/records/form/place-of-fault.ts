/** Which place of a record a diagnostic marks. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { lineStarts } from '../yaml/line-and-column.ts'
import { spansOf } from '../yaml/spans.ts'

/** Diagnostics by the JSON pointer of the innermost value that they mark, its key included; '' for the whole record. */
export function faultsByPlace(text: string, diagnostics: readonly Diagnostic[]): Map<string, Diagnostic[]> {
  const starts = lineStarts(text)
  const places = new Map<string, Diagnostic[]>()
  const spans = diagnostics.length === 0 ? [] : [...spansOf(text)]
  for (const diagnostic of diagnostics) {
    const offset = (starts[diagnostic.line - 1] ?? 0) + diagnostic.column - 1
    const pointer = spans.findLast(([, { key, start, end }]) => {
      const onKey = key !== undefined && key.start <= offset && offset < Math.max(key.end, key.start + 1)
      return onKey || (start <= offset && offset < Math.max(end, start + 1))
    })?.[0]
    places.set(pointer ?? '', [...(places.get(pointer ?? '') ?? []), diagnostic])
  }
  return places
}
