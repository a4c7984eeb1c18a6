/** What ajv and the quantity reader found, in words a bench understands. */
import { acceptedSpellings, KINDS, type QuantityFault, type QuantityKind } from '../../core/measure/units.ts'
import type { Code } from '../diagnostics/codes.ts'
import { FORBIDDEN_KEYS } from '../yaml/forbidden-keys.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { type ErrorObject, resolveReference, type SchemaNode } from './schemas.ts'
import { escapePointer } from '../yaml/yaml-source.ts'

/**
 * Reports the errors of one record. Whether a text is a quantity is no matter of the schema: the converter
 * reports that.
 */
export function reportSchemaErrors(errors: readonly ErrorObject[], report: FileReport): void {
  const seen = new Set<string>()
  const split = new Set(errors.filter(isCommaSplit).map((error) => error.instancePath))
  for (const error of errors) {
    // The number before the comma is told with the part after it, not once more by itself.
    if (
      error.keyword === 'type' &&
      typeof error.data === 'number' &&
      split.has(error.instancePath.slice(0, error.instancePath.lastIndexOf('/')))
    )
      continue
    const place = `${error.instancePath}|${error.keyword}|${JSON.stringify(error.params)}`
    // What is wrong about a key is told once, by the key; a forbidden key has its own report.
    if (seen.has(place) || error.propertyName !== undefined || isForbidden(error)) continue
    seen.add(place)
    reportError(error, report)
  }
}

/** Longer lists of allowed words are not printed in a mend. */
const LIST_LENGTH = 12

type Handler = (error: ErrorObject, report: FileReport) => void

function reportError(error: ErrorObject, report: FileReport): void {
  const handler = HANDLERS[error.keyword]
  if (handler !== undefined) handler(error, report)
  else
    report.at(
      error.instancePath,
      'schema',
      `${found(error.data)} ${error.message ?? 'is not what is expected here'}`,
      description(error) || 'see the schema of this kind of record',
    )
}

const HANDLERS: Readonly<Record<string, Handler>> = {
  additionalProperties: (error, report) =>
    unknownKey(error, (error.params as { additionalProperty: string }).additionalProperty, report),
  propertyNames: (error, report) =>
    wrongName(error, (error.params as { propertyName: string }).propertyName, report),
  required: (error, report) => {
    const key = (error.params as { missingProperty: string }).missingProperty
    report.atKey(
      error.instancePath,
      'key-missing',
      `"${key}" is missing${inWords(error.instancePath)}`,
      `add ${key}: ${propertyDescription(error, key)}`,
    )
  },
  type: wrongType,
  enum: (error, report) => {
    const allowed = (error.params as { allowedValues: string[] }).allowedValues
    report.at(
      error.instancePath,
      'schema',
      `${found(error.data)}; one of a fixed list was expected`,
      nearNames(String(error.data), allowed) ||
        (allowed.length <= LIST_LENGTH
          ? `write one of ${allowed.join(', ')}`
          : 'see the list in the schema of this kind of record'),
    )
  },
  pattern: (error, report) => {
    const moment = (error.parentSchema as { moment?: string } | undefined)?.moment
    if (moment === undefined)
      report.at(
        error.instancePath,
        'schema',
        `${found(error.data)} is not of the form expected`,
        description(error),
      )
    else
      report.at(
        error.instancePath,
        'date',
        `${found(error.data)} is not a ${moment === 'date' ? 'date' : 'date or a date and time'}`,
        moment === 'date'
          ? 'write year-month-day, for instance 2026-03-11'
          : 'write 2026-03-11 or 2026-03-11T09:20',
      )
  },
}

function wrongType(error: ErrorObject, report: FileReport): void {
  const kinds = quantityKinds(error)
  if (error.data === '' || error.data === null) {
    report.at(
      error.instancePath,
      'yaml-empty',
      'there is no value',
      kinds === undefined
        ? description(error) || 'write a value, or take the line out'
        : `write a quantity such as ${KINDS[kinds[0] ?? 'fraction'].example}, or take the line out`,
    )
  } else if (kinds !== undefined && typeof error.data === 'number') {
    report.at(
      error.instancePath,
      'quantity-unit',
      `found ${writtenAs(error, report)} without a unit; ${KINDS[kinds[0] ?? 'fraction'].title} with its unit was expected`,
      `write ${writtenAs(error, report)} ${unitsInWords(kinds)}`,
    )
  } else if (
    /string/.test(String((error.params as { type: unknown }).type)) &&
    typeof error.data !== 'object'
  ) {
    report.at(
      error.instancePath,
      'text-not-quoted',
      `found ${writtenAs(error, report)}, which YAML reads as ${typeof error.data === 'number' ? 'a number' : 'a truth value'}; text was expected`,
      `write it in quotes: "${writtenAs(error, report)}"`,
    )
  } else
    report.at(
      error.instancePath,
      'schema',
      `found ${found(error.data)}; ${expectedType(error)} was expected`,
      description(error),
    )
}

function writtenAs(error: ErrorObject, report: FileReport): string {
  return report.written(error.instancePath)?.written ?? String(error.data)
}

function expectedType(error: ErrorObject): string {
  const names: Readonly<Record<string, string>> = {
    object: 'a mapping (key: value)',
    array: 'a list',
    string: 'text',
    number: 'a number',
    integer: 'a whole number',
  }
  return [(error.params as { type: string | string[] }).type]
    .flat()
    .map((type) => names[type] ?? type)
    .join(' or ')
}

function unknownKey(error: ErrorObject, key: string, report: FileReport): void {
  const pointer = `${error.instancePath}/${escapePointer(key)}`
  const allowed = Object.keys(
    ((error.parentSchema as { properties?: object } | undefined)?.properties ?? {}) as object,
  )
  if (isCommaSplit(error)) reportCommaSplit(error, key, report)
  else if (isEmpty((error.data as Record<string, unknown>)[key]))
    report.atKey(
      pointer,
      'key-unknown',
      `"${key}" became an entry of its own${inWords(error.instancePath)}: inside { } a comma begins the next entry`,
      'put the whole text in quotes',
    )
  else
    report.atKey(
      pointer,
      'key-unknown',
      `"${key}" is not known${inWords(error.instancePath)}`,
      nearNames(key, allowed) || 'take it out, or put it where it belongs',
    )
}

/**
 * A key that the keys of its mapping have no room for: a property misspelt, a name with a blank, or half of a
 * number.
 */
function wrongName(error: ErrorObject, key: string, report: FileReport): void {
  if (isCommaSplit(error)) reportCommaSplit(error, key, report)
  else
    report.atKey(
      `${error.instancePath}/${escapePointer(key)}`,
      'key-unknown',
      `"${key}" is not a name that may stand here`,
      nearNames(key, namesAllowed(error)) ||
        description({ ...error, parentSchema: nameSchema(error) }) ||
        'see the schema of this kind of record',
    )
}

function reportCommaSplit(error: ErrorObject, key: string, report: FileReport): void {
  const before = Object.entries(error.data as object).findLast(([, value]) => typeof value === 'number')
  report.atKey(
    `${error.instancePath}/${escapePointer(key)}`,
    'yaml-comma-split',
    `"${key}" became an entry of its own: inside { } a comma begins the next entry`,
    `write a decimal point: ${before?.[0] ?? 'value'}: ${before?.[1] ?? ''}.${key}`,
  )
}

function isForbidden(error: ErrorObject): boolean {
  const { additionalProperty, propertyName } = error.params as {
    additionalProperty?: string
    propertyName?: string
  }
  return FORBIDDEN_KEYS.has(additionalProperty ?? propertyName ?? '')
}

/** In a flow mapping "mass: 24,8 t" is read as mass: 24 and an entry "8 t" without a value. */
function isCommaSplit(error: ErrorObject): boolean {
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

/** What a mapping's keys must be: the schema of propertyNames, or the part that it refers to. */
function nameSchema(error: ErrorObject): SchemaNode {
  const schema = error.schema as SchemaNode
  return typeof schema['$ref'] === 'string' ? resolveReference(schema['$ref'], '').node : schema
}

function namesAllowed(error: ErrorObject): string[] {
  return (nameSchema(error)['enum'] as string[] | undefined) ?? []
}

function inWords(pointer: string): string {
  const last = pointer
    .split('/')
    .filter((part) => !/^\d+$/.test(part))
    .at(-1)
  return last === undefined || last === '' ? '' : ` in ${last}`
}

function quantityKinds(error: ErrorObject): QuantityKind[] | undefined {
  const quantity = (error.parentSchema as { quantity?: QuantityKind | QuantityKind[] } | undefined)?.quantity
  return quantity === undefined ? undefined : [quantity].flat()
}

function description(error: ErrorObject): string {
  const text = (error.parentSchema as { description?: string } | undefined)?.description
  return text === undefined ? '' : `expected: ${text[0]?.toLowerCase()}${text.slice(1)}`
}

function propertyDescription(error: ErrorObject, key: string): string {
  const properties = (
    error.parentSchema as
      | { properties?: Record<string, { description?: string; examples?: string[] }> }
      | undefined
  )?.properties
  return properties?.[key]?.examples?.[0] ?? properties?.[key]?.description?.replace(/\.$/, '') ?? '…'
}

/** A value in a message, cut where it is long. */
export function found(value: unknown): string {
  if (typeof value === 'string') return `the text "${value.length > 60 ? `${value.slice(0, 57)}...` : value}"`
  if (Array.isArray(value)) return 'a list'
  return typeof value === 'object' && value !== null ? 'a mapping' : String(value)
}

function unitsInWords(kinds: readonly QuantityKind[]): string {
  return kinds
    .map((kind) =>
      KINDS[kind].units
        .map((unit) => unit.symbol)
        .filter(Boolean)
        .join(', '),
    )
    .join(', or ')
}

/** Reports why a text is no quantity. */
export function reportQuantity(
  pointer: string,
  fault: QuantityFault,
  kinds: readonly QuantityKind[],
  report: FileReport,
): void {
  if (report.written(pointer)?.block === true) {
    report.atKey(
      pointer,
      'yaml-block-mark',
      'the value begins with a sign that YAML reads as the mark of block text (> or |)',
      `for a bound from below write < ${KINDS[kinds[0] ?? 'fraction'].example}; otherwise put the value in quotes`,
    )
    return
  }
  const { code, message, mend } = quantityFault(fault, kinds)
  report.at(pointer, code, message, mend)
}

function quantityFault(
  fault: QuantityFault,
  kinds: readonly QuantityKind[],
): { code: Code; message: string; mend: string } {
  const { example } = KINDS[kinds[0] ?? 'fraction']
  const expected = `${kinds.map((each) => KINDS[each].title).join(' or ')} was expected`
  const units = unitsInWords(kinds)
  switch (fault.fault) {
    case 'decimal-comma':
      return {
        code: 'quantity-comma',
        message: `found the text "${fault.found}"; ${expected}`,
        mend: `write a decimal point: ${fault.mended}`,
      }
    case 'no-unit':
      return {
        code: 'quantity-unit',
        message: `found "${fault.found}" without a unit; ${expected}`,
        mend: `write ${fault.found} ${units}`,
      }
    case 'ambiguous-ton':
      return {
        code: 'quantity-unit',
        message: '"ton" may be a short ton, a long ton or a tonne',
        mend: 'write t, short ton or long ton',
      }
    case 'wrong-kind':
      return {
        code: 'quantity-unit',
        message: `found the text "${fault.found}", which is ${withArticle(KINDS[fault.is].title)}; ${expected}`,
        mend: `write ${fault.number} with one of ${units}`,
      }
    case 'unknown-unit':
      return {
        code: 'quantity-unit',
        message: `found the text "${fault.found}", whose unit is not known; ${expected}`,
        mend: nearNames(unitOf(fault), kinds.flatMap(acceptedSpellings)) || `write one of ${units}`,
      }
    case 'out-of-range':
      return {
        code: 'quantity-range',
        message: `found "${fault.found}", larger than any reading`,
        mend: 'check the number and its unit',
      }
    case 'above':
      return {
        code: 'quantity',
        message: `found the text "${fault.found}"; a result above a bound cannot be stored`,
        mend: `write the value read, or a bound from below such as < ${example}`,
      }
    case 'not-a-number':
      return fault.found === ''
        ? {
            code: 'yaml-empty',
            message: `there is no value; ${expected}`,
            mend: `write a quantity such as ${example}, or take the line out`,
          }
        : {
            code: 'quantity',
            message: `found the text "${fault.found}"; ${expected}`,
            mend: `write a number and its unit, for instance ${example}`,
          }
  }
}

function unitOf({ found: text, number }: { found: string; number: string }): string {
  return text.slice(text.indexOf(number) + number.length).trim()
}

function withArticle(title: string): string {
  return `${/^[aeiou]/i.test(title) ? 'an' : 'a'} ${title}`
}
