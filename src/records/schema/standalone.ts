/**
 * The schemas as a module for a browser, whose policy lets no code be made of a text: it has the exports of
 * schemas.ts that reading a record needs, with validators that are code already.
 */
import { forValidation, recordValidators, SHARED } from './make-validators.ts'
import { type RecordKind, schemaNamed } from './schemas.ts'

/** Kinds whose records a page reads: of the others it only converts what the site itself published. */
const READ: readonly RecordKind[] = ['lot', 'control']
const CONVERTED: readonly RecordKind[] = ['site', 'laboratory', 'source', 'condition']

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
  const code = recordValidators(READ, (name) => schemaNamed(`${name}.json`), 'module')
  return code.replace(REQUIRED, (_whole, name: string, from: string) => {
    const whole = `${name}Module`
    return `import ${whole} from ${JSON.stringify(`${from}.js`)};\nconst ${name} = ${whole}.default ?? ${whole};`
  })
}

/** A name, and the module that it comes from. */
const REQUIRED = /const (\w+) = require\("([^"]+)"\)\.default;/g
