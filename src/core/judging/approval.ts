/**
 * A value over the plain limit and within an outer one: met by approval where the evidence asked for is on
 * record.
 */
import { type Approval, type Comparison, includesClass } from '../criteria/criterion.ts'
import { type ClassLimit, limitsForClass, statedLimit } from '../criteria/limits-for-class.ts'
import type { Evidence, KnownApproval } from '../evidence/evidence.ts'
import { inForce } from '../measure/moment.ts'
import { compareWithLimit, type JudgedValue } from './compare-with-limit.ts'
import { declaredQuantity } from './deviation-reference.ts'
import { type ClauseJudgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'

/**
 * A value beyond the plain limit, met by approval where it lies within the outer one and the evidence is on
 * record.
 * @param plain the outcome `does-not-meet` against the plain limit, kept where no approval or declaration
 * covers the value
 */
export function withApproval(
  plain: ClauseJudgement,
  comparison: ComparisonCase,
  judged: JudgedValue,
): ClauseJudgement {
  const { clause, lotClass } = comparison
  const { approval } = clause
  if (approval === undefined) return plain
  const outer = outerLimit(approval, lotClass)
  if (outer === undefined) return plain
  if (compareWithLimit(judged, outer.operator, outer.quantities, clause.resolution).answer !== 'met')
    return plain
  return approval.by === 'declaration'
    ? byDeclaration(plain, { clause, evidence: comparison.evidence, judged, outer })
    : byApproval(plain, { comparison, evidence: approval.evidence, outer })
}

/** The outer limit of the lot's class; undefined where the approval has none for it. */
function outerLimit({ classes, limit }: Approval, lotClass: string | null): ClassLimit | undefined {
  const forClass = classes === undefined || (lotClass !== null && includesClass(classes, lotClass))
  return forClass ? limitsForClass([limit], lotClass)[0] : undefined
}

interface ByApproval {
  readonly comparison: ComparisonCase
  /** What the clause asks for. */
  readonly evidence: string
  readonly outer: ClassLimit
}

function byApproval(plain: ClauseJudgement, { comparison, evidence, outer }: ByApproval): ClauseJudgement {
  const limit = statedLimit(outer)
  const granted = comparison.evidence.approvals?.find((approval) => covers(approval, comparison))
  if (granted === undefined)
    return withReason(plain, { code: 'approval-lacking', params: { limit, evidence } })
  const { by, from, scope } = granted
  return {
    ...withReason(withoutDoubt(plain), {
      code: 'approval-granted',
      params: { limit, by, from: from.text, evidence: granted.evidence ?? scope },
    }),
    outcome: 'meets-by-approval',
  }
}

/** How far a value lies beyond the plain limit says nothing of an outcome by the outer one. */
function withoutDoubt({ doubt: _doubt, ...judged }: ClauseJudgement): ClauseJudgement {
  return judged
}

/** An approval names the clause, and the set or a layer of it. */
function covers(approval: KnownApproval, { clause, criterion, evidence }: ComparisonCase): boolean {
  return (
    approval.clause === clause.id &&
    criterion.layers.some(({ id }) => id === approval.set) &&
    inForce(approval, evidence.asOf)
  )
}

interface ByDeclaration {
  readonly clause: Comparison
  readonly evidence: Evidence
  readonly judged: JudgedValue
  readonly outer: ClassLimit
}

function byDeclaration(
  plain: ClauseJudgement,
  { clause, evidence, judged, outer }: ByDeclaration,
): ClauseJudgement {
  const limit = statedLimit(outer)
  const declared = declaredQuantity(clause.property, evidence)
  if (declared === undefined) return withReason(plain, { code: 'declaration-lacking', params: { limit } })
  const params = { limit, declared: declared.written }
  const within =
    compareWithLimit(declared, outer.operator, outer.quantities).answer === 'met' &&
    compareWithLimit(judged, outer.operator, [declared]).answer === 'met'
  return within
    ? {
        ...withReason(withoutDoubt(plain), { code: 'declaration-covers', params }),
        outcome: 'meets-by-approval',
      }
    : withReason(plain, { code: 'declaration-exceeded', params })
}
