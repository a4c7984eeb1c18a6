/** Reads the values of a published source as they lie beside their test. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'

export interface PublishedCase {
  readonly title: string
  readonly source: string
  readonly provenance: string
  readonly inputs: Record<string, unknown>
  readonly expected: Record<string, unknown>
  readonly tolerance: Record<string, number>
}

export function publishedCases(id: string): PublishedCase[] {
  return (
    JSON.parse(readFileSync(join(import.meta.dirname, id, 'values.json'), 'utf8')) as {
      cases: PublishedCase[]
    }
  ).cases
}

/** The case of a topic that has only one. */
export function onlyCase(id: string): PublishedCase {
  const [first, ...others] = publishedCases(id)
  if (first === undefined || others.length > 0)
    throw new RangeError(`onlyCase needs a topic with one case, got ${id}`)
  return first
}
