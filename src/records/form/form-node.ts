/** A place of a schema with its references followed: what stands beside a reference goes before what it leads to. */
import { resolveReference, type SchemaNode, schemaNamed } from '../schema/schemas.ts'

export interface FormNode {
  readonly node: SchemaNode
  /** File that its further references start from. */
  readonly file: string
}

const LOT = 'lot.json'

/** The whole of a lot. */
export function lotNode(): FormNode {
  return { node: schemaNamed(LOT), file: LOT }
}

function followed({ node, file }: FormNode): FormNode {
  const reference = node['$ref']
  if (typeof reference !== 'string') return { node, file }
  const target = followed(resolveReference(reference, file))
  const { $ref: _reference, ...own } = node
  return { node: { ...target.node, ...own }, file: target.file }
}

/** Schemas of a mapping's known keys, in their order. */
export function membersOf({ node, file }: FormNode): [string, FormNode][] {
  const properties = (node['properties'] ?? {}) as Record<string, SchemaNode>
  return Object.entries(properties).map(([key, child]) => [key, followed({ node: child, file })])
}

/** The schema of a mapping's key; of a key of one's own choice that of them all; undefined where there is none. */
export function memberOf({ node, file }: FormNode, key: string): FormNode | undefined {
  const properties = (node['properties'] ?? {}) as Record<string, SchemaNode>
  const own = Object.hasOwn(properties, key) ? properties[key] : ownKeys(node)
  return own === undefined ? undefined : followed({ node: own, file })
}

function ownKeys(node: SchemaNode): SchemaNode | undefined {
  const additional = node['additionalProperties']
  return typeof additional === 'object' && additional !== null ? (additional as SchemaNode) : undefined
}

/** Whether a mapping's keys are of one's own choice: specimens by mark, facts by name. */
export function hasOwnKeys({ node }: FormNode): boolean {
  return ownKeys(node) !== undefined
}

/** The schema of a list's items; undefined where the place is no list. */
export function itemOf({ node, file }: FormNode): FormNode | undefined {
  const items = node['items'] as SchemaNode | undefined
  return items === undefined ? undefined : followed({ node: items, file })
}

/** The schema at a path; undefined where the schema has no such place. */
export function nodeAt(path: readonly (string | number)[]): FormNode | undefined {
  let node: FormNode | undefined = lotNode()
  for (const part of path) {
    if (node === undefined) return undefined
    node = typeof part === 'number' ? itemOf(node) : memberOf(node, part)
  }
  return node
}

export function requiredIn({ node }: FormNode): readonly string[] {
  return (node['required'] ?? []) as readonly string[]
}

export function isMapping({ node }: FormNode): boolean {
  return [node['type']].flat().includes('object')
}

/** A mapping that may also be written as one text: a specimen, a result. */
export function isShort({ node }: FormNode): boolean {
  return [node['type']].flat().includes('string') && [node['type']].flat().includes('object')
}

/** What the schema calls it, else its key in words. */
export function labelOf(key: string, { node }: FormNode): string {
  const title = node['title']
  const words = key.replaceAll('-', ' ')
  return typeof title === 'string' ? title : `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

export function helpOf({ node }: FormNode): string {
  return typeof node['description'] === 'string' ? node['description'] : ''
}

/** How the schema shows a value; empty where it shows none. */
export function exampleOf({ node }: FormNode): string {
  const [example = ''] = (node['examples'] ?? []) as readonly unknown[]
  return typeof example === 'string' ? example : ''
}

export function choicesOf({ node }: FormNode): readonly string[] | undefined {
  return node['enum'] as readonly string[] | undefined
}
