/**
 * The schemas, compiled once. A browser gets a module of the same exports that holds them ready-made, for its policy
 * lets no code be made of a text (standalone.ts).
 */
import { readFileSync } from 'node:fs'
import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js'
import { RECORD_KINDS, type RecordKind, type SchemaNode, schemaSet } from './schema-set.ts'

export { RECORD_KINDS, type RecordKind, type SchemaNode }

const NAMES = ['common', 'quantities', 'properties', ...RECORD_KINDS, 'import-map'] as const

const schemas = new Map<string, SchemaNode>(NAMES.map((name) => [`${name}.json`, readSchema(name)]))

function readSchema(name: string): SchemaNode {
  const url = new URL(`../../../schemas/${name}.json`, import.meta.url)
  return JSON.parse(readFileSync(url, 'utf8')) as SchemaNode
}

/**
 * The patterns of quantities guide editors alone. Whether a text is a quantity is for the reader of
 * quantities to say, which also says why not: a second opinion could only differ from it, and a record
 * would be refused without a word.
 */
export function forValidation(schema: SchemaNode): SchemaNode {
  return JSON.parse(JSON.stringify(schema, (_key, node: unknown) => withoutPattern(node))) as SchemaNode
}

function withoutPattern(node: unknown): unknown {
  if (typeof node !== 'object' || node === null || !('quantity' in node) || !('pattern' in node)) return node
  const { pattern: _pattern, ...rest } = node
  return rest
}

const ajv = new Ajv2020({
  allErrors: true,
  verbose: true,
  allowUnionTypes: true,
  strictRequired: false,
  // A command mostly reads a few hundred records once: making long, quick code of the schemas took longer than
  // what it saved.
  code: { optimize: false },
  schemas: [...schemas.values()].map(forValidation),
  keywords: ['quantity', 'moment', 'above'],
})

export const { schemaNamed, resolveReference } = schemaSet(schemas)

/** The validator of a kind of record, or of the map of an import, which is no record. */
export function validatorOf(kind: RecordKind | 'import-map'): ValidateFunction {
  const validate = ajv.getSchema(`${kind}.json`)
  if (validate === undefined) throw new RangeError(`validatorOf needs a kind with a schema, got ${kind}`)
  return validate as ValidateFunction
}

let issuedAjv: Ajv2020 | undefined

/**
 * The validator of schemas/issued.json, or of one of its definitions; compiled apart, since it is strict about
 * other things, stops at the first fault, and is not needed where nothing was issued.
 */
export function issuedValidatorOf(definition?: string): ValidateFunction {
  issuedAjv ??= new Ajv2020({ allowUnionTypes: true, schemas: [readSchema('issued')] })
  const reference = definition === undefined ? 'issued.json' : `issued.json#/$defs/${definition}`
  const validate = issuedAjv.getSchema(reference)
  if (validate === undefined) throw new RangeError(`issuedValidatorOf needs a definition, got ${definition}`)
  return validate as ValidateFunction
}

let manifestAjv: ValidateFunction | undefined

/** Whether a value is of schemas/manifest.json, which is compiled only where a site is compared with another. */
export function isOfManifestSchema(value: unknown): boolean {
  manifestAjv ??= new Ajv2020().compile(readSchema('manifest'))
  return manifestAjv(value)
}

export type { ErrorObject }
