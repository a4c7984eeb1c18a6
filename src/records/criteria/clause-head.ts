/** What clauses of every form have in common: id, title, classes, premises, basis, decision rule. */
import type { Basis, ClauseHead, DecisionRule } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { checkClasses, type CompileContext } from './context.ts'
import { compilePremises } from './premise.ts'
import type { WrittenClause, WrittenDecisionRule } from './written-criterion.ts'

/**
 * Where a clause stands: its pointer, the id it gets when it names none, and what it takes from the group
 * above.
 */
export interface ClausePosition {
  readonly pointer: string
  readonly givenId?: string
  readonly above?: Pick<ClauseHead, 'basis' | 'setBy' | 'decisionRule'>
}

/** A position whose clause has its id. */
export type NamedPosition = ClausePosition & { readonly id: string }

export function compileHead(
  context: CompileContext,
  written: WrittenClause,
  { pointer, id, above }: NamedPosition,
): ClauseHead {
  const { classes, when, 'decision-rule': rule } = written
  if (classes !== undefined) checkClasses(context, classes, below(pointer, 'classes'))
  return defined({
    id,
    title: written.title,
    classes,
    kinds: written.kinds,
    when: when === undefined ? undefined : compilePremises(context, when, below(pointer, 'when')),
    optional: written.optional === 'yes',
    information: written.information === 'yes',
    basis: basisOf(written) ?? above?.basis,
    setBy: written['set-by'] ?? above?.setBy,
    decisionRule:
      rule === undefined
        ? above?.decisionRule
        : compileDecisionRule(context, rule, below(pointer, 'decision-rule')),
    layer: context.id,
  })
}

/** The origin of a clause's limit as the clause itself states it. */
export function originOf(written: WrittenClause): Pick<ClauseHead, 'basis' | 'setBy'> {
  return defined({ basis: basisOf(written), setBy: written['set-by'] })
}

function basisOf({ basis }: WrittenClause): Basis | undefined {
  if (basis?.read !== undefined) return { read: basis.read }
  return basis?.memory === undefined ? undefined : { memory: basis.memory }
}

/** @returns the rule; as-specified where the record names none or several, with the fault reported */
export function compileDecisionRule(
  context: CompileContext,
  { 'as-specified': plain, guarded, probability, 'agreed-in': agreedIn }: WrittenDecisionRule,
  pointer: string,
): DecisionRule {
  const named = [plain, guarded, probability].filter((rule) => rule !== undefined).length
  if (named !== 1)
    context.fault(
      pointer,
      'criterion-decision-rule',
      named === 0
        ? 'the decision rule names neither "guarded" nor "probability"'
        : `the decision rule names ${named === 2 ? 'both ' : ''}${namedWords({ plain, guarded, probability })}`,
      'name one of the two, or leave the rule out to judge as specified',
    )
  else if (guarded !== undefined) return defined({ rule: 'guarded' as const, k: guarded, agreedIn })
  else if (probability !== undefined)
    return defined({ rule: 'probability' as const, p: probability, agreedIn })
  return { rule: 'as-specified' }
}

function namedWords(rules: { readonly [Name in 'plain' | 'guarded' | 'probability']: unknown }): string {
  return [
    rules.plain === undefined ? undefined : '"as-specified"',
    rules.guarded === undefined ? undefined : '"guarded"',
    rules.probability === undefined ? undefined : '"probability"',
  ]
    .filter((name) => name !== undefined)
    .join(' and ')
}
