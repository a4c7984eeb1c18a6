/**
 * Edits of a record's YAML text: what an edit does not touch stays byte for byte, comments, order and written digits
 * included.
 */
import { parseYaml } from '../yaml/parse-yaml.ts'
import { blockEntry, blockItem, flowEntry, flowValue, type Plain, writeYaml } from './write-yaml.ts'
import { type YamlCollection, type YamlMember, type YamlNode, yamlTree } from './yaml-tree.ts'

/** Keys and indices from the record down to a value. */
export type Path = readonly (string | number)[]

export type Edit =
  | { readonly set: Path; readonly to: Plain }
  | { readonly remove: Path }
  | { readonly append: Path; readonly item: Plain }

export interface EditOptions {
  /** The order in which the keys of a mapping are written; a new key goes where it belongs among those that stand. */
  readonly order?: (path: Path) => readonly string[] | undefined
}

/** The text is no YAML, or is written in a way in which the edit would not read back. */
export class EditFault extends Error {}

/**
 * The text after all edits, one after the other. `set` makes the mappings that its path lacks; of a mapping or list
 * that stands it changes only what differs. `append` makes the list where there is none.
 * @throws EditFault for a text that cannot be read, and where the result would not read back as the edited value
 */
export function editYaml(text: string, edits: readonly Edit[], options: EditOptions = {}): string {
  let value = plainOf(text)
  let edited = text
  for (const batch of batches(edits)) {
    const next = applied(value, batch)
    const steps = 'append' in batch ? [batch] : finer(value, batch)
    for (const step of steps) edited = spliced(edited, step, options)
    value = next
  }
  if (!same(plainOf(edited), value))
    throw new EditFault('The record is written in a form that cannot be edited in place.')
  return edited
}

/** Items that go onto the same list, one after the other, are put there at once. */
type Step = Exclude<Edit, { append: Path }> | { readonly append: Path; readonly items: readonly Plain[] }

function batches(edits: readonly Edit[]): Step[] {
  const steps: Step[] = []
  for (const edit of edits) {
    const last = steps.at(-1)
    if (!('append' in edit)) steps.push(edit)
    else if (last !== undefined && 'append' in last && same(last.append, edit.append))
      steps[steps.length - 1] = { append: last.append, items: [...last.items, edit.item] }
    else steps.push({ append: edit.append, items: [edit.item] })
  }
  return steps
}

/** The value of a text; undefined for a text without one. */
function plainOf(text: string): Plain | undefined {
  const parsed = parseYaml(text)
  if ('value' in parsed) return parsed.value as Plain
  if (parsed.fault.code === 'yaml-empty') return undefined
  throw new EditFault(`The text cannot be edited while it cannot be read: ${parsed.fault.message}.`)
}

function same(a: Plain | undefined, b: Plain | undefined): boolean {
  if (a === b) return true
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((item, index) => same(item, b[index]))
  if (!isMapping(a) || !isMapping(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
  )
}

function isMapping(value: Plain | undefined): value is { readonly [key: string]: Plain } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** What the text says of nothing: an empty value reads as an empty text. */
function isNothing(value: Plain | undefined): boolean {
  return value === undefined || value === null || value === ''
}

/** The value after a step. @throws EditFault where a path leads through a value that holds nothing */
function applied(value: Plain | undefined, step: Step): Plain | undefined {
  if ('append' in step)
    return changedAt(value, step.append, (list) => {
      if (Array.isArray(list)) return [...list, ...step.items]
      if (isNothing(list)) return step.items
      throw new EditFault('An item can only be added to a list.')
    })
  return 'set' in step
    ? changedAt(value, step.set, () => step.to)
    : changedAt(value, step.remove, () => undefined)
}

function changedAt(
  value: Plain | undefined,
  path: Path,
  change: (old: Plain | undefined) => Plain | undefined,
): Plain | undefined {
  const [key, ...rest] = path
  if (key === undefined) return change(value)
  if (typeof key === 'number') {
    if (!Array.isArray(value) || value.length <= key) throw new EditFault(`There is no item ${key + 1}.`)
    const item = changedAt(value[key], rest, change)
    return item === undefined ? value.toSpliced(key, 1) : value.with(key, item)
  }
  if (!isMapping(value) && !isNothing(value))
    throw new EditFault(`"${key}" cannot be put into a plain value.`)
  const old = isMapping(value) ? value : {}
  const entry = changedAt(Object.hasOwn(old, key) ? old[key] : undefined, rest, change)
  if (entry === undefined) return Object.fromEntries(Object.entries(old).filter(([name]) => name !== key))
  return Object.hasOwn(old, key) || key !== '__proto__'
    ? { ...old, [key]: entry }
    : Object.fromEntries([...Object.entries(old), [key, entry]])
}

/** A step as the smallest ones that come to the same: members that stay as they are keep how they are written. */
function finer(value: Plain | undefined, step: Exclude<Step, { append: Path }>): Step[] {
  const path = 'set' in step ? step.set : step.remove
  const old = valueAt(value, path)
  if ('remove' in step) return old === undefined ? [] : [step]
  return differences(old, step.to, path)
}

function valueAt(value: Plain | undefined, path: Path): Plain | undefined {
  return path.reduce<Plain | undefined>((inner, key) => {
    if (Array.isArray(inner)) return typeof key === 'number' ? inner[key] : undefined
    return isMapping(inner) && Object.hasOwn(inner, key) ? inner[String(key)] : undefined
  }, value)
}

function differences(old: Plain | undefined, to: Plain, path: Path): Step[] {
  if (same(old, to)) return []
  if (isMapping(old) && isMapping(to) && shareKeys(old, to))
    return [
      ...Object.entries(to).flatMap(([key, value]) =>
        differences(Object.hasOwn(old, key) ? old[key] : undefined, value, [...path, key]),
      ),
      ...Object.keys(old)
        .filter((key) => !Object.hasOwn(to, key))
        .map((key) => ({ remove: [...path, key] })),
    ]
  if (Array.isArray(old) && Array.isArray(to) && 0 < old.length && 0 < to.length)
    return [
      ...to.slice(0, old.length).flatMap((item, index) => differences(old[index], item, [...path, index])),
      ...(old.length < to.length ? [{ append: path, items: to.slice(old.length) }] : []),
      ...old
        .slice(to.length)
        .map((_, index) => ({ remove: [...path, to.length + index] }))
        .toReversed(),
    ]
  return [{ set: path, to }]
}

function shareKeys(a: object, b: object): boolean {
  return Object.keys(a).some((key) => Object.hasOwn(b, key))
}

interface Splice {
  readonly from: number
  readonly to: number
  readonly by: string
}

/** The text after one step. */
function spliced(text: string, step: Step, options: EditOptions): string {
  const splice = spliceFor(text, step, options)
  const by = text.includes('\r\n') ? splice.by.replaceAll(/\r?\n/g, '\r\n') : splice.by
  return `${text.slice(0, splice.from)}${by}${text.slice(splice.to)}`
}

function spliceFor(text: string, step: Step, options: EditOptions): Splice {
  const root = yamlTree(text)
  if ('remove' in step) return removal(text, root, step.remove)
  if ('append' in step) return addition(text, root, step, options)
  return setting(text, root, step.set, step.to, options)
}

/** Where a path leads as far as it is written: the node, its member of the one that holds it, and what is left of the path. */
interface Reached {
  readonly node: YamlNode
  readonly member: YamlMember | null
  readonly parent: YamlCollection | null
  readonly rest: Path
}

function reach(root: YamlNode, path: Path): Reached {
  let reached: Reached = { node: root, member: null, parent: null, rest: path }
  for (const [depth, key] of path.entries()) {
    const { node } = reached
    if (node.kind === 'scalar') break
    const member = node.members.find((candidate) => candidate.key === String(key))
    if (member === undefined) break
    reached = { node: member.value, member, parent: node, rest: path.slice(depth + 1) }
  }
  return reached
}

function setting(text: string, root: YamlNode | null, path: Path, to: Plain, options: EditOptions): Splice {
  if (root === null) return wholeRecord(text, nested(path, to))
  const { node, member, parent, rest } = reach(root, path)
  const [key] = rest
  if (key === undefined || node.kind === 'scalar' || node.members.length === 0)
    return replacement(text, node, { member, parent, value: nested(rest, to) })
  return insertion(text, node, String(key), nested(rest.slice(1), to), {
    order: options.order?.(path.slice(0, path.length - rest.length)),
  })
}

/** The mappings that a path lacks, around its value. */
function nested(path: Path, value: Plain): Plain {
  return path.reduceRight<Plain>((inner, key) => ({ [String(key)]: inner }), value)
}

function wholeRecord(text: string, value: Plain): Splice {
  const gap = text === '' || text.endsWith('\n') ? '' : '\n'
  return { from: text.length, to: text.length, by: `${gap}${writeYaml(value)}` }
}

interface Place {
  readonly member: YamlMember | null
  readonly parent: YamlCollection | null
  readonly value: Plain
}

/** A node's text exchanged for a value's. */
function replacement(text: string, node: YamlNode, { member, parent, value }: Place): Splice {
  if (member === null || parent === null)
    return { from: node.start, to: node.end, by: writeYaml(value).trimEnd() }
  if (parent.flow) {
    const gap = node.start === node.end && !/\s$/.test(text.slice(0, node.start)) ? ' ' : ''
    return { from: node.start, to: node.end, by: `${gap}${flowValue(value)}` }
  }
  const written = behindMark(text, parent, member, value)
  const wasInline = node.kind === 'scalar' ? !node.block && !node.empty : node.flow
  return wasInline && !written.includes('\n')
    ? { from: node.start, to: node.end, by: written.trimStart() }
    : { from: member.valueFrom, to: node.end, by: written }
}

/** What stands behind a block member's colon or dash, its further lines indented as the member is. */
function behindMark(text: string, parent: YamlCollection, member: YamlMember, value: Plain): string {
  const whole =
    parent.kind === 'mapping' ? blockEntry('k', value).slice('k:'.length) : blockItem(value).slice(1)
  return indented(whole, columnOf(text, member.start))
}

function indented(block: string, columns: number): string {
  return block.replaceAll(/\n(?=[^\n])/g, `\n${' '.repeat(columns)}`)
}

/** Signs between the start of the line and an offset. */
function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1)
}

interface Insertion {
  readonly order: readonly string[] | undefined
}

/** A new entry of a mapping that has others. */
function insertion(
  text: string,
  node: YamlCollection,
  key: string,
  value: Plain,
  { order }: Insertion,
): Splice {
  if (node.kind === 'sequence') throw new EditFault(`"${key}" cannot be put into a list.`)
  const before = entryBefore(node.members, key, order)
  const [first] = node.members
  if (node.flow) {
    const entry = flowEntry(key, value)
    return before === undefined && first !== undefined
      ? { from: first.start, to: first.start, by: `${entry}, ` }
      : at(before?.value.end ?? node.start + 1, `, ${entry}`)
  }
  const column = columnOf(text, first?.start ?? node.start)
  const entry = indented(blockEntry(key, value), column)
  if (before === undefined) return at(first?.start ?? node.start, `${entry}\n${' '.repeat(column)}`)
  return at(lineEnd(text, before.value.end), `${blank(column, entry)}\n${' '.repeat(column)}${entry}`)
}

function at(offset: number, by: string): Splice {
  return { from: offset, to: offset, by }
}

/** A section of a record stands apart from the one before it. */
function blank(column: number, entry: string): string {
  return column === 0 && entry.includes('\n') ? '\n' : ''
}

/** The entry behind which a key belongs; undefined where it comes first. Without an order it comes last. */
function entryBefore(
  members: readonly YamlMember[],
  key: string,
  order: readonly string[] | undefined,
): YamlMember | undefined {
  const place = order?.indexOf(key) ?? -1
  if (order === undefined || place < 0) return members.at(-1)
  return members.findLast((member) => order.indexOf(member.key) < place)
}

/** The end of the line that an offset lies in, before its line end. */
function lineEnd(text: string, offset: number): number {
  const end = text.indexOf('\n', offset)
  if (end < 0) return text.length
  return text[end - 1] === '\r' ? end - 1 : end
}

function addition(
  text: string,
  root: YamlNode | null,
  { append, items }: Extract<Step, { append: Path }>,
  options: EditOptions,
): Splice {
  if (root === null) return wholeRecord(text, nested(append, items))
  const { node, rest } = reach(root, append)
  const last = node.kind === 'sequence' ? node.members.at(-1) : undefined
  if (0 < rest.length || node.kind !== 'sequence' || last === undefined)
    return setting(text, root, append, items, options)
  if (node.flow) return at(last.value.end, `, ${items.map(flowValue).join(', ')}`)
  const column = columnOf(text, last.start)
  const lines = items.map((item) => `\n${' '.repeat(column)}${indented(blockItem(item), column)}`)
  return at(lineEnd(text, last.value.end), lines.join(''))
}

function removal(text: string, root: YamlNode | null, path: Path): Splice {
  const reached = root === null ? null : reach(root, path)
  if (reached === null || reached.member === null || reached.parent === null)
    throw new EditFault('A whole record is not removed by an edit.')
  const { member, parent } = reached
  if (parent.members.length === 1) {
    const holder = reach(root as YamlNode, path.slice(0, -1))
    return replacement(text, parent, { ...holder, value: parent.kind === 'mapping' ? {} : [] })
  }
  return parent.flow ? withoutFlow(parent, member) : withoutBlock(text, parent, member)
}

function withoutFlow({ members }: YamlCollection, member: YamlMember): Splice {
  const index = members.indexOf(member)
  const next = members[index + 1]
  if (next !== undefined) return { from: member.start, to: next.start, by: '' }
  return { from: members[index - 1]?.value.end ?? member.start, to: member.value.end, by: '' }
}

/** A member with its lines and the remark behind it; of two blank lines that would meet, one goes too. */
function withoutBlock(text: string, parent: YamlCollection, member: YamlMember): Splice {
  const lineStart = text.lastIndexOf('\n', member.start - 1) + 1
  const end = lineEnd(text, member.value.end)
  const behind = /^(\r?\n)?/.exec(text.slice(end))?.[0].length ?? 0
  if (text.slice(lineStart, member.start).trim() !== '') {
    const following = /^\s*/.exec(text.slice(end))?.[0].length ?? 0
    return { from: member.start, to: end + following, by: '' }
  }
  const isLast = parent.members.at(-1) === member
  if (isLast && behind === 0) return { from: Math.max(0, lineStart - 1), to: end, by: '' }
  const doubled = /\n\r?\n$/.test(text.slice(0, lineStart))
    ? /^[ \t]*\r?\n/.exec(text.slice(end + behind))
    : null
  return { from: lineStart, to: end + behind + (doubled?.[0].length ?? 0), by: '' }
}
