/** A limit as an outcome carries it: the numbers in the stored unit, and its own digits. */
import type { Comparison } from '../criteria/criterion.ts'
import { type ClassLimit, statedLimit } from '../criteria/limits-for-class.ts'
import type { AppliedLimit, ClauseOutcome } from '../criteria/verdict.ts'
import { kept } from '../measure/kept.ts'
import type { ComparisonCase } from './judging.ts'
import { storedUnitOf } from './limit-unit.ts'

const byClause = new WeakMap<Pick<Comparison, 'layer'>, Map<ClassLimit, AppliedLimit>>()

/**
 * A limit as an outcome keeps it for print; nothing is rounded.
 * @returns the same object each time, since all outcomes of a clause share it
 */
export function appliedLimit(limit: ClassLimit, clause: Pick<Comparison, 'layer'>): AppliedLimit {
  const byLimit = kept(byClause, clause, () => new Map<ClassLimit, AppliedLimit>())
  return kept(byLimit, limit, () => applied(limit, clause))
}

function applied(limit: ClassLimit, { layer }: Pick<Comparison, 'layer'>): AppliedLimit {
  const { operator, written } = statedLimit(limit)
  return {
    operator,
    values: limit.quantities.map((quantity) => quantity.value),
    unit: storedUnitOf(limit),
    written,
    layer,
  }
}

/** The first limit of a clause, for an outcome that has no value to hold against it. */
export function firstLimit({
  clause,
  limits: [first],
}: Pick<ComparisonCase, 'clause' | 'limits'>): Partial<ClauseOutcome> {
  return first === undefined ? {} : { limit: appliedLimit(first, clause), unit: storedUnitOf(first) }
}
