/** A limit as an outcome carries it: the numbers in the stored unit, and its own digits. */
import type { Comparison } from '../criteria/criterion.ts'
import { type ClassLimit, statedLimit } from '../criteria/limits-for-class.ts'
import type { AppliedLimit } from '../criteria/verdict.ts'
import { storedUnitOf } from './limit-unit.ts'

/** A limit as an outcome keeps it for print; nothing is rounded. */
export function appliedLimit(limit: ClassLimit, { layer }: Pick<Comparison, 'layer'>): AppliedLimit {
  const { operator, written } = statedLimit(limit)
  return {
    operator,
    values: limit.quantities.map((quantity) => quantity.value),
    unit: storedUnitOf(limit),
    written,
    layer,
  }
}
