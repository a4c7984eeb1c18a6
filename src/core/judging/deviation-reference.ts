/**
 * What a deviation is taken from: the mean of preceding results, the source's declared value, or the
 * control's.
 */
import type { Comparison, Deviation } from '../criteria/criterion.ts'
import type { ClauseReason } from '../criteria/reason.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { defined } from '../measure/defined.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import { type Bounds, reportedBounds } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import { isFault, type Quantity, readQuantity } from '../measure/units.ts'
import { boundsOfMean, meanOfPreceding } from './deviation.ts'
import { sampleJudged } from './series-of-results.ts'

export type Reference =
  | {
      readonly found: 'value'
      readonly value: number
      /** Where the reference is known only within bounds. */
      readonly bounds?: Bounds
      readonly n: number
      /** Lots of the preceding results it rests on and their values; none of a declared value or a control. */
      readonly lots: readonly string[]
      readonly values: readonly number[]
      readonly from: Deviation['from']
    }
  | {
      readonly found: 'none'
      readonly outcome: 'insufficient-history' | 'not-reported'
      readonly reason: ClauseReason
    }

/**
 * What a deviation is taken from, or why there is nothing to take it from.
 * @param result the judged result: a series holds one method only, and a control belongs to a result
 * @throws RangeError for a clause that is not on a deviation
 */
export function referenceOf(
  clause: Comparison,
  result: Pick<Result, 'method' | 'controlValue' | 'controlBounds' | 'sample'>,
  evidence: Evidence,
): Reference {
  const { deviation } = clause
  if (deviation === undefined)
    throw new RangeError(`referenceOf needs a clause on a deviation, got ${clause.id}`)
  switch (deviation.from) {
    case 'declared':
      return declaredReference(clause.property, evidence)
    case 'control':
      return controlReference(result)
    case 'preceding':
      return precedingReference(clause, result, evidence, deviation.count)
  }
}

function precedingReference(
  clause: Comparison,
  result: Pick<Result, 'method' | 'sample'>,
  evidence: Evidence,
  count: number,
): Reference {
  const { property: key, condition, age } = clause
  const before = sampleJudged(clause, result)
  const preceding = evidence.preceding(key, condition, age, result.method, count, before)
  const value = meanOfPreceding(preceding)
  if (value === null)
    return {
      found: 'none',
      outcome: 'insufficient-history',
      reason: { code: 'no-preceding-result', params: {} },
    }
  return {
    found: 'value',
    value,
    ...defined({ bounds: boundsOfMean(preceding) }),
    n: preceding.length,
    lots: preceding.map((entry) => entry.lot),
    values: preceding.map((entry) => entry.value),
    from: 'preceding',
  }
}

function declaredReference(key: PropertyKey, evidence: Evidence): Reference {
  const declared = declaredQuantity(key, evidence)
  if (declared === undefined)
    return {
      found: 'none',
      outcome: 'not-reported',
      reason: { code: 'no-declared-reference', params: {} },
    }
  const bounds = reportedBounds(key, declared)
  return single('declared', declared.value, bounds)
}

function controlReference({
  controlValue,
  controlBounds: bounds,
}: Pick<Result, 'controlValue' | 'controlBounds'>): Reference {
  if (controlValue === undefined)
    return {
      found: 'none',
      outcome: 'not-reported',
      reason: { code: 'no-control-reference', params: {} },
    }
  return single('control', controlValue, bounds)
}

/** A reference of one value, which rests on no lot. */
function single(from: 'declared' | 'control', value: number, bounds: Bounds | undefined): Reference {
  return { found: 'value', value, ...defined({ bounds }), n: 1, lots: [], values: [], from }
}

/** The value that the source declares for a property; undefined where it declares none that can be read. */
export function declaredQuantity(key: PropertyKey, evidence: Evidence): Quantity | undefined {
  const declared =
    evidence.declared !== undefined && Object.hasOwn(evidence.declared, key)
      ? evidence.declared[key]
      : undefined
  if (typeof declared !== 'string') return declared
  const read = readQuantity(declared, property(key).kind)
  return isFault(read) ? undefined : read
}
