/** One clause of a base as a supplement changes it: limits, standing, method, frequency. */
import type { Clause, ClauseChange, Comparison, DecisionRule } from '../../core/criteria/criterion.ts'
import { defined } from '../../core/measure/defined.ts'
import { below } from '../yaml/pointer.ts'
import { compileApproval } from './approval.ts'
import { compileDecisionRule, originOf } from './clause-head.ts'
import { withoutOrigin } from './clause-list.ts'
import { resolutionOf } from './comparison.ts'
import type { CompileContext } from './context.ts'
import { limitScale } from './limit-scale.ts'
import { compileLimits } from './limits.ts'
import { checkTogether } from './limits-together.ts'
import { mergeLimits } from './merge.ts'
import { compileSampling } from './record-clauses.ts'
import type { WrittenChange, WrittenClause } from './written-criterion.ts'

/** Changes that put something among the clauses of the base. */
export type Addition = 'add' | 'restrict' | 'add-document'

/** A change to one clause that stays in the set. */
export interface ChangeOfClause {
  readonly written: WrittenClause
  readonly change: Exclude<WrittenChange, Addition | 'remove'>
  /** Of the change in the supplement's record. */
  readonly pointer: string
}

/**
 * The clause as a supplement leaves it, with the change on record.
 * @returns the clause as it was, with the fault reported, where the change does not fit it
 */
export function changedClause(
  context: CompileContext,
  target: Clause,
  { written, change, pointer }: ChangeOfClause,
): Clause {
  const record: ClauseChange = { layer: context.id, change, former: asItStood(target) }
  const changes = [...(target.changes ?? []), record]
  switch (change) {
    case 'tighten':
    case 'relax':
      return target.form === 'comparison' && target.bands === undefined
        ? { ...changedLimits(context, target, written, change, pointer), changes }
        : misfit(context, target, pointer, `limit to ${change}`)
    case 'promote':
      return target.optional || target.information
        ? { ...target, optional: false, information: false, changes }
        : misfit(context, target, pointer, 'lower status to promote it from: it is already mandatory')
    case 'replace-method':
      return target.form === 'comparison' && written.method !== undefined
        ? {
            ...target,
            method: written.method,
            ...defined({ methodRequired: written['method-required'] === 'no' ? undefined : (true as const) }),
            changes,
          }
        : misfit(
            context,
            target,
            pointer,
            target.form === 'comparison'
              ? 'replacement method: add "method:" to the change'
              : 'method to replace',
          )
    case 'set-decision-rule':
      return isRuled(target) && written['decision-rule'] !== undefined
        ? {
            ...withRule(
              target,
              compileDecisionRule(context, written['decision-rule'], below(pointer, 'decision-rule')),
            ),
            changes,
          }
        : misfit(
            context,
            target,
            pointer,
            isRuled(target)
              ? 'new decision rule: add "decision-rule:" to the change'
              : 'value that a decision rule could be set for',
          )
    case 'set-frequency':
      return target.form === 'sampling' && written.sampling !== undefined
        ? {
            ...withoutOrigin(target),
            ...compileSampling(context, written.sampling, below(pointer, 'sampling')),
            ...originOf(written),
            layer: context.id,
            changes,
          }
        : misfit(
            context,
            target,
            pointer,
            target.form === 'sampling' ? 'new frequency: add "sampling:" to the change' : 'frequency to set',
          )
  }
}

/** Whether a value is held against limits somewhere in the clause. */
function isRuled(clause: Clause): boolean {
  return clause.form === 'group'
    ? clause.members.some(isRuled)
    : clause.form === 'comparison' && clause.bands === undefined
}

/** The rule of a group is that of all its members, whatever they had. */
function withRule<Changed extends Clause>(clause: Changed, decisionRule: DecisionRule): Changed {
  return clause.form === 'group'
    ? { ...clause, decisionRule, members: clause.members.map((member) => withRule(member, decisionRule)) }
    : { ...clause, decisionRule }
}

/** What a change remembers of a clause: its demand, without what made it. */
export function asItStood({ changes: _, ...clause }: Clause): Clause {
  return clause.form === 'group' ? { ...clause, members: clause.members.map(asItStood) } : clause
}

function misfit(context: CompileContext, target: Clause, pointer: string, lacks: string): Clause {
  context.fault(
    below(pointer, 'change'),
    'criterion-change-form',
    `the clause ${target.id} has no ${lacks}`,
    'choose a change that fits the clause, or remove it and add another',
  )
  return target
}

/**
 * Where the limits come from changes with them: the basis of the layer below says nothing on the new ones.
 */
function changedLimits(
  context: CompileContext,
  target: Comparison,
  written: WrittenClause,
  change: 'tighten' | 'relax',
  pointer: string,
): Comparison {
  const scale = limitScale(target.property, target.deviation)
  const limits = compileLimits(context, written, scale, pointer)
  if (limits.length === 0 && written.approval === undefined) {
    context.fault(
      pointer,
      'criterion-no-operator',
      `the change says ${change} but states no limit`,
      'add an operator such as "at-most: 5.0 %"',
    )
    return target
  }
  const { approval: _approval, ...rest } = withoutOrigin(target)
  const merged = mergeLimits(context, target.limits, limits, { change, pointer })
  checkTogether(context, merged, pointer)
  // An outer limit above a tightened one would hollow it out, so it stays only where the change says so.
  const approval =
    written.approval === undefined
      ? change === 'relax'
        ? target.approval
        : undefined
      : compileApproval(context, plainSides(merged, written), scale, pointer)
  return {
    ...rest,
    limits: merged,
    ...defined({
      approval,
      resolution: resolutionOf(written) ?? target.resolution,
      title: written.title ?? target.title,
    }),
    ...originOf(written),
    layer: context.id,
  }
}

/** The approval is checked against the sides that the merged limits have. */
function plainSides(limits: Comparison['limits'], written: WrittenClause): WrittenClause {
  const has = (operator: string) => (limits.some((limit) => limit.operator === operator) ? 'yes' : undefined)
  return {
    ...written,
    ...defined({
      'at-least': written['at-least'] ?? has('at-least'),
      'at-most': written['at-most'] ?? has('at-most'),
    }),
  }
}
