/** What must be said of a verdict beside its outcome, which alone would be read wrongly. */
import { defined } from '../measure/defined.ts'
import { hasNoClass } from './no-class.ts'
import { everyClauseOutcome, type Verdict } from './verdict.ts'

export interface VerdictStanding {
  /** The set has no class for the lot. */
  readonly noClass?: true
  /** No clause could be evaluated, for want of a history: nothing is met either. */
  readonly unevaluated?: true
}

/** What holds of a verdict; members that do not are left out. */
export function verdictStanding(
  verdict: Pick<Verdict, 'outcome' | 'decidedBy' | 'clauses'>,
): VerdictStanding {
  return defined({
    noClass: hasNoClass(verdict) || undefined,
    unevaluated: isUnevaluated(verdict) || undefined,
  })
}

function isUnevaluated({ outcome, clauses }: Pick<Verdict, 'outcome' | 'clauses'>): boolean {
  if (outcome !== 'insufficient-history') return false
  return ![...everyClauseOutcome(clauses)].some(
    (clause) => !clause.information && (clause.outcome === 'meets' || clause.outcome === 'meets-by-approval'),
  )
}
