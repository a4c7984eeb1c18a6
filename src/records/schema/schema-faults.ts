/** What ajv found, in words a bench understands. */
import { KINDS, type QuantityKind } from '../../core/measure/units.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { isInCurlyQuotes } from '../yaml/curly-quotes.ts'
import { listWords } from '../../words/sentences.ts'
import { above } from '../yaml/pointer.ts'
import { strangeBlankFault } from '../yaml/strange-blanks.ts'
import { isCommaSplit, isForbidden, unknownKey, wrongName } from './key-faults.ts'
import { splitReadings } from './comma-splits.ts'
import { reportLimit } from './limit-faults.ts'
import { commaMend, withOneOf } from './quantity-faults.ts'
import { tradeMend } from './trade-names.ts'
import { description, inWords, valueWords } from './schema-words.ts'
import { type ErrorObject, resolveReference } from './schemas.ts'

/**
 * Reports the errors of one record. Whether a text is a quantity is no matter of the schema: the converter
 * reports that.
 */
export function reportSchemaErrors(errors: readonly ErrorObject[], report: FileReport): void {
  const seen = new Set<string>()
  const split = new Set(errors.filter(isCommaSplit).map((error) => error.instancePath))
  for (const error of errors) {
    // The number before the comma is told with the part after it, not once more by itself.
    if (error.keyword === 'type' && typeof error.data === 'number' && split.has(above(error.instancePath)))
      continue
    // Of an entry without anything one missing key tells as much as all of them.
    if (isEmptyEntry(error)) {
      if (!seen.has(error.instancePath)) reportEmptyEntry(errors, error, report)
      seen.add(error.instancePath)
      continue
    }
    const fault = `${error.instancePath}|${error.keyword}|${JSON.stringify(error.params)}`
    // What is wrong about a key is told once, by the key; a forbidden key has its own report.
    if (seen.has(fault) || error.propertyName !== undefined || isForbidden(error)) continue
    seen.add(fault)
    reportError(error, report)
  }
}

/** A list's item, or a value, of nothing but braces that lacks keys. */
function isEmptyEntry({ keyword, data, instancePath }: ErrorObject): boolean {
  return (
    keyword === 'required' &&
    instancePath !== '' &&
    typeof data === 'object' &&
    data !== null &&
    Object.keys(data).length === 0
  )
}

function reportEmptyEntry(
  errors: readonly ErrorObject[],
  { instancePath }: ErrorObject,
  report: FileReport,
): void {
  const keys = errors
    .filter((error) => error.instancePath === instancePath && error.keyword === 'required')
    .map((error) => (error.params as { missingProperty: string }).missingProperty)
  report.at(
    instancePath,
    'key-missing',
    `the entry${inWords(instancePath)} is empty; ${listWords([...new Set(keys)], 'and')} ${keys.length === 1 ? 'was' : 'were'} expected`,
    'write what belongs here, or remove the entry',
  )
}

/** What a truth value of YAML is written as here; '' where it is none, or the list has no such word. */
function yesOrNo(data: unknown, allowed: readonly string[]): string {
  const word = data === true ? 'yes' : data === false ? 'no' : ''
  return allowed.includes(word) ? `write ${word}` : ''
}

/** Longer lists of allowed words are not printed in a fix. */
const LIST_LENGTH = 12

type Handler = (error: ErrorObject, report: FileReport) => void

function reportError(error: ErrorObject, report: FileReport): void {
  if (isSignFault(error, report)) return
  const handler = HANDLERS[error.keyword]
  if (handler !== undefined) handler(error, report)
  else if (!reportLimit(error, report))
    report.at(
      error.instancePath,
      'schema',
      `${valueWords(error.data)} is not what is expected here`,
      description(error) || 'see the schema of this kind of record',
    )
}

/** A text that only a sign in it makes other than expected: curly quotes are told for every text, strange blanks here. */
function isSignFault({ data, instancePath, keyword }: ErrorObject, report: FileReport): boolean {
  if (typeof data !== 'string') return false
  const blank = keyword === 'enum' || keyword === 'pattern' ? strangeBlankFault(data) : undefined
  if (blank !== undefined) report.at(instancePath, ...blank)
  return blank !== undefined || isInCurlyQuotes(data, instancePath, report)
}

const HANDLERS: Readonly<Record<string, Handler>> = {
  // The faults of the branch that was taken are reported by themselves.
  if: () => {},
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
      addingWords(error, key),
    )
  },
  type: wrongType,
  enum: (error, report) => {
    const allowed = (error.params as { allowedValues: string[] }).allowedValues
    const mend = fixedListMend(allowed)
    if (isNoValue(error)) report.at(error.instancePath, 'yaml-empty', 'there is no value', mend)
    else
      report.at(
        error.instancePath,
        'schema',
        `found ${valueWords(error.data)}; one of a fixed list was expected`,
        yesOrNo(error.data, allowed) ||
          (typeof error.data === 'object' ? '' : meantName(String(error.data), allowed)) ||
          mend,
      )
  },
  pattern: (error, report) => {
    const moment = (error.parentSchema as { moment?: string } | undefined)?.moment
    const mend = moment === undefined ? undefined : MOMENT_MENDS[moment === 'date' ? 'date' : 'time']
    if (isNoValue(error))
      report.at(
        error.instancePath,
        'yaml-empty',
        'there is no value',
        mend ?? (description(error) || 'write a value, or remove the line'),
      )
    else if (mend === undefined)
      report.at(
        error.instancePath,
        'schema',
        `${valueWords(error.data)} does not have the expected form`,
        [description(error), exampleOf(error)].filter(Boolean).join(' For instance ') ||
          'see the schema of this kind of record',
      )
    else {
      const expected = moment === 'date' ? 'date' : 'date or a date and time'
      report.at(error.instancePath, 'date', `${valueWords(error.data)} is not a ${expected}`, mend)
    }
  },
}

const MOMENT_MENDS = {
  date: 'write year-month-day, for instance 2026-03-11',
  time: 'write 2026-03-11 or 2026-03-11T09:20',
} as const

function meantName(name: string, allowed: readonly string[]): string {
  return tradeMend(name, allowed) || nearNames(name, allowed)
}

function fixedListMend(allowed: readonly string[]): string {
  return allowed.length <= LIST_LENGTH
    ? `write one of ${allowed.join(', ')}`
    : 'see the list in the schema of this kind of record'
}

/** How the schema shows a value; empty where it shows none. */
function exampleOf(error: ErrorObject): string {
  const [example = ''] = (error.parentSchema as { examples?: readonly unknown[] } | undefined)?.examples ?? []
  return typeof example === 'string' ? example : ''
}

function isNoValue({ data }: ErrorObject): boolean {
  return data === '' || data === null
}

/** Text that begins with a number and goes on with a unit. */
const WITH_UNIT = /^[\d.]+ \D/

function wrongType(error: ErrorObject, report: FileReport): void {
  const kinds = quantityKinds(error)
  // The list that it must be of is reported by itself; quotes would not make it one of them.
  const allowed = (error.parentSchema as { enum?: readonly unknown[] } | undefined)?.enum
  const isNoName = typeof error.data === 'number' || typeof error.data === 'boolean'
  if (isNoName && allowed?.includes(String(error.data)) === false) return
  if (isNoValue(error)) {
    // The list that the value must be of is reported by itself, and names what may stand here.
    if ((error.parentSchema as { enum?: unknown } | undefined)?.enum !== undefined) return
    report.at(
      error.instancePath,
      'yaml-empty',
      'there is no value',
      kinds === undefined
        ? description(error) || 'write a value, or remove the line'
        : `write a quantity such as ${KINDS[kinds[0] ?? 'fraction'].example}, or remove the line`,
    )
  } else if (kinds !== undefined && typeof error.data === 'number') {
    numberWithoutUnit(error, kinds, report)
  } else if (typeof error.data === 'number' && WITH_UNIT.test(exampleOf(error))) {
    report.at(
      error.instancePath,
      'quantity-unit',
      `found ${writtenAs(error, report)} without a unit`,
      `write it with its unit, as in ${exampleOf(error)}`,
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
      `found ${valueWords(error.data)}; ${expectedType(error)} was expected`,
      typeof error.data === 'number'
        ? [formInWords(error), description(error)].filter(Boolean).join('; ')
        : description(error) || formInWords(error),
    )
}

function numberWithoutUnit(error: ErrorObject, kinds: readonly QuantityKind[], report: FileReport): void {
  const { title } = KINDS[kinds[0] ?? 'fraction']
  const readings = splitReadings(error.instancePath, report)
  if (readings === undefined)
    report.at(
      error.instancePath,
      'quantity-unit',
      `found ${writtenAs(error, report)} without a unit; ${title} with its unit was expected`,
      withOneOf(writtenAs(error, report), kinds),
    )
  else
    report.at(
      error.instancePath,
      'yaml-comma-split',
      `found ${writtenAs(error, report)} alone; ${title} was expected, and inside { } a comma begins the next entry`,
      commaMend(readings),
    )
}

/** How a value of the type that a schema asks for is written. */
function formInWords(error: ErrorObject): string {
  const forms: Readonly<Record<string, string>> = {
    object: 'write key: value, each on a line of its own or all within { }',
    array: 'write items within [ ], or each on a line of its own after "- "',
    string: 'write text, in quotes where it holds signs that YAML reads',
    number: 'write a number',
    integer: 'write a whole number',
  }
  const [first = ''] = [(error.params as { type: string | string[] }).type].flat()
  return forms[first] ?? 'see the schema of this kind of record'
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

function quantityKinds(error: ErrorObject): QuantityKind[] | undefined {
  const quantity = (error.parentSchema as { quantity?: QuantityKind | QuantityKind[] } | undefined)?.quantity
  return quantity === undefined ? undefined : [quantity].flat()
}

/** How to add a key; a schema that asks for it in one case only describes it elsewhere. */
function addingWords(error: ErrorObject, key: string): string {
  const text = propertyDescription(error, key)
  return text === undefined
    ? `add ${key}; the schema of this kind of record describes it`
    : `add ${key}: ${text}`
}

/** An example of a property's value, or what its schema says of it, also where that refers to a shared part. */
function propertyDescription(error: ErrorObject, key: string): string | undefined {
  const properties = (error.parentSchema as { properties?: Record<string, PropertySchema> } | undefined)
    ?.properties
  const own = properties?.[key]
  const shared = own?.$ref?.startsWith('#') === false ? resolveReference(own.$ref, '').node : undefined
  return exampleWords(own) ?? exampleWords(shared)
}

function exampleWords(schema: PropertySchema | undefined): string | undefined {
  return schema?.examples?.[0] ?? schema?.description?.replace(/\.$/, '')
}

interface PropertySchema {
  readonly $ref?: string
  readonly description?: string
  readonly examples?: readonly string[]
}
