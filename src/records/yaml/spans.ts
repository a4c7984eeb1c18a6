/**
 * Where every value of a YAML text stands, sought only for a file that has a fault.
 * Note: js-yaml's tree carries no offsets, its events do.
 */
import {
  EVENT_MAPPING,
  EVENT_POP,
  EVENT_SCALAR,
  EVENT_SEQUENCE,
  getScalarValue,
  parseEvents,
  SCALAR_STYLE_FOLDED_BLOCK,
  SCALAR_STYLE_LITERAL_BLOCK,
  type ScalarEvent,
} from 'js-yaml'
import { below } from './pointer.ts'

interface Offsets {
  readonly start: number
  readonly end: number
}

/** Where a value and its key stand: offsets into the text, and how the scalar was written. */
export interface Span extends Offsets {
  readonly key?: Offsets
  /** Written as block text, after "|" or ">", as the value of a key. */
  readonly block: boolean
  readonly written?: string
}

interface Key extends Offsets {
  readonly name: string
}

/** A mapping or list whose end is still to come, with the key whose value is next. */
interface Container {
  readonly pointer: string
  readonly mapping: boolean
  items: number
  key?: Key
}

/** Spans of every value by JSON pointer. Note: an empty value has no place of its own and gets its key's. */
export function spansOf(text: string): Map<string, Span> {
  const spans = new Map<string, Span>()
  const open: Container[] = []
  /** Where the last event with a place of its own ends. */
  let passed = 0
  for (const event of parseEvents(text, {})) {
    const container = open.at(-1)
    if (event.type === EVENT_POP) open.pop()
    else if (event.type === EVENT_SCALAR) {
      if (container?.mapping === true && container.key === undefined)
        container.key = keyOf(text, event, passed)
      else {
        const { pointer, key } = nextIn(container)
        const item =
          container !== undefined && !container.mapping ? emptyItem(text, event, passed) : undefined
        spans.set(pointer, scalarSpan(text, event, item ?? key))
        if (item !== undefined) passed = item.end
      }
    } else if (event.type === EVENT_MAPPING || event.type === EVENT_SEQUENCE) {
      const { pointer, key } = nextIn(container)
      spans.set(pointer, { start: event.start, end: event.start + 1, ...(key && { key }), block: false })
      open.push({ pointer, mapping: event.type === EVENT_MAPPING, items: 0 })
    }
    if ('start' in event) passed = Math.max(passed, event.start)
    if ('valueEnd' in event) passed = Math.max(passed, event.valueEnd)
  }
  return spans
}

/** The pointer of the value that comes next, and its key within a mapping. */
function nextIn(container: Container | undefined): { pointer: string; key?: Key } {
  if (container === undefined) return { pointer: '' }
  if (!container.mapping) return { pointer: below(container.pointer, container.items++) }
  const { key } = container
  delete container.key
  return { pointer: below(container.pointer, key?.name ?? ''), ...(key && { key }) }
}

/** @param passed offset up to which the text was read: a key that is left out stands at the colon after it */
function keyOf(text: string, event: ScalarEvent, passed: number): Key {
  if (0 <= event.valueStart)
    return { name: getScalarValue(text, event), start: event.valueStart, end: event.valueEnd }
  const start = passed + (/^[^:]*?(?=[:?])/.exec(text.slice(passed))?.[0].length ?? 0)
  return { name: '', start, end: start + 1 }
}

/** The dash of an item without a value; undefined for one with a value. @param passed as of `keyOf` */
function emptyItem(text: string, { valueStart }: ScalarEvent, passed: number): Offsets | undefined {
  if (0 <= valueStart) return undefined
  const start = passed + Math.max(0, text.slice(passed).search(/-(?=\s|$)/))
  return { start, end: start + 1 }
}

/** @param instead what an empty value stands at: its key, or the dash of its item */
function scalarSpan(text: string, event: ScalarEvent, instead: Key | Offsets | undefined): Span {
  const { valueStart, valueEnd, style } = event
  const { start, end } =
    valueStart < 0 ? (instead ?? { start: 0, end: 0 }) : { start: valueStart, end: valueEnd }
  const key = instead !== undefined && 'name' in instead ? instead : undefined
  const block = style === SCALAR_STYLE_FOLDED_BLOCK || style === SCALAR_STYLE_LITERAL_BLOCK
  return {
    start,
    end,
    ...(key && { key }),
    block: block && key !== undefined,
    written: getScalarValue(text, event),
  }
}
