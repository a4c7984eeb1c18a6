/** One edit as an exchange of a piece of the text, which leaves every other sign where it was. */
import { EditFault, type Path, type Step } from './record-edits.ts'
import { blockEntry, blockItem, flowEntry, flowValue, type Plain, writeYaml } from './write-yaml.ts'
import { type YamlCollection, type YamlMember, type YamlNode, yamlTree } from './yaml-tree.ts'

export interface EditOptions {
  /** The order in which the keys of a mapping are written; a new key goes where it belongs among those that stand. */
  readonly order?: (path: Path) => readonly string[] | undefined
}

interface Splice {
  readonly from: number
  readonly to: number
  readonly by: string
}

/** The text after one step. */
export function spliced(text: string, step: Step, options: EditOptions): string {
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
