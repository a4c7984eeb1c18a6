/** What must be said of a verdict beside its outcome, which alone would be read wrongly. */
import { defined } from '../measure/defined.ts'
import { failsSoFar } from './late-routes.ts'
import { hasNoClass } from './no-class.ts'
import { everyClauseOutcome, type Verdict } from './verdict.ts'

export interface VerdictStanding {
  /** The set has no class for the lot. */
  readonly noClass?: true
  /** No clause could be evaluated, for want of a history: nothing is met either. */
  readonly unevaluated?: true
  /** It is not met for nothing but clauses that an overdue result can still meet. */
  readonly soFar?: true
}

/** What holds of a verdict; members that do not are left out. */
export function verdictStanding(
  verdict: Pick<Verdict, 'outcome' | 'decidedBy' | 'clauses'>,
): VerdictStanding {
  return defined({
    noClass: hasNoClass(verdict) || undefined,
    unevaluated: isUnevaluated(verdict) || undefined,
    soFar: (verdict.outcome === 'does-not-meet' && failsSoFar(verdict.clauses)) || undefined,
  })
}

/** The same of what states it beside much else. */
export function statedStanding({ noClass, unevaluated, soFar }: VerdictStanding): VerdictStanding {
  return defined({ noClass, unevaluated, soFar })
}

function isUnevaluated({ outcome, clauses }: Pick<Verdict, 'outcome' | 'clauses'>): boolean {
  if (outcome !== 'insufficient-history') return false
  return ![...everyClauseOutcome(clauses)].some(
    (clause) => !clause.information && (clause.outcome === 'meets' || clause.outcome === 'meets-by-approval'),
  )
}
