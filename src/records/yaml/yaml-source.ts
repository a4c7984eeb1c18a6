/**
 * YAML text to plain values, and from a place in the value back to its line and column. Values come by the
 * plain parser; positions
 * are sought only for a file that has a fault.
 */
import {
  EVENT_ALIAS,
  EVENT_MAPPING,
  EVENT_POP,
  EVENT_SCALAR,
  EVENT_SEQUENCE,
  type Event,
  getScalarValue,
  JSON_SCHEMA,
  load,
  parseEvents,
  YAMLException,
} from 'js-yaml'

/** Nesting beyond any record's. */
const DEEPEST = 30

export type YamlReading = { readonly value: unknown } | { readonly fault: YamlFault }
export interface YamlFault {
  readonly code: 'yaml-syntax' | 'yaml-alias' | 'yaml-duplicate-key' | 'yaml-empty'
  readonly message: string
  readonly line: number
  readonly column: number
}

/** Numbers, true, false and null are read as such, everything else stays text; aliases are refused. */
export function readYaml(text: string): YamlReading {
  try {
    return {
      value: load(text, { schema: JSON_SCHEMA, maxAliases: 0, maxDepth: DEEPEST } as Parameters<
        typeof load
      >[1]),
    }
  } catch (error) {
    if (!(error instanceof YAMLException)) throw error
    const message = error.reason ?? String(error.message)
    const mark = error.mark as { line: number; column: number } | undefined
    return {
      fault: { code: codeOf(message), message, line: (mark?.line ?? 0) + 1, column: (mark?.column ?? 0) + 1 },
    }
  }
}

function codeOf(message: string): YamlFault['code'] {
  if (/alias/i.test(message)) return 'yaml-alias'
  if (/input is empty/.test(message)) return 'yaml-empty'
  return /duplicat/i.test(message) ? 'yaml-duplicate-key' : 'yaml-syntax'
}

/** Where a value and its key stand: offsets into the text, and how the scalar was written. */
export interface Span {
  readonly start: number
  readonly end: number
  readonly key?: { readonly start: number; readonly end: number }
  readonly block: boolean
  readonly written?: string
}

/**
 * Spans of every value by JSON pointer.
 * Note: js-yaml's tree carries no offsets, its events do; an empty value has none and gets its key's.
 */
export function spansOf(text: string): Map<string, Span> {
  const spans = new Map<string, Span>()
  const stack: {
    pointer: string
    map: boolean
    key?: { name: string; start: number; end: number }
    index: number
  }[] = []
  const at = () => {
    const parent = stack.at(-1)
    if (parent === undefined) return { pointer: '', key: undefined }
    if (!parent.map) return { pointer: `${parent.pointer}/${parent.index++}`, key: undefined }
    const { key } = parent
    delete parent.key
    return { pointer: `${parent.pointer}/${escapePointer(key?.name ?? '')}`, key }
  }
  for (const event of parseEvents(text, {}) as Event[]) {
    const parent = stack.at(-1)
    if (event.type === EVENT_POP) stack.pop()
    else if (event.type === EVENT_SCALAR) {
      const scalar = event as unknown as { valueStart: number; valueEnd: number; style: number }
      const written = getScalarValue(text, event as never)
      if (parent?.map === true && parent.key === undefined)
        parent.key = { name: written, start: scalar.valueStart, end: scalar.valueEnd }
      else {
        const { pointer, key } = at()
        const empty = scalar.valueStart < 0
        spans.set(pointer, {
          start: empty ? (key?.start ?? 0) : scalar.valueStart,
          end: empty ? (key?.end ?? 0) : scalar.valueEnd,
          ...(key === undefined ? {} : { key }),
          block: isBlock(text, scalar.valueStart, key?.end),
          written,
        })
      }
    } else if (event.type === EVENT_MAPPING || event.type === EVENT_SEQUENCE) {
      const { pointer, key } = at()
      const { start } = event as unknown as { start: number }
      spans.set(pointer, { start, end: start + 1, ...(key === undefined ? {} : { key }), block: false })
      stack.push({ pointer, map: event.type === EVENT_MAPPING, index: 0 })
    } else if (event.type === EVENT_ALIAS) at()
  }
  return spans
}

/** A value of block style begins on a later line than its key, after "|" or ">". */
function isBlock(text: string, start: number, keyEnd: number | undefined): boolean {
  return keyEnd !== undefined && keyEnd < start && /^\s*["']?\s*:\s*[|>]/.test(text.slice(keyEnd, start))
}

export function escapePointer(key: string): string {
  if (!/[~/]/.test(key)) return key
  return key.replaceAll('~', '~0').replaceAll('/', '~1')
}

/** Offsets at which the lines of a text begin. */
export function lineStarts(text: string): number[] {
  const starts = [0]
  for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) starts.push(end + 1)
  return starts
}

/** Line and column, from 1, of an offset: the last line that begins at or before it, found by halving. */
export function lineAndColumn(starts: readonly number[], offset: number): { line: number; column: number } {
  let [low, high] = [0, starts.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((starts[middle] ?? 0) <= offset) low = middle
    else high = middle - 1
  }
  return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 }
}
