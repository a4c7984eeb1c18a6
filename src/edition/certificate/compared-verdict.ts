/** A verdict as it is judged today or as a document holds it, and where two of them have another outcome. */
import type { OutcomeChange } from '../../core/checks/lot-findings.ts'
import { lacksClass } from '../../core/criteria/no-class.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { statedStanding, type VerdictStanding } from '../../core/criteria/verdict-standing.ts'
import { defined } from '../../core/measure/defined.ts'

export interface ComparedVerdict {
  readonly criterion: string
  readonly outcome: Outcome
  /** Absent of a document where every clause that applies is met. */
  readonly decidedBy?: readonly string[]
  /** Absent where only the outcome is known. */
  readonly clauses?: readonly ComparedClause[]
}

/** A clause's outcome with its members'. */
export interface ComparedClause {
  readonly id: string
  readonly outcome: Outcome
  /** Codes alone where a document holds no more of them. */
  readonly reasons?: readonly (string | { readonly code: string })[]
  readonly clauses?: readonly ComparedClause[]
}

type Change = Omit<OutcomeChange, 'criterion'>

/**
 * The outcome of the verdict and of its clauses, where they differ.
 * @param clauses whether clauses are compared too
 */
export function everyChange(
  before: ComparedVerdict,
  now: ComparedVerdict,
  clauses: 'with-clauses' | 'verdict-alone',
): Change[] {
  const ofVerdict = before.outcome === now.outcome ? [] : [verdictChange(before, now)]
  return clauses === 'verdict-alone' || before.clauses === undefined || now.clauses === undefined
    ? ofVerdict
    : [...ofVerdict, ...clauseChanges(before.clauses, now.clauses)]
}

function verdictChange(before: ComparedVerdict, now: ComparedVerdict): Change {
  return {
    issued: before.outcome,
    today: now.outcome,
    ...defined({ issuedStanding: standingOf(before), todayStanding: standingOf(now) }),
  }
}

function clauseChanges(before: readonly ComparedClause[], now: readonly ComparedClause[]): Change[] {
  const today = new Map([...everyClauseOutcome(now)].map((clause) => [clause.id, clause]))
  return [...everyClauseOutcome(before)].flatMap((clause): Change[] => {
    const own = today.get(clause.id)
    if (own?.outcome === clause.outcome) return []
    return [
      {
        clause: clause.id,
        issued: clause.outcome,
        today: own?.outcome ?? null,
        ...defined({ issuedStanding: lateStanding(clause), todayStanding: own && lateStanding(own) }),
      },
    ]
  })
}

/** As `verdictStanding` says it of a verdict, from what a document holds of one; undefined without clauses. */
function standingOf({ outcome, decidedBy = [], clauses }: ComparedVerdict): VerdictStanding | undefined {
  if (clauses === undefined) return undefined
  const every = [...everyClauseOutcome(clauses)]
  const met = every.some((clause) => clause.outcome === 'meets' || clause.outcome === 'meets-by-approval')
  const failing = clauses.filter((clause) => clause.outcome === 'does-not-meet' && decides(clause, decidedBy))
  const codes = new Map(every.map(({ id, reasons: [first] = [] }) => [id, codeOf(first)]))
  const noClass =
    outcome === 'not-reported' && 0 < decidedBy.length && decidedBy.every((id) => lacksClass(codes.get(id)))
  return statedStanding({
    ...(noClass ? { noClass: true } : {}),
    ...(outcome === 'insufficient-history' && !met ? { unevaluated: true } : {}),
    ...(0 < failing.length && failing.every(isLate) ? { soFar: true } : {}),
  })
}

type Reason = NonNullable<ComparedClause['reasons']>[number]

function codeOf(reason: Reason | undefined): string | undefined {
  return typeof reason === 'string' ? reason : reason?.code
}

/** A clause for information decides nothing. */
function decides(clause: ComparedClause, decidedBy: readonly string[]): boolean {
  return [...everyClauseOutcome([clause])].some(({ id }) => decidedBy.includes(id))
}

function lateStanding(clause: ComparedClause): VerdictStanding | undefined {
  return clause.outcome === 'does-not-meet' && isLate(clause) ? { soFar: true } : undefined
}

/** An overdue result can still meet it. */
function isLate({ reasons = [] }: ComparedClause): boolean {
  return reasons.some((reason) => codeOf(reason) === 'late-routes')
}
