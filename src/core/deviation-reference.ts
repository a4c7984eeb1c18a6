/** What a deviation is taken from: the mean of preceding results or the source's declared value. */
import type { Comparison } from './criterion.ts'
import { meanOfPreceding } from './deviation.ts'
import type { Evidence } from './evidence.ts'
import { property, type PropertyKey } from './properties.ts'
import { isFault, type Quantity, readQuantity } from './units.ts'

export type Reference =
  | { readonly found: 'value'; readonly value: number; readonly n: number; readonly lots: readonly string[] }
  | { readonly found: 'none'; readonly outcome: 'insufficient-history' | 'not-reported'; readonly reason: string }

/** @param method the judged result's method: a series holds one method only */
export function referenceOf(clause: Comparison, method: string | undefined, evidence: Evidence): Reference {
  const { deviation } = clause
  if (deviation === undefined) throw new RangeError(`referenceOf needs a clause on a deviation, got ${clause.id}`)
  return deviation.from === 'declared' ? declaredReference(clause.property, evidence) : precedingReference(clause, method, evidence, deviation.count)
}

function precedingReference(clause: Comparison, method: string | undefined, evidence: Evidence, count: number): Reference {
  const preceding = evidence.preceding(clause.property, clause.condition, clause.age, method, count)
  const value = meanOfPreceding(preceding)
  if (value === null) return { found: 'none', outcome: 'insufficient-history', reason: 'no preceding result of this source to compare with' }
  return { found: 'value', value, n: preceding.length, lots: preceding.map((result) => result.lot) }
}

function declaredReference(key: PropertyKey, evidence: Evidence): Reference {
  const declared = declaredQuantity(key, evidence)
  if (declared === undefined) return { found: 'none', outcome: 'not-reported', reason: 'the source declares no value to compare with' }
  return { found: 'value', value: declared.value, n: 1, lots: [] }
}

function declaredQuantity(key: PropertyKey, evidence: Evidence): Quantity | undefined {
  const declared = evidence.declared !== undefined && Object.hasOwn(evidence.declared, key) ? evidence.declared[key] : undefined
  if (typeof declared !== 'string') return declared
  const read = readQuantity(declared, property(key).kind)
  return isFault(read) ? undefined : read
}
