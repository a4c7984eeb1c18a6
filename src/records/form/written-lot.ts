/** A record as data holds it, as the text that somebody would write. */
import type { Path } from '../edit/edit-yaml.ts'
import { type Plain, writeYaml } from '../edit/write-yaml.ts'
import { keyOrder } from './form-edits.ts'

/** The lot's text with its keys in the order of the schema. */
export function writtenLot(record: Plain): string {
  return writeYaml(inOrder(record, []))
}

function inOrder(value: Plain, path: Path): Plain {
  if (Array.isArray(value)) return value.map((item: Plain, index) => inOrder(item, [...path, index]))
  if (typeof value !== 'object' || value === null) return value
  const order = keyOrder(path) ?? []
  const place = (key: string) => (order.includes(key) ? order.indexOf(key) : order.length)
  return Object.fromEntries(
    Object.entries(value as { readonly [key: string]: Plain })
      .sort(([a], [b]) => place(a) - place(b))
      .map(([key, member]) => [key, inOrder(member, [...path, key])]),
  )
}
