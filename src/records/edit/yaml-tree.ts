/**
 * A YAML text as a tree whose nodes know from where to where they stand, to the letter.
 * Note: js-yaml's events say where a scalar begins and ends, and where a mapping or list begins; its end is that of
 * its last member, or the bracket after it.
 */
import {
  COLLECTION_STYLE,
  EVENT_ID,
  type Event,
  getScalarValue,
  parseEvents,
  SCALAR_STYLE,
  type ScalarEvent,
} from 'js-yaml'

/** Offsets into the text, the end exclusive, quotes and brackets within. */
interface Extent {
  readonly start: number
  readonly end: number
}

export interface YamlScalar extends Extent {
  readonly kind: 'scalar'
  /** Nothing is written: start and end lie behind the colon or dash. */
  readonly empty: boolean
  /** Block text after "|" or ">". */
  readonly block: boolean
}

export interface YamlMember {
  /** Where the key or the dash begins; for a list in brackets where the item does. */
  readonly start: number
  /** Behind the colon or the dash; for a list in brackets where the item begins. */
  readonly valueFrom: number
  /** The key; the index as text for an item of a list. */
  readonly key: string
  readonly value: YamlNode
}

export interface YamlCollection extends Extent {
  readonly kind: 'mapping' | 'sequence'
  /** Within braces or brackets. */
  readonly flow: boolean
  readonly members: readonly YamlMember[]
}

export type YamlNode = YamlScalar | YamlCollection

/** The tree of a text with one document; null where it holds no value. @throws YAMLException for a text that is no YAML */
export function yamlTree(text: string): YamlNode | null {
  const events = parseEvents(text, {})
  const reader = new TreeReader(text, events)
  return reader.document()
}

class TreeReader {
  readonly #text: string
  readonly #events: readonly Event[]
  #next = 0

  constructor(text: string, events: readonly Event[]) {
    this.#text = text
    this.#events = events
  }

  document(): YamlNode | null {
    const first = this.#events[this.#next++]
    if (first === undefined || this.#events[this.#next]?.type === EVENT_ID.POP) return null
    return this.#node(0)
  }

  /** @param from offset behind which the node is written */
  #node(from: number): YamlNode {
    const event = this.#events[this.#next++]
    if (event?.type === EVENT_ID.SCALAR) return this.#scalar(event, from)
    if (event?.type === EVENT_ID.MAPPING || event?.type === EVENT_ID.SEQUENCE) {
      const flow = event.style === COLLECTION_STYLE.FLOW
      const mapping = event.type === EVENT_ID.MAPPING
      const members = mapping ? this.#entries(event.start, flow) : this.#items(event.start, flow)
      const last = members.at(-1)?.value.end ?? event.start + (flow ? 1 : 0)
      return {
        kind: mapping ? 'mapping' : 'sequence',
        start: event.start,
        end: flow ? this.#behindBracket(last) : last,
        flow,
        members,
      }
    }
    throw new RangeError('A value was expected, but the text holds an alias.')
  }

  #entries(start: number, flow: boolean): YamlMember[] {
    const entries: YamlMember[] = []
    let passed = flow ? start + 1 : start
    while (this.#events[this.#next]?.type !== EVENT_ID.POP) {
      const key = this.#node(passed)
      const event = this.#events[this.#next - 1]
      const name = event?.type === EVENT_ID.SCALAR ? getScalarValue(this.#text, event) : ''
      const colon = this.#text.indexOf(':', key.end)
      const bare = colon < 0 || /[^\s]/.test(this.#text.slice(key.end, colon))
      const valueFrom = bare ? key.end : colon + 1
      const value = this.#node(valueFrom)
      entries.push({ start: key.start, valueFrom, key: name, value })
      passed = value.end
    }
    this.#next += 1
    return entries
  }

  #items(start: number, flow: boolean): YamlMember[] {
    const items: YamlMember[] = []
    let passed = flow ? start + 1 : start
    while (this.#events[this.#next]?.type !== EVENT_ID.POP) {
      const from = flow ? passed : this.#dashAfter(passed)
      const value = this.#node(flow ? from : from + 1)
      const at = flow ? value.start : from
      items.push({ start: at, valueFrom: flow ? at : from + 1, key: String(items.length), value })
      passed = value.end
    }
    this.#next += 1
    return items
  }

  #scalar(event: ScalarEvent, from: number): YamlScalar {
    const { valueStart, valueEnd, style } = event
    if (valueStart < 0) return { kind: 'scalar', start: from, end: from, empty: true, block: false }
    const block = style === SCALAR_STYLE.LITERAL_BLOCK || style === SCALAR_STYLE.FOLDED_BLOCK
    const quoted = style === SCALAR_STYLE.SINGLE_QUOTED || style === SCALAR_STYLE.DOUBLE_QUOTED
    const lead = block ? /[|>][^\n]*\n?$/.exec(this.#text.slice(from, valueStart)) : null
    const start = lead === null ? valueStart - (quoted ? 1 : 0) : from + lead.index
    const end = block
      ? valueStart + this.#text.slice(valueStart, valueEnd).trimEnd().length
      : valueEnd + (quoted ? 1 : 0)
    return { kind: 'scalar', start, end, empty: false, block }
  }

  /** The next dash of a block list, past blanks and remarks. */
  #dashAfter(offset: number): number {
    return this.#past(offset, /(?:\s|#[^\n]*)*/y)
  }

  /** Behind the bracket or brace that ends a collection, past blanks, commas and remarks. */
  #behindBracket(offset: number): number {
    return this.#past(offset, /(?:[\s,]|#[^\n]*)*/y) + 1
  }

  #past(offset: number, skipped: RegExp): number {
    skipped.lastIndex = offset
    skipped.exec(this.#text)
    return skipped.lastIndex
  }
}
