/** The set that a supplement rests on. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { CompileFault, OtherRecords } from './context.ts'
import type { WrittenCriterion } from './written-criterion.ts'

type Extends = NonNullable<WrittenCriterion['extends']>

/** @returns undefined where there is none to rest on: reported here, or a fault of the base itself */
export function baseOf(
  named: Extends,
  others: OtherRecords,
  report: (pointer: string, fault: CompileFault) => void,
): Criterion | undefined {
  const fault = (code: 'criterion-base-unknown' | 'criterion-base-cycle', message: string, mend: string) =>
    report('/extends/set', { code, message, mend })
  if (!others.criteria.has(named.set)) {
    fault(
      'criterion-base-unknown',
      `there is no criterion "${named.set}" to extend`,
      `name one of: ${[...others.criteria].sort().join(', ')}`,
    )
    return undefined
  }
  const base = named.edition === 'current' ? currentEdition(named.set, others) : others.base(named.set)
  if (base === 'cycle')
    fault(
      'criterion-base-cycle',
      `the specification extends "${named.set}", which extends it in turn`,
      'remove "extends:" from one of them',
    )
  return typeof base === 'object' ? base : undefined
}

/** The last of the editions that supersede a set. */
function currentEdition(id: string, others: OtherRecords): Criterion | 'faulty' | 'cycle' {
  const seen = new Set<string>()
  for (let next = id; ; ) {
    if (seen.has(next)) return 'cycle'
    seen.add(next)
    const set = others.base(next)
    if (typeof set !== 'object' || set.supersededBy === undefined) return set
    next = set.supersededBy
  }
}
