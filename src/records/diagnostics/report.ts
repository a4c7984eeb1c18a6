/**
 * Collects the faults of one file and gives them their line and column, which are sought only when there is a
 * fault.
 */
import { once } from '../../core/measure/once.ts'
import type { Diagnostic, RelatedPlace } from './diagnostic.ts'
import type { Code } from './codes.ts'
import { lineAndColumn, lineStarts } from '../yaml/line-and-column.ts'
import { above } from '../yaml/pointer.ts'
import { type Span, spansOf } from '../yaml/spans.ts'

/** A related place within the file that a fault is in. */
export type PlaceHere = Omit<RelatedPlace, 'file'>

export interface FileReport {
  readonly file: string
  readonly text: string
  /** A fault at a value, by JSON pointer. */
  at(
    pointer: string,
    code: Code,
    message: string,
    mend: string,
    related?: readonly (RelatedPlace | undefined)[],
  ): void
  /** A fault at the key of a value. */
  atKey(pointer: string, code: Code, message: string, mend: string): void
  /** A fault at a line and column. */
  atPosition(
    line: number,
    column: number,
    code: Code,
    message: string,
    mend: string,
    related?: readonly PlaceHere[],
  ): void
  /** The place of a value, to be shown beside a fault elsewhere; undefined for a value that is not there. */
  place(pointer: string, message: string): RelatedPlace | undefined
  /** What a value gives cause to look at, though it can be read in one way only: the record stays. */
  warnAt(pointer: string, code: Code, message: string, mend: string): void
  /** How the value at a pointer was written. */
  written(pointer: string): Span | undefined
  /**
   * Items of lists that are no part of the record, by their pointers in the file: from here on pointers are those of the
   * record, whose items have moved up.
   */
  leaveOut(items: readonly string[]): void
  /** Pointers of the items that are left out. */
  readonly leftOut: () => readonly string[]
  readonly count: () => number
  /** A fault of this record that stands in another file and is told there. */
  countElsewhere(): void
}

/** The start of the file stands for a place that it does not have. */
const NOWHERE = { start: 0, end: 1 }

/** @param given the text, or what reads it once a place in it is sought */
export function fileReport(
  file: string,
  given: string | (() => string),
  diagnostics: Diagnostic[],
): FileReport {
  const text = once(() => (typeof given === 'string' ? given : given()))
  let spans: Map<string, Span> | undefined
  let starts: readonly number[] | undefined
  let count = 0
  let left: readonly string[] = []
  const writtenAt = (pointer: string): Span | undefined => {
    spans ??= spansOf(text())
    return spans.get(left.length === 0 ? pointer : inFile(pointer, left))
  }
  const span = (pointer: string): Span | undefined =>
    writtenAt(pointer) ?? (pointer === '' ? undefined : writtenAt(above(pointer)))
  const placed = ({ start, end }: Pick<Span, 'start' | 'end'>) => {
    starts ??= lineStarts(text())
    const { line, column } = lineAndColumn(starts, start)
    const lineEnd = text().indexOf('\n', start)
    const last = Math.min(end, lineEnd < 0 ? text().length : lineEnd)
    return { file, line, column, endColumn: column + Math.max(1, last - start) }
  }
  const add = (
    where: Pick<Span, 'start' | 'end'>,
    severity: Diagnostic['severity'],
    { code, message, mend, related }: Pick<Diagnostic, 'code' | 'message' | 'mend' | 'related'>,
  ) => {
    if (severity === 'error') count += 1
    diagnostics.push({ code, severity, ...placed(where), message, mend, ...withRelated(related) })
  }
  return {
    file,
    get text() {
      return text()
    },
    at: (pointer, code, message, mend, related = []) => {
      const known = related.filter((place) => place !== undefined)
      add(span(pointer) ?? NOWHERE, 'error', { code, message, mend, related: known })
    },
    warnAt: (pointer, code, message, mend) => {
      add(span(pointer) ?? NOWHERE, 'warning', { code, message, mend })
    },
    atKey: (pointer, code, message, mend) => {
      const found = span(pointer)
      add(found?.key ?? found ?? NOWHERE, 'error', { code, message, mend })
    },
    atPosition: (line, column, code, message, mend, related) => {
      count += 1
      const here = related?.map((place) => ({ file, ...place }))
      diagnostics.push({ code, severity: 'error', file, line, column, message, mend, ...withRelated(here) })
    },
    place: (pointer, message) => {
      const found = writtenAt(pointer)
      return found === undefined ? undefined : { ...placed(found), message }
    },
    written: span,
    leaveOut: (items) => {
      left = items
    },
    leftOut: () => left,
    count: () => count,
    countElsewhere: () => {
      count += 1
    },
  }
}

function withRelated(related: readonly RelatedPlace[] | undefined): Pick<Diagnostic, 'related'> {
  return related === undefined || related.length === 0 ? {} : { related }
}

/** Where a value of the record stands in the file. @param left items that are no part of the record */
function inFile(pointer: string, left: readonly string[]): string {
  return pointer
    .split('/')
    .slice(1)
    .reduce((list, key) => {
      const places = new Set(
        left.filter((item) => above(item) === list).map((item) => item.slice(list.length + 1)),
      )
      if (places.size === 0 || !/^\d+$/.test(key)) return `${list}/${key}`
      let [place, before] = [0, Number(key)]
      for (; before > 0 || places.has(String(place)); place += 1) if (!places.has(String(place))) before -= 1
      return `${list}/${place}`
    }, '')
}
