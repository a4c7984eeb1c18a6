/**
 * A value over the plain limit and within an outer one: met by approval where the evidence asked for is on
 * record.
 */
import { compareWithLimit, type JudgedValue } from './compare-with-limit.ts'
import { type Comparison, type Criterion, includesClass } from '../criteria/criterion.ts'
import { declaredQuantity } from './deviation-reference.ts'
import type { Evidence, KnownApproval } from '../evidence/evidence.ts'
import type { Finding } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { limitWords, quantitiesFor } from '../../words/limit-words.ts'
import { inForce } from '../measure/moment.ts'
import type { Quantity } from '../measure/units.ts'

interface Bench extends Judging {
  readonly clause: Comparison
}

/**
 * @param plain the outcome `does-not-meet` against the plain limit, kept where no approval or declaration
 * covers the value
 */
export function withApproval(
  plain: Finding,
  { clause, criterion, evidence, lotClass }: Bench,
  judged: JudgedValue,
): Finding {
  const { approval } = clause
  if (
    approval === undefined ||
    (approval.classes !== undefined && (lotClass === null || !includesClass(approval.classes, lotClass)))
  )
    return plain
  const quantities = quantitiesFor(approval.limit, lotClass)
  const { operator } = approval.limit
  if (quantities === undefined || operator === 'report') return plain
  if (compareWithLimit(judged, operator, quantities, clause.resolution).answer !== 'met') return plain
  const outer = limitWords(operator, quantities)
  if (approval.by === 'declaration')
    return byDeclaration(plain, { clause, evidence, operator, quantities, judged, outer })
  const granted = evidence.approvals?.find((candidate) => covers(candidate, clause, criterion, evidence.asOf))
  if (granted === undefined)
    return {
      ...plain,
      reason: `${plain.reason}; up to the outer limit, ${outer}, by approval on evidence (${approval.evidence}), and none is in the record`,
    }
  return {
    ...plain,
    outcome: 'meets-by-approval',
    reason: `${plain.reason}, and lies within the outer limit, ${outer}, by approval of ${granted.by} from ${granted.from} on evidence: ${granted.evidence ?? granted.scope}`,
  }
}

/** An approval names the clause, and the set or a layer of it. */
function covers(approval: KnownApproval, clause: Comparison, criterion: Criterion, asOf: string): boolean {
  return (
    approval.clause === clause.id &&
    criterion.layers.some(({ id }) => id === approval.set) &&
    inForce(approval, asOf)
  )
}

interface Declaration {
  readonly clause: Comparison
  readonly evidence: Evidence
  readonly operator: 'at-least' | 'at-most' | 'above' | 'below' | 'between' | 'magnitude-at-most'
  readonly quantities: readonly Quantity[]
  readonly judged: JudgedValue
  readonly outer: string
}

function byDeclaration(
  plain: Finding,
  { clause, evidence, operator, quantities, judged, outer }: Declaration,
): Finding {
  const declared = declaredQuantity(clause.property, evidence)
  if (declared === undefined)
    return {
      ...plain,
      reason: `${plain.reason}; up to the outer limit, ${outer}, where the source declares its value, and it declares none`,
    }
  const within =
    compareWithLimit(declared, operator, quantities).answer === 'met' &&
    compareWithLimit(judged, operator, [declared]).answer === 'met'
  if (!within)
    return {
      ...plain,
      reason: `${plain.reason}; the declared value ${declared.written} does not cover it within the outer limit, ${outer}`,
    }
  return {
    ...plain,
    outcome: 'meets-by-approval',
    reason: `${plain.reason}, and lies within the declared value ${declared.written} and the outer limit, ${outer}`,
  }
}
