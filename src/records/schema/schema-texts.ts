/** The schemas as they lie on the disk. */
import { readFileSync } from 'node:fs'
import type { SchemaNode } from './schema-set.ts'

/** @param name of a file in schemas/, without its ending */
export function schemaText(name: string): string {
  return readFileSync(new URL(`../../../schemas/${name}.json`, import.meta.url), 'utf8')
}

/** @param name of a file in schemas/, without its ending */
export function readSchema(name: string): SchemaNode {
  return JSON.parse(schemaText(name)) as SchemaNode
}
