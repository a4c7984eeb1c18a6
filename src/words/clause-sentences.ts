/**
 * One English sentence that says what a compiled clause asks, so that a reader can proof-read the record
 * against the standard.
 */
import { clauseTitle } from './clause-titles.ts'
import type { Clause, Comparison, Criterion, DecisionRule, Group } from '../core/criteria/criterion.ts'
import { printedUnits } from './as-written.ts'
import { originWords } from './clause-origins.ts'
import { bandsInWords, demandWords, statisticSubject } from './clause-demands.ts'
import { UNIFORMITY_RESOLUTION } from '../core/judging/deviation.ts'
import { isSameRule, rulesByDoubt } from '../core/criteria/decision-rule.ts'
import { limitsByClass } from './limits.ts'
import { listWords } from './sentences.ts'
import { premisesWords } from './premises.ts'
import { KINDS } from '../core/measure/units.ts'

/** @param conditionTitle a reader's name of a condition */
export function clauseSentence(
  clause: Clause,
  criterion: Criterion,
  conditionTitle: (id: string) => string,
): string {
  const scope = [forWhom(clause), whenWords(clause)].filter((part) => part !== '')
  const body = bodyWords(clause, criterion, conditionTitle)
  const sentence = [...scope, body].join(', ')
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}${statusWords(clause)}${ruleWords(clause.decisionRule, criterion)}${limitOrigin(clause, criterion)}.`
}

function bodyWords(clause: Clause, criterion: Criterion, conditionTitle: (id: string) => string): string {
  switch (clause.form) {
    case 'group':
      return groupWords(clause, criterion, conditionTitle)
    case 'comparison':
      return comparisonWords(clause, criterion, conditionTitle)
    default:
      return demandWords(clause)
  }
}

function forWhom(clause: Clause): string {
  const classes =
    clause.classes === undefined
      ? ''
      : `for class${clause.classes.length === 1 ? '' : 'es'} ${listWords(clause.classes, 'and')}`
  const kinds =
    clause.kinds === undefined
      ? ''
      : `for ${listWords(
          clause.kinds.map((kind) => kind.replaceAll('-', ' ')),
          'and',
        )}`
  return [classes, kinds].filter((part) => part !== '').join(' and ')
}

function whenWords({ when }: Clause): string {
  return when === undefined ? '' : `where ${premisesWords(when, limitsByClass)}`
}

function groupWords(group: Group, criterion: Criterion, conditionTitle: (id: string) => string): string {
  const members = group.members.map((member) => {
    const sentence = clauseSentence(
      { ...member, ...ownRule(member, group), basis: undefined, setBy: undefined },
      criterion,
      conditionTitle,
    )
    return `(${member.id}) ${sentence.slice(0, -1)}`
  })
  return `${group.combine === 'any-of' ? 'at least one of these must hold' : 'all of these must hold'}: ${members.join('; ')}`
}

function comparisonWords(
  clause: Comparison,
  criterion: Criterion,
  conditionTitle: (id: string) => string,
): string {
  const { title: _own, ...untitled } = clause
  const what = subject(
    clause,
    clauseTitle({ ...untitled, deviation: undefined, statistic: undefined }, conditionTitle),
  )
  if (clause.bands !== undefined) return `${what} is classified without a limit: ${bandsInWords(clause)}`
  if (clause.statistic?.of === 'variability')
    return `the variability of ${what} over up to ${clause.statistic.count} results is reported; no limit`
  if (clause.limits.every((limit) => limit.operator === 'report')) return `${what} must be reported; no limit`
  // A subject that ends in an inserted clause closes it with a comma.
  const comma = clause.statistic?.of === 'variables' ? ',' : ''
  return `${statisticSubject(clause, what)}${comma} must be ${limitsByClass(clause.limits)}${resolutionWords(clause, clause.decisionRule ?? criterion.decisionRule)}${severalWords(clause)}${approvalWords(clause)}${deemedWords(clause)}${methodWords(clause)}${countedWords(clause)}`
}

function subject({ deviation }: Comparison, title: string): string {
  if (deviation === undefined) return title
  const measure = deviation.relative ? ', as a percentage of it,' : ''
  const references = { declared: 'the declared value', control: 'the control' }
  const reference =
    deviation.from === 'preceding'
      ? `the mean of up to ${deviation.count} preceding results`
      : references[deviation.from]
  return `the deviation of ${title} from ${reference}${measure}`
}

function deemedWords({ deemedBy }: Comparison): string {
  return deemedBy === undefined
    ? ''
    : `; without a result it counts as met where ${premisesWords(deemedBy, limitsByClass)}`
}

function methodWords({ method, methodRequired }: Comparison): string {
  return methodRequired === true && method !== undefined ? `; only results by ${method} count` : ''
}

/** Which results count, where not all do. */
function countedWords({ from, duty }: Comparison): string {
  const readings = from === undefined ? '' : '; only results computed from the readings of specimens count'
  return duty === undefined ? readings : `${readings}; every ${duty} sample is judged for itself`
}

function resolutionWords(clause: Comparison, rule: DecisionRule): string {
  const quantity = Object.values(clause.limits[0]?.byClass ?? {})[0]?.[0]
  const uniformity =
    clause.deviation?.from === 'preceding' && (quantity?.kind === 'fraction' || quantity?.kind === 'points')
  if (
    clause.resolution === 'none' ||
    clause.statistic?.of === 'variables' ||
    (rulesByDoubt(rule) && clause.statistic === undefined)
  )
    return ', without rounding'
  if (clause.statistic !== undefined && ['attributes', 'tolerance'].includes(clause.statistic.of)) return ''
  const step = clause.resolution ?? (uniformity ? UNIFORMITY_RESOLUTION : undefined)
  if (step === undefined) return ', after rounding to the digits of the limit'
  const unit = quantity?.unit ?? KINDS.ratio.stored
  return `, after rounding to the nearest ${step}${unit === '' ? '' : ` ${printedUnits(unit)}`}`
}

function severalWords({ several }: Comparison): string {
  return several === 'worst' ? '' : `; of several results, the ${several} counts`
}

function approvalWords({ approval }: Comparison): string {
  if (approval === undefined) return ''
  const classes = approval.classes === undefined ? '' : ` for class ${listWords(approval.classes, 'and')}`
  const by = approval.by === 'declaration' ? 'where the source declares its value' : 'by approval'
  return `; ${by}${classes} ${limitsByClass([approval.limit])}, on evidence: ${approval.evidence}`
}

function statusWords(clause: Clause): string {
  return `${clause.optional ? '; optional, judged only when requested' : ''}${clause.information ? '; for information, never part of the verdict' : ''}`
}

/** What a member takes from its group is said of the group. */
function ownRule(member: Clause, group: Group): { decisionRule: DecisionRule | undefined } {
  return {
    decisionRule: isSameRule(member.decisionRule, group.decisionRule) ? undefined : member.decisionRule,
  }
}

/** A clause's own rule; the set's stands with the set. */
function ruleWords(rule: DecisionRule | undefined, { decisionRule: ofSet }: Criterion): string {
  if (rule === undefined || isSameRule(rule, ofSet)) return ''
  if (rule.rule === 'as-specified') return '; decision rule: as specified'
  const words =
    rule.rule === 'guarded'
      ? `guarded by ${rule.k} standard uncertainties`
      : `probability of conformity at least ${rule.p}`
  return `; decision rule: ${words}, ${rule.agreedIn === undefined ? 'not agreed in writing, so judged as specified' : `agreed in ${rule.agreedIn}`}`
}

function limitOrigin(clause: Clause, criterion: Criterion): string {
  const origin = originWords(clause, criterion)
  if (origin !== null) return `; limit ${origin}`
  const { setBy } = clause
  if (setBy?.user !== undefined) return `; limit set by the user: ${setBy.user}`
  return setBy?.study === undefined ? '' : `; limit set by the study ${setBy.study}`
}
