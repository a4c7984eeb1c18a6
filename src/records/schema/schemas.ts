/**
 * The schemas and their validators. A browser gets a module of the same exports that holds what its pages need
 * (standalone.ts).
 */
import type { ErrorObject } from 'ajv/dist/2020.js'
import { SHARED } from './make-validators.ts'
import { readyValidators, type Validator, type Validators } from './ready-validators.ts'
import { RECORD_KINDS, type RecordKind, type SchemaNode, schemaSet } from './schema-set.ts'
import { readSchema } from './schema-texts.ts'

export { RECORD_KINDS, type RecordKind, type SchemaNode }

const NAMES = [...SHARED, ...RECORD_KINDS, 'import-map'] as const

export const { schemaNamed, resolveReference } = schemaSet(
  new Map(NAMES.map((name) => [`${name}.json`, readSchema(name)])),
)

let validators: Validators | undefined

/** The validator of what a schema describes. */
export function validatorOf(name: keyof Validators): Validator {
  validators ??= readyValidators()
  return validators[name]
}

export type { ErrorObject }
