/** Faults of the keys of a mapping: one misspelt, one that YAML made of half a number. */
import { commaReadings } from '../../core/measure/comma-numbers.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { FORBIDDEN_KEYS } from '../yaml/forbidden-keys.ts'
import { below } from '../yaml/pointer.ts'
import { strangeBlankFault } from '../yaml/strange-blanks.ts'
import { type ErrorObject, resolveReference, type SchemaNode } from './schemas.ts'
import { commaMend } from './quantity-faults.ts'
import { fieldMend } from './field-names.ts'
import { tradeMend } from './trade-names.ts'
import { description, inWords, shortened } from './schema-words.ts'

/** Reports a key that the schema does not know. */
export function unknownKey(error: ErrorObject, key: string, report: FileReport): void {
  const pointer = below(error.instancePath, key)
  const allowed = Object.keys(
    ((error.parentSchema as { properties?: object } | undefined)?.properties ?? {}) as object,
  )
  const blank = strangeBlankFault(key)
  if (isCommaSplit(error)) reportCommaSplit(error, key, report)
  else if (blank !== undefined) report.atKey(pointer, ...blank)
  else if (isEmpty((error.data as Record<string, unknown>)[key]))
    report.atKey(
      pointer,
      'key-unknown',
      `"${shortened(key)}" became an entry of its own${inWords(error.instancePath)}: inside { } a comma begins the next entry`,
      'put the whole text in quotes',
    )
  else
    report.atKey(
      pointer,
      'key-unknown',
      `"${shortened(key)}" is not a known key${inWords(error.instancePath)}`,
      tradeMend(key, allowed) ||
        fieldMend(key, allowed) ||
        nearNames(key, allowed) ||
        'remove it, or move it to where it belongs',
    )
}

/**
 * A key that the keys of its mapping have no room for: a property misspelt, a name with a blank, or half of a
 * number.
 */
export function wrongName(error: ErrorObject, key: string, report: FileReport): void {
  const blank = strangeBlankFault(key)
  if (isCommaSplit(error)) reportCommaSplit(error, key, report)
  else if (blank !== undefined) report.atKey(below(error.instancePath, key), ...blank)
  else
    report.atKey(
      below(error.instancePath, key),
      'key-unknown',
      `"${shortened(key)}" is not a name that is allowed here`,
      tradeMend(key, namesAllowed(error)) ||
        nearNames(key, namesAllowed(error)) ||
        description({ ...error, parentSchema: nameSchema(error) }) ||
        'see the schema of this kind of record',
    )
}

function reportCommaSplit(error: ErrorObject, key: string, report: FileReport): void {
  const before = Object.entries(error.data as object).findLast(([, value]) => typeof value === 'number')
  const [, digits = '', rest = ''] = /^(\d+)(.*)$/.exec(key) ?? []
  const readings = commaReadings(`${before?.[1] ?? ''},${digits}`)
  report.atKey(
    below(error.instancePath, key),
    'yaml-comma-split',
    `"${shortened(key)}" became an entry of its own: inside { } a comma begins the next entry`,
    commaMend(readings.map((reading) => `${before?.[0] ?? 'value'}: ${reading}${rest}`)),
  )
}

/** In a flow mapping "mass: 24,8 t" is read as mass: 24 and an entry "8 t" without a value. */
export function isCommaSplit(error: ErrorObject): boolean {
  const { additionalProperty, propertyName } = error.params as {
    additionalProperty?: string
    propertyName?: string
  }
  const key = additionalProperty ?? propertyName
  if (key === undefined || !/^\d+(\s*\D.*)?$/.test(key)) return false
  const data = error.data as Record<string, unknown>
  return isEmpty(data[key]) && Object.values(data).some((value) => typeof value === 'number')
}

/** An entry without a value, which YAML gives as empty text. */
function isEmpty(value: unknown): boolean {
  return value === '' || value === null || value === undefined
}

/** A forbidden key has its own report. */
export function isForbidden(error: ErrorObject): boolean {
  const { additionalProperty, propertyName } = error.params as {
    additionalProperty?: string
    propertyName?: string
  }
  return FORBIDDEN_KEYS.has(additionalProperty ?? propertyName ?? '')
}

/**
 * What a mapping's keys must be: the schema of propertyNames, or the part that it refers to. An error does not say which file a
 * reference within one file is of, so that schemas name the file where keys are meant.
 */
function nameSchema(error: ErrorObject): SchemaNode {
  const schema = error.schema as SchemaNode
  const reference = schema['$ref']
  return typeof reference === 'string' && !reference.startsWith('#')
    ? resolveReference(reference, '').node
    : schema
}

function namesAllowed(error: ErrorObject): string[] {
  return (nameSchema(error)['enum'] as string[] | undefined) ?? []
}
