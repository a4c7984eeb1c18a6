/**
 * Makes code of schemas that checks a value by itself: for a browser, whose policy lets no code be made of a text, and
 * for commands, which start sooner where it is made already.
 */
import { createRequire } from 'node:module'
import type { SchemaNode } from './schema-set.ts'

/** What the schemas of records refer to. */
export const SHARED = ['common', 'quantities', 'properties'] as const

const require = createRequire(import.meta.url)

/** Read where something is made, and no sooner: ajv is some eighty modules. */
function ajvModules() {
  const { Ajv2020 } = require('ajv/dist/2020.js') as typeof import('ajv/dist/2020.js')
  const { default: standalone } =
    require('ajv/dist/standalone') as typeof import('ajv/dist/standalone/index.js')
  return { Ajv2020, standalone }
}

/**
 * Validators of records, each exported by its schema's name.
 * @param read the schema of a name
 */
export function recordValidators(
  names: readonly string[],
  read: (name: string) => SchemaNode,
  form: 'module' | 'script',
): string {
  const { Ajv2020, standalone } = ajvModules()
  const ajv = new Ajv2020({
    allErrors: true,
    verbose: true,
    allowUnionTypes: true,
    strictRequired: false,
    // What two results share is told of objects only, and so states no type of its own.
    strictTypes: false,
    code: { source: true, esm: form === 'module' },
    schemas: [...SHARED, ...names].map((name) => withShared(forValidation(read(name)))),
    keywords: ['quantity', 'moment', 'above'],
  })
  return standalone(ajv, Object.fromEntries(names.map((name) => [name, `${name}.json`])))
}

/**
 * Validators of what the program wrote: strict about other things, and they stop at the first fault.
 * @param references to schemas and their definitions, by the validator's name
 */
export function writtenValidators(
  schemas: readonly SchemaNode[],
  references: Readonly<Record<string, string>>,
): string {
  const { Ajv2020, standalone } = ajvModules()
  const ajv = new Ajv2020({ allowUnionTypes: true, code: { source: true }, schemas: [...schemas] })
  return standalone(ajv, references)
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

type Members = { readonly properties: Record<string, unknown>; readonly [key: string]: unknown }

/**
 * What the results of many properties have in common stands once, so that its code is made once: a third of the
 * weight. What is said of a result itself, its title and description, stays with it.
 */
function withShared(schema: SchemaNode): SchemaNode {
  const definitions = schema['$defs'] as Record<string, Members> | undefined
  const results = definitions?.['results']
  if (definitions === undefined || results === undefined) return schema
  const shared = new Map<string, readonly [string, unknown]>()
  const sharedAs = (node: unknown) => {
    const text = JSON.stringify(node)
    const known = shared.get(text) ?? ([`shared${shared.size}`, node] as const)
    shared.set(text, known)
    return { $ref: `#/$defs/${known[0]}` }
  }
  const properties = Object.fromEntries(
    Object.entries(results.properties as Record<string, Members>).map(([key, node]) => {
      const { properties: members, required, additionalProperties, ...own } = node
      const each = Object.fromEntries(
        // What refers already is short, and its messages follow that one reference.
        Object.entries(members).map(([name, member]) => [
          name,
          '$ref' in (member as object) ? member : sharedAs(member),
        ]),
      )
      return [key, { ...own, ...sharedAs({ additionalProperties, required, properties: each }) }]
    }),
  )
  return {
    ...schema,
    $defs: {
      ...definitions,
      results: { ...results, properties },
      ...Object.fromEntries(shared.values()),
    },
  }
}
