/**
 * Validated plain values to loaded ones: every text that the schema calls a quantity becomes a Quantity, a date or
 * time a Moment, an age an Age. One converter a schema, compiled once, so that a record is walked only where there
 * is something to read.
 */
import { type Age, ageIn } from '../../core/measure/age.ts'
import { type Moment, momentIn } from '../../core/measure/moment.ts'
import {
  isFault,
  type QuantityFault,
  type QuantityKind,
  readPerhapsAbove,
  readQuantity,
} from '../../core/measure/units.ts'
import { type RecordKind, resolveReference, type SchemaNode, schemaNamed } from './schemas.ts'
import { below } from '../yaml/pointer.ts'

/** Called for each text that is no quantity; `kinds` are those the place accepts. */
export type ReportQuantity = (pointer: string, fault: QuantityFault, kinds: readonly QuantityKind[]) => void
/** Without a pointer none is built below it: a record without a fault, nearly every one, needs none. */
type Converter = (value: unknown, pointer: string | undefined, reading: Reading) => unknown

interface Reading {
  readonly report: ReportQuantity
  /** Minutes ahead of UTC that sorting takes where a moment states no offset. */
  readonly sortedAt: number
}

/** Shared parts whose texts are read into moments and ages; null for a text that has not their form. */
const TIMES: Readonly<Record<string, (text: string, sortedAt: number) => Moment | Age | null>> = {
  'common.json#/$defs/date': momentIn,
  'common.json#/$defs/moment': momentIn,
  'common.json#/$defs/age': ageIn,
}

const compiled = new Map<string, Converter | null>()

/** The converter of a kind of record; `sortedAt` as of `readMoment`. */
export function converterOf(
  kind: RecordKind,
): (value: unknown, report: ReportQuantity, sortedAt?: number) => unknown {
  const converter = converterFor(schemaNamed(`${kind}.json`), `${kind}.json`, `${kind}.json`)
  return (value, report, sortedAt = 0) => {
    if (converter === null) return value
    let faults = 0
    const count = () => {
      faults += 1
    }
    const record = converter(value, undefined, { report: count, sortedAt })
    return faults === 0 ? record : converter(value, '', { report, sortedAt })
  }
}

/** Null where nothing below a node is to be read, so that loading need not look there. */
function converterFor(node: SchemaNode, file: string, name: string): Converter | null {
  const known = compiled.get(name)
  if (known !== undefined) return known
  const reference = node['$ref'] as string | undefined
  if (reference !== undefined) {
    const target = resolveReference(reference, file)
    return converterFor(target.node, target.file, reference.startsWith('#') ? file + reference : reference)
  }
  const read = TIMES[name]
  // What has not the form stays as it is: the schema reports it, and the record is not used.
  if (read !== undefined)
    return (value, _, { sortedAt }) => (typeof value === 'string' ? (read(value, sortedAt) ?? value) : value)
  // A schema that holds itself (a clause within a clause) finds this entry, which waits for the converter below.
  compiled.set(name, (value, pointer, reading) => {
    const whole = compiled.get(name) ?? null
    return whole === null ? value : whole(value, pointer, reading)
  })
  const converter = combined(
    quantityConverter(node),
    objectConverter(node, file, name),
    arrayConverter(node, file, name),
  )
  compiled.set(name, converter)
  return converter
}

function combined(
  text: Converter | null,
  object: Converter | null,
  array: Converter | null,
): Converter | null {
  if (text === null && object === null && array === null) return null
  return (value, pointer, reading) => {
    if (typeof value === 'string') return text === null ? value : text(value, pointer, reading)
    if (Array.isArray(value)) return array === null ? value : array(value, pointer, reading)
    return typeof value === 'object' && value !== null && object !== null
      ? object(value, pointer, reading)
      : value
  }
}

function quantityConverter(node: SchemaNode): Converter | null {
  if (node['quantity'] === undefined) return null
  const kinds = [node['quantity']].flat() as QuantityKind[]
  const read = node['above'] === true ? readPerhapsAbove : readQuantity
  return (value, pointer, reading) => {
    let first: QuantityFault | undefined
    for (const kind of kinds) {
      const quantity = read(value as string, kind)
      if (!isFault(quantity)) return quantity
      first ??= quantity
    }
    if (first !== undefined) reading.report(pointer ?? '', first, kinds)
    return value
  }
}

function objectConverter(node: SchemaNode, file: string, name: string): Converter | null {
  const properties = Object.entries((node['properties'] ?? {}) as Record<string, SchemaNode>)
    .map(([key, child]) => [key, converterFor(child, file, `${name}/${key}`)] as const)
    .filter(([, converter]) => converter !== null) as [string, Converter][]
  const additional = node['additionalProperties']
  const others =
    typeof additional === 'object' && additional !== null
      ? converterFor(additional as SchemaNode, file, `${name}/*`)
      : null
  if (properties.length === 0 && others === null) return null
  const byKey = new Map(properties)
  return (value, pointer, reading) => {
    const result: Record<string, unknown> = {}
    for (const key of Object.keys(value as object)) {
      const member = (value as Record<string, unknown>)[key]
      const converter = byKey.get(key) ?? others
      result[key] =
        converter === null
          ? member
          : converter(member, pointer === undefined ? undefined : below(pointer, key), reading)
    }
    return result
  }
}

function arrayConverter(node: SchemaNode, file: string, name: string): Converter | null {
  const items = node['items'] as SchemaNode | undefined
  const converter = items === undefined ? null : converterFor(items, file, `${name}[]`)
  return converter === null
    ? null
    : (value, pointer, reading) =>
        (value as unknown[]).map((item, index) =>
          converter(item, pointer === undefined ? undefined : below(pointer, index), reading),
        )
}
