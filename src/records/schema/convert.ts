/**
 * Validated plain values to loaded ones: every text that the schema calls a quantity becomes a Quantity, a date or
 * time a Moment, an age an Age. One converter a schema, compiled once, so that a record is walked only where there
 * is something to read.
 */
import { type Age, ageIn } from '../../core/measure/age.ts'
import { type Moment, momentIn } from '../../core/measure/moment.ts'
import { isFault, type QuantityFault, type QuantityKind, readQuantity } from '../../core/measure/units.ts'
import { type RecordKind, resolveReference, type SchemaNode, schemaNamed } from './schemas.ts'
import { below } from '../yaml/pointer.ts'

/** Called for each text that is no quantity; `kinds` are those the place accepts. */
export type ReportQuantity = (pointer: string, fault: QuantityFault, kinds: readonly QuantityKind[]) => void
/** Without a pointer none is built below it: a record without a fault, nearly every one, needs none. */
type Converter = (value: unknown, pointer: string | undefined, report: ReportQuantity) => unknown

/** Shared parts whose texts are read into moments and ages; null for a text that has not their form. */
const TIMES: Readonly<Record<string, (text: string) => Moment | Age | null>> = {
  'common.json#/$defs/date': momentIn,
  'common.json#/$defs/moment': momentIn,
  'common.json#/$defs/age': ageIn,
}

const compiled = new Map<string, Converter | null>()

/** The converter of a kind of record. */
export function converterOf(kind: RecordKind): (value: unknown, report: ReportQuantity) => unknown {
  const converter = converterFor(schemaNamed(`${kind}.json`), `${kind}.json`, `${kind}.json`)
  return (value, report) => {
    if (converter === null) return value
    let faults = 0
    const record = converter(value, undefined, () => {
      faults += 1
    })
    return faults === 0 ? record : converter(value, '', report)
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
  if (read !== undefined) return (value) => (typeof value === 'string' ? (read(value) ?? value) : value)
  // A schema that holds itself (a clause within a clause) finds this entry, which waits for the converter below.
  compiled.set(name, (value, pointer, report) => {
    const whole = compiled.get(name) ?? null
    return whole === null ? value : whole(value, pointer, report)
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
  return (value, pointer, report) => {
    if (typeof value === 'string') return text === null ? value : text(value, pointer, report)
    if (Array.isArray(value)) return array === null ? value : array(value, pointer, report)
    return typeof value === 'object' && value !== null && object !== null
      ? object(value, pointer, report)
      : value
  }
}

function quantityConverter(node: SchemaNode): Converter | null {
  if (node['quantity'] === undefined) return null
  const kinds = [node['quantity']].flat() as QuantityKind[]
  return (value, pointer, report) => {
    let first: QuantityFault | undefined
    for (const kind of kinds) {
      const quantity = readQuantity(value as string, kind)
      if (!isFault(quantity)) return quantity
      first ??= quantity
    }
    if (first !== undefined) report(pointer ?? '', first, kinds)
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
  return (value, pointer, report) => {
    const result: Record<string, unknown> = {}
    for (const key of Object.keys(value as object)) {
      const member = (value as Record<string, unknown>)[key]
      const converter = byKey.get(key) ?? others
      result[key] =
        converter === null
          ? member
          : converter(member, pointer === undefined ? undefined : below(pointer, key), report)
    }
    return result
  }
}

function arrayConverter(node: SchemaNode, file: string, name: string): Converter | null {
  const items = node['items'] as SchemaNode | undefined
  const converter = items === undefined ? null : converterFor(items, file, `${name}[]`)
  return converter === null
    ? null
    : (value, pointer, report) =>
        (value as unknown[]).map((item, index) =>
          converter(item, pointer === undefined ? undefined : below(pointer, index), report),
        )
}
