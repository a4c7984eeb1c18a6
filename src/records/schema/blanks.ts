/**
 * Blanks of a bench sheet: a record of a lot or of a control batch is laid out before its figures are known, and what is
 * still blank counts as not yet known. What a person has begun to write is never left out.
 */
import { below } from '../yaml/pointer.ts'
import { type RecordKind, resolveReference, type SchemaNode, schemaNamed } from './schemas.ts'

/** Kinds of record that are filled in as the work goes on; in any other a blank is a slip. */
const FILLED_IN: readonly RecordKind[] = ['lot', 'control']

export interface FilledIn {
  /** Without its blanks; undefined where nothing has been written into the record yet. */
  readonly value: unknown
  /** Pointers of what is blank, in the order of the file. */
  readonly blanks: readonly string[]
  /** Pointers of the items of lists that are left out. */
  readonly items: readonly string[]
}

interface Sheet extends FilledIn {
  /** Whether a quantity or a moment is written: what a sheet is laid out with, such as ids and ages, does not count. */
  readonly begun: boolean
}

/**
 * A record's value without its blanks. A blank that the schema asks for stays, and is a fault, where anything is written
 * beside it; where nothing is, the whole mapping is blank.
 */
export function withoutBlanks(kind: RecordKind, value: unknown): FilledIn {
  if (!FILLED_IN.includes(kind) || !holdsBlank(value)) return { value, blanks: [], items: [] }
  const file = `${kind}.json`
  return sheetOf(value, schemaNamed(file), file, '')
}

/** Nearly every record has none, and is not walked along its schema. */
function holdsBlank(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return value === ''
  return Object.values(value).some(holdsBlank)
}

function sheetOf(value: unknown, written: SchemaNode, inFile: string, pointer: string): Sheet {
  const { node, file } = resolved(written, inFile)
  if (value === '') return { value: undefined, blanks: [pointer], items: [], begun: false }
  if (Array.isArray(value)) return listSheet(value, node, file, pointer)
  if (typeof value === 'object' && value !== null) return mappingSheet(value, node, file, pointer)
  return {
    value,
    blanks: [],
    items: [],
    begun: 'quantity' in node || 'moment' in node || typeof value === 'number',
  }
}

function resolved(node: SchemaNode, file: string): { node: SchemaNode; file: string } {
  const reference = node['$ref']
  if (typeof reference !== 'string') return { node, file }
  const target = resolveReference(reference, file)
  return resolved(target.node, target.file)
}

/** A dash with nothing behind it has no name that could be told as blank: it stays, and is a fault. */
const EMPTY_ITEM: Sheet = { value: '', blanks: [], items: [], begun: false }

function listSheet(list: readonly unknown[], node: SchemaNode, file: string, pointer: string): Sheet {
  const items = (node['items'] ?? {}) as SchemaNode
  const sheets = list.map((item, index) =>
    item === '' ? EMPTY_ITEM : sheetOf(item, items, file, below(pointer, index)),
  )
  const kept = sheets.flatMap(({ value }) => (value === undefined ? [] : [value]))
  const blank = sheets.flatMap(({ value }, index) => (value === undefined ? [below(pointer, index)] : []))
  return {
    value: kept.length === 0 && list.length > 0 ? undefined : kept,
    blanks: sheets.flatMap(({ blanks }) => blanks),
    items: [...blank, ...sheets.flatMap(({ items }) => items)],
    begun: sheets.some(({ begun }) => begun),
  }
}

function mappingSheet(mapping: object, node: SchemaNode, file: string, pointer: string): Sheet {
  const entries = Object.entries(mapping)
  const isSplit = entries.some(([, member]) => typeof member === 'number')
  const sheets = entries.map(([key, member]) => {
    const schema = memberSchema(key, node)
    // Of a number with a decimal comma the part behind it reads as a key without a value: it is no blank.
    const isOther = schema === undefined || (isSplit && member === '' && /^\d/.test(key))
    const sheet: Sheet = isOther
      ? { value: member, blanks: [], items: [], begun: member !== '' }
      : sheetOf(member, schema, file, below(pointer, key))
    return [key, sheet] as const
  })
  const required = new Set([
    ...((node['required'] ?? []) as readonly string[]),
    ...neverLeft(pointer, sheets),
  ])
  const begun = sheets.some(([, sheet]) => sheet.begun)
  const [blanks, items] = [
    sheets.flatMap(([, sheet]) => sheet.blanks),
    sheets.flatMap(([, sheet]) => sheet.items),
  ]
  const lacking = sheets.filter(([key, { value }]) => value === undefined && required.has(key))
  const whole = entries.length === 0 || sheets.some(([, { value }]) => value !== undefined)
  if (!whole || (lacking.length > 0 && !begun))
    return { value: undefined, blanks: isItem(pointer) ? blanks : [pointer], items, begun }
  const filled = sheets.flatMap(([key, { value }]) =>
    value !== undefined ? [[key, value]] : required.has(key) ? [[key, '']] : [],
  )
  const faults = lacking.flatMap(([, sheet]) => sheet.blanks)
  return {
    value: Object.fromEntries(filled),
    blanks: blanks.filter((blank) => !faults.includes(blank)),
    items,
    begun,
  }
}

/**
 * What a mortar with readings must say or not name at all: a specimen left blank beside others, or a control, would
 * change what is computed from the rest.
 */
function neverLeft(pointer: string, sheets: readonly (readonly [string, Sheet])[]): readonly string[] {
  const keys = sheets.map(([key]) => key)
  if (pointer.endsWith('/specimens')) return keys
  const isRead = sheets.some(([key, { begun }]) => (key === 'strength' || key === 'resistivity') && begun)
  return isRead ? keys.filter((key) => key === 'control' || key === 'strength' || key === 'resistivity') : []
}

/** An item of a list has no name of its own; what is blank in it has. */
function isItem(pointer: string): boolean {
  return /^$|\/\d+$/.test(pointer)
}

function memberSchema(key: string, node: SchemaNode): SchemaNode | undefined {
  const properties = (node['properties'] ?? {}) as Record<string, SchemaNode>
  if (Object.hasOwn(properties, key)) return properties[key]
  const additional = node['additionalProperties']
  return typeof additional === 'object' && additional !== null ? (additional as SchemaNode) : undefined
}
