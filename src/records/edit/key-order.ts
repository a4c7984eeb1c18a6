/** The order in which a record's keys are written: that of its schema. */
import { type RecordKind, resolveReference, type SchemaNode, schemaNamed } from '../schema/schemas.ts'
import type { Path } from './edit-yaml.ts'
import type { Plain } from './write-yaml.ts'

/** The keys of the mapping at a path in the order of the schema; undefined where the schema names none. */
export function keyOrder(kind: RecordKind, path: Path): readonly string[] | undefined {
  let place: Place = { node: schemaNamed(`${kind}.json`), file: `${kind}.json` }
  for (const key of path) {
    const next = step(resolved(place), key)
    if (next === undefined) return undefined
    place = next
  }
  const properties = resolved(place).node['properties']
  return properties === undefined ? undefined : Object.keys(properties as object)
}

/** A record with its keys in the order of the schema; keys that it does not name come last, as they stand. */
export function inKeyOrder(kind: RecordKind, value: Plain, path: Path = []): Plain {
  if (Array.isArray(value)) return value.map((item: Plain) => inKeyOrder(kind, item, [...path, 0]))
  if (typeof value !== 'object' || value === null) return value
  const order = keyOrder(kind, path) ?? []
  const placeOf = (key: string) => (order.includes(key) ? order.indexOf(key) : order.length)
  return Object.fromEntries(
    Object.entries(value as { readonly [key: string]: Plain })
      .toSorted(([a], [b]) => placeOf(a) - placeOf(b))
      .map(([key, member]) => [key, inKeyOrder(kind, member, [...path, key])]),
  )
}

interface Place {
  readonly node: SchemaNode
  readonly file: string
}

function resolved({ node, file }: Place): Place {
  const reference = node['$ref'] as string | undefined
  return reference === undefined ? { node, file } : resolved(resolveReference(reference, file))
}

function step({ node, file }: Place, key: string | number): Place | undefined {
  const inner =
    typeof key === 'number'
      ? node['items']
      : ((node['properties'] as Record<string, unknown> | undefined)?.[key] ?? node['additionalProperties'])
  return typeof inner === 'object' && inner !== null ? { node: inner as SchemaNode, file } : undefined
}
