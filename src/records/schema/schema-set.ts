/** A set of schemas that refer to each other, wherever their texts come from. */

/** Kinds of record that have a schema of their own. */
export const RECORD_KINDS = [
  'site',
  'producer',
  'laboratory',
  'source',
  'condition',
  'control',
  'criterion',
  'lot',
  'study',
  'method',
] as const
export type RecordKind = (typeof RECORD_KINDS)[number]

export type SchemaNode = { readonly [key: string]: unknown }

export interface SchemaSet {
  /** A schema by its file name. */
  readonly schemaNamed: (file: string) => SchemaNode
  /** The node that a reference leads to, and the file it lies in. */
  readonly resolveReference: (reference: string, file: string) => { node: SchemaNode; file: string }
}

/** @param schemas by file name */
export function schemaSet(schemas: ReadonlyMap<string, SchemaNode>): SchemaSet {
  const schemaNamed = (file: string) => {
    const schema = schemas.get(file)
    if (schema === undefined) throw new RangeError(`schemaNamed needs a schema's file name, got ${file}`)
    return schema
  }
  const resolveReference = (reference: string, file: string) => {
    const [target = '', path = ''] = reference.split('#')
    const inFile = target === '' ? file : target
    let node: unknown = schemaNamed(inFile)
    for (const part of path.split('/').filter(Boolean)) node = (node as SchemaNode)[part]
    return { node: node as SchemaNode, file: inFile }
  }
  return { schemaNamed, resolveReference }
}
