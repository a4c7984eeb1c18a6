/** The sets that the project ships, compiled as the program compiles them. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { JSON_SCHEMA, load } from 'js-yaml'
import type { Criterion } from '../../../src/core/criterion.ts'
import { compileCriterion } from '../../../src/records/criteria.ts'
import type { WrittenCriterion } from '../../../src/records/criterion-record.ts'
import { KNOWN } from '../../core/judging.ts'

export const SHIPPED = ['c618-12a', 'c618-19', 'modified-strength', 'resistivity-option', 'strength-or-resistivity'] as const

export function shippedSet(id: (typeof SHIPPED)[number]): Criterion {
  const text = readFileSync(join(import.meta.dirname, '../../../content/criteria', `${id}.yaml`), 'utf8')
  const set = compileCriterion(id, load(text, { schema: JSON_SCHEMA }) as WrittenCriterion, (pointer, fault) => { throw new Error(`${id}${pointer}: ${fault.message}`) }, KNOWN)
  if (set === undefined) throw new Error(`${id} did not compile`)
  return set
}
