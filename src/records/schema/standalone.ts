/**
 * The schemas as a module for a browser, whose policy lets no code be made of a text: it has the exports of
 * schemas.ts that reading a record needs, with validators that are code already.
 */
import { Ajv2020 } from 'ajv/dist/2020.js'
import standalone from 'ajv/dist/standalone/index.js'
import { forValidation, type RecordKind, type SchemaNode, schemaNamed } from './schemas.ts'

/** Kinds whose records a page reads: of the others it only converts what the site itself published. */
const READ: readonly RecordKind[] = ['lot', 'control']
const CONVERTED: readonly RecordKind[] = ['site', 'laboratory', 'source', 'condition']
const SHARED = ['common', 'quantities', 'properties'] as const

/** The code of the module. @param ending of the modules beside it, with its point: that of source or of built files */
export function standaloneModule(ending: string): string {
  const names = [...SHARED, ...READ, ...CONVERTED].map((name) => `${name}.json`)
  const texts = Object.fromEntries(names.map((name) => [name, forValidation(schemaNamed(name))]))
  return [
    `import { RECORD_KINDS, schemaSet } from './schema-set${ending}'`,
    'export { RECORD_KINDS }',
    validators(),
    `const texts = ${JSON.stringify(texts)}`,
    'export const { schemaNamed, resolveReference } = schemaSet(new Map(Object.entries(texts)))',
    `const validators = { ${READ.join(', ')} }`,
    'export function validatorOf(kind) {',
    '  const validate = validators[kind]',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the text of a module.
    '  if (validate === undefined) throw new RangeError(`validatorOf needs a kind that pages read, got ${kind}`)',
    '  return validate',
    '}',
  ].join('\n')
}

/** The validators' code. Note: it asks for one function by `require`, which a module does not know. */
function validators(): string {
  const ajv = new Ajv2020({
    allErrors: true,
    verbose: true,
    allowUnionTypes: true,
    strictRequired: false,
    // What two results share is told of objects only, and so states no type of its own.
    strictTypes: false,
    code: { source: true, esm: true },
    schemas: [...SHARED, ...READ].map((name) => withShared(forValidation(schemaNamed(`${name}.json`)))),
    keywords: ['quantity', 'moment', 'above'],
  })
  const code = standalone(ajv, Object.fromEntries(READ.map((kind) => [kind, `${kind}.json`])))
  return code.replace(REQUIRED, (_whole, name: string, from: string) => {
    const whole = `${name}Module`
    return `import ${whole} from ${JSON.stringify(`${from}.js`)};\nconst ${name} = ${whole}.default ?? ${whole};`
  })
}

/** A name, and the module that it comes from. */
const REQUIRED = /const (\w+) = require\("([^"]+)"\)\.default;/g

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
