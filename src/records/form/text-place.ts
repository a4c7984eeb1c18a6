/** Where in a record a place of its text lies, also while the text is not whole yet. */
import { kept } from '../../core/measure/kept.ts'
import type { Path } from '../edit/edit-yaml.ts'

export interface TextPlace {
  /** Of the mapping whose key is awaited, or of the value that is. */
  readonly path: Path
  readonly awaits: 'key' | 'value'
  /** What of it is written before the place. */
  readonly typed: string
  /** Keys that the mapping has already, above the place. */
  readonly taken: readonly string[]
}

interface Level {
  readonly indent: number
  readonly path: Path
  readonly keys: string[]
  /** Lists that its keys hold. */
  readonly lists: Map<string, Level>
  items: number
}

function levelOf(indent: number, path: Path): Level {
  return { indent, path, keys: [], lists: new Map(), items: 0 }
}

const LINE = /^(?<indent> *)(?<dashes>(?:- +)*)(?<rest>.*)$/
const ENTRY = /^(?<key>[^\s:#'"{}[\],-][^:#'"{}[\],]*):(?=\s|$)(?<value>.*)$/

/**
 * The place of an offset, read from the indentation of the lines above it; null within a remark or text in quotes.
 * Note: a text under a writer's hands is mostly not YAML, so that no parser tells this.
 */
export function textPlace(text: string, offset: number): TextPlace | null {
  const lines = text.slice(0, offset).split('\n')
  const last = lines.pop() ?? ''
  if (/(^|\s)#/.test(last) || (last.split('"').length - 1) % 2 === 1) return null
  const levels: Level[] = [levelOf(0, [])]
  for (const line of lines) if (line.trim() !== '' && !line.trimStart().startsWith('#')) take(line, levels)
  const flow = /^([^{[]*(?:: +|- +))([{[].*)$/.exec(last)
  if (flow !== null && isOpen(flow[2] ?? '')) return within(flow[1] ?? '', flow[2] ?? '', levels)
  const { indent, rest } = opened(last, levels)
  const level = levelAt(levels, indent)
  const entry = ENTRY.exec(rest)?.groups
  if (entry === undefined)
    return { path: level.path, awaits: 'key', typed: rest.trimStart(), taken: level.keys }
  const value = (entry['value'] ?? '').trimStart()
  return { path: [...level.path, entry['key'] ?? ''], awaits: 'value', typed: value, taken: [] }
}

/** Goes into the items that a line's dashes begin, and says where its text stands. */
function opened(line: string, levels: Level[]): { indent: number; rest: string } {
  const { indent = '', dashes = '', rest = '' } = LINE.exec(line)?.groups ?? {}
  let column = indent.length
  for (const dash of dashes.match(/- +/g) ?? []) {
    const holder = listAt(levels, column)
    column += dash.length
    levels.push(levelOf(column, [...holder.path, holder.items]))
    holder.items += 1
  }
  return { indent: column, rest }
}

/** The list whose items stand at a column: the value of the key before it, at the same column or further out. */
function listAt(levels: Level[], column: number): Level {
  while (1 < levels.length && column < (levels.at(-1)?.indent ?? 0)) levels.pop()
  const level = levels.at(-1) as Level
  const key = level.keys.at(-1)
  if (key === undefined || level.indent > column) return level
  return kept(level.lists, key, () => levelOf(column, [...level.path, key]))
}

function levelAt(levels: Level[], indent: number): Level {
  while (1 < levels.length && indent < (levels.at(-1)?.indent ?? 0)) levels.pop()
  const level = levels.at(-1) as Level
  const key = level.keys.at(-1)
  // Further in than the mapping above: what its last key holds.
  if (level.indent < indent && key !== undefined) {
    const inner = levelOf(indent, [...level.path, key])
    levels.push(inner)
    return inner
  }
  return level
}

function take(line: string, levels: Level[]): void {
  const { indent, rest } = opened(line, levels)
  const key = ENTRY.exec(rest)?.groups?.['key']
  if (key !== undefined) levelAt(levels, indent).keys.push(key)
}

function isOpen(flow: string): boolean {
  return (flow.match(/[{[]/g) ?? []).length > (flow.match(/[}\]]/g) ?? []).length
}

/** A place within braces or brackets that are still open. */
function within(before: string, flow: string, levels: Level[]): TextPlace {
  const { indent, rest } = opened(before, levels)
  const level = levelAt(levels, indent)
  const key = ENTRY.exec(rest)?.groups?.['key']
  const open: { path: Path; list: boolean; items: number; keys: string[] }[] = []
  let path: Path = key === undefined ? level.path : [...level.path, key]
  let word = ''
  for (const sign of flow) {
    const top = open.at(-1)
    if (sign === '{' || sign === '[') {
      open.push({ path, list: sign === '[', items: 0, keys: [] })
      path = sign === '[' ? [...path, 0] : path
      word = ''
    } else if (sign === '}' || sign === ']') {
      open.pop()
      word = ''
    } else if (sign === ',' && top !== undefined) {
      top.items += 1
      path = top.list ? [...top.path, top.items] : top.path
      word = ''
    } else if (sign === ':' && top !== undefined && !top.list && path === top.path) {
      top.keys.push(word.trim())
      path = [...top.path, word.trim()]
      word = ''
    } else word += sign
  }
  const top = open.at(-1)
  const awaits = top !== undefined && !top.list && path === top.path ? 'key' : 'value'
  return { path, awaits, typed: word.trimStart(), taken: awaits === 'key' ? (top?.keys ?? []) : [] }
}
