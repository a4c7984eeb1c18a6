/** What a change of a form is as edits of the record's text. */
import type { Edit, Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { placeOf, SHEETS } from './bench-sheet.ts'
import { type FormNode, itemOf, isMapping, isShort, membersOf, nodeAt, requiredIn } from './form-node.ts'
import type { FormField } from './form-parts.ts'

/**
 * Edits that put what was typed into a field in place of what it holds: none where they are the same; an emptied
 * field is taken out, unless the record needs it.
 */
export function typedEdits(field: FormField, typed: string, record: Plain | undefined): readonly Edit[] {
  const text = typed.trim()
  if (text === field.text) return []
  if (text !== '') return [{ set: field.path, to: plainOf(field, text) }]
  if (field.required) return [{ set: field.path, to: '' }]
  return [{ remove: emptied(field.path, record) }]
}

function plainOf({ number }: FormField, text: string): Plain {
  return number && /^\d{1,9}(?:\.\d+)?$/.test(text) ? Number(text) : text
}

/** A mapping that would be left empty goes with its last entry, where the record can do without it. */
function emptied(path: Path, record: Plain | undefined): Path {
  const holder = path.slice(0, -1)
  const [key] = holder.slice(-1)
  if (typeof key !== 'string' || 1 < entriesAt(holder, record)) return path
  const above = nodeAt(holder.slice(0, -1))
  return above === undefined || requiredIn(above).includes(key) ? path : emptied(holder, record)
}

function entriesAt(path: Path, record: Plain | undefined): number {
  const value = valueAt(path, record)
  return typeof value === 'object' && value !== null ? Object.keys(value).length : 0
}

function valueAt(path: Path, record: Plain | undefined): Plain | undefined {
  return path.reduce<Plain | undefined>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null
        ? (inner as Record<string | number, Plain>)[key]
        : undefined,
    record,
  )
}

/** One more of a list; what the one before it names (laboratory, condition, control) is likely to be the same. */
export function addedItem(list: Path, record: Plain | undefined): readonly Edit[] {
  const item = itemOf(nodeAt(list) as FormNode)
  if (item === undefined) return []
  const before = valueAt(list, record)
  const last = Array.isArray(before) ? before.at(-1) : undefined
  return [{ append: list, item: blank(item, [...list, 0], last) }]
}

/** A key of a mapping, to be filled in. */
export function addedKey(path: Path): readonly Edit[] {
  const node = nodeAt(path)
  if (node === undefined) return []
  return itemOf(node) === undefined
    ? [{ set: path, to: blank(node, path) }]
    : [{ append: path, item: blank(itemOf(node) as FormNode, [...path, 0]) }]
}

/** A value written as one text, written out so that details can stand beside it. */
export function detailedEdits({ path, text, detailed }: FormField): readonly Edit[] {
  return detailed === undefined ? [] : [{ set: path, to: { [keyFor(path, text, detailed)]: text } }]
}

/** A specimen's text is a load, or a strength where the laboratory reports no load; a resistance or a resistivity. */
function keyFor(path: Path, text: string, usual: string): string {
  if (path.includes('strength'))
    return /(?:N|lbf|kips?|klbf)$/.test(text) || text === '' ? 'load' : 'strength'
  if (path.includes('resistivity')) return /\bm$/.test(text) ? 'resistivity' : 'resistance'
  return usual
}

/** Keys that are carried over from the item before. */
const CARRIED = ['sample', 'condition', 'control', 'laboratory']

/** What must be written, empty; a text that may be anything is left empty for its writer. */
function blank(node: FormNode, path: Path, before?: Plain): Plain {
  if (!isMapping(node) || isShort(node)) return ''
  const sheet = SHEETS[placeOf(path)]
  const required = requiredIn(node)
  const entries = membersOf(node)
    .map(([key, member]) => ({ key, member, carried: CARRIED.includes(key) && valueAt([key], before) }))
    .filter(({ key, carried }) => required.includes(key) || typeof carried === 'string')
    .map(({ key, member, carried }): [string, Plain] => {
      if (itemOf(member) !== undefined) return [key, []]
      return [key, typeof carried === 'string' ? carried : blank(member, [...path, key])]
    })
  // Where nothing must be written, what is usual begins it, since an empty mapping cannot be seen in a text.
  const [usual] = sheet?.ready ?? membersOf(node).map(([key]) => key)
  return entries.length === 0 && usual !== undefined ? { [usual]: '' } : Object.fromEntries(entries)
}

/** The order in which the keys of a mapping are written: that of the schema. */
export function keyOrder(path: Path): readonly string[] | undefined {
  const node = nodeAt(path)
  const keys = node === undefined ? [] : membersOf(node).map(([key]) => key)
  return keys.length === 0 ? undefined : keys
}
