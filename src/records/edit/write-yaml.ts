/** Plain values to YAML text, laid out as a person writes a record: short mappings on one line, the rest in block style. */
import { COLLECTION_STYLE, dump, JSON_SCHEMA, type Node, SCALAR_STYLE } from 'js-yaml'

/** What a record is made of before its quantities are read. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain }

/** The longest item of a list that stands on one line, in columns. */
const WIDEST_ITEM = 140
/** The longest mapping or list after its key on one line, in columns. */
const WIDEST_VALUE = 72

/** Text that holds no line end of its own needs none: without a limit nothing is folded. */
const UNFOLDED = -1

/** A whole record in block style, with a line end after its last line. */
export function writeYaml(value: Plain): string {
  return dumped(value, layOut)
}

/** One entry of a block mapping, its further lines indented under it; no line end after the last. */
export function blockEntry(key: string, value: Plain): string {
  return dumped({ [key]: value }, layOut).trimEnd()
}

/** One item of a block list, from its dash on; no line end after the last. */
export function blockItem(value: Plain): string {
  return dumped([value], layOut).trimEnd()
}

/** A value as it stands within brackets or braces, on one line. */
export function flowValue(value: Plain): string {
  return dumped([value], allFlow).trimEnd().slice(2, -2)
}

/** An entry as it stands within braces, on one line. */
export function flowEntry(key: string, value: Plain): string {
  return dumped({ [key]: value }, allFlow)
    .trimEnd()
    .slice(2, -2)
}

function dumped(value: Plain, arrange: (root: Node) => void): string {
  return dump(value, {
    schema: JSON_SCHEMA,
    lineWidth: UNFOLDED,
    noRefs: true,
    flowBracketPadding: true,
    quoteStyle: 'double',
    transform: (documents) => {
      for (const { contents } of documents)
        if (contents !== null) {
          arrange(contents)
          quoteNothing(contents)
        }
    },
  })
}

/** An empty text is written as one: a key without anything looks forgotten, and within braces it would get a tag. */
function quoteNothing(node: Node): void {
  if (node.kind === 'scalar' && node.value === '') node.style = SCALAR_STYLE.DOUBLE_QUOTED
  else for (const child of childrenOf(node)) quoteNothing(child)
}

function allFlow(root: Node): void {
  if (root.kind === 'mapping' || root.kind === 'sequence') root.style = COLLECTION_STYLE.FLOW
}

/** Puts on one line what is short and holds no list of mappings. */
function layOut(node: Node): void {
  if (node.kind === 'sequence')
    for (const item of node.items)
      if (item.kind === 'mapping' && isFlat(item) && widthOf(item) <= WIDEST_ITEM)
        item.style = COLLECTION_STYLE.FLOW
      else layOut(item)
  if (node.kind === 'mapping')
    for (const { value } of node.items)
      if (value.kind !== 'scalar' && value.kind !== 'alias' && isOneLine(value))
        value.style = COLLECTION_STYLE.FLOW
      else layOut(value)
}

/** A mapping of scalars, or a list of them, that is short. */
function isOneLine(node: Node): boolean {
  return childrenOf(node).every((child) => child.kind === 'scalar') && widthOf(node) <= WIDEST_VALUE
}

/** Without a list of mappings at any depth. */
function isFlat(node: Node): boolean {
  return childrenOf(node).every(
    (child) =>
      (child.kind !== 'sequence' || child.items.every((item) => item.kind === 'scalar')) && isFlat(child),
  )
}

function childrenOf(node: Node): readonly Node[] {
  if (node.kind === 'sequence') return node.items
  return node.kind === 'mapping' ? node.items.map(({ value }) => value) : []
}

/** Columns that a node takes on one line, quotes left out; what has several lines fits on none. */
function widthOf(node: Node): number {
  if (node.kind === 'scalar') return node.value.includes('\n') ? Number.POSITIVE_INFINITY : node.value.length
  if (node.kind === 'alias') return node.anchor.length + 1
  const keys = node.kind === 'mapping' ? node.items.reduce((sum, { key }) => sum + widthOf(key) + 2, 0) : 0
  return childrenOf(node).reduce((sum, child) => sum + widthOf(child) + 2, keys + 2)
}
