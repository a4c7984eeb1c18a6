/** One English sentence that says what a compiled clause asks, so that a reader can proof-read the record against the standard. */
import { clauseTitle } from './clause-title.ts'
import { type Clause, type Comparison, type Criterion, type DecisionRule, EVERY_CLASS, type Group, type Limit } from './criterion.ts'
import { UNIFORMITY_RESOLUTION } from './deviation.ts'
import { limitWords, listWords } from './limit-words.ts'
import { propertyWords } from './select-result.ts'
import { KINDS } from './units.ts'

/** @param conditionTitle a reader's name of a condition */
export function clauseSentence(clause: Clause, criterion: Criterion, conditionTitle: (id: string) => string): string {
  const scope = [forWhom(clause), whenWords(clause)].filter((part) => part !== '')
  const body = clause.form === 'group' ? groupWords(clause, criterion, conditionTitle) : comparisonWords(clause, conditionTitle)
  const sentence = [...scope, body].join(', ')
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}${statusWords(clause)}${ruleWords(clause.decisionRule ?? criterion.decisionRule)}${originWords(clause, criterion)}.`
}

function forWhom(clause: Clause): string {
  const classes = clause.classes === undefined ? '' : `for class ${listWords(clause.classes, 'and')}`
  const kinds = clause.kinds === undefined ? '' : `for ${listWords(clause.kinds.map((kind) => kind.replaceAll('-', ' ')), 'and')}`
  return [classes, kinds].filter((part) => part !== '').join(' and ')
}

function whenWords({ when }: Clause): string {
  return when === undefined ? '' : `where ${propertyWords(when)} is ${listWords(when.limits.map(limitByClass), 'and')}`
}

function groupWords(group: Group, criterion: Criterion, conditionTitle: (id: string) => string): string {
  const members = group.members.map((member) => {
    const sentence = clauseSentence({ ...member, decisionRule: { rule: 'as-specified' }, basis: undefined, setBy: undefined }, { ...criterion, decisionRule: { rule: 'as-specified' } }, conditionTitle)
    return `(${member.id}) ${sentence.slice(0, -1)}`
  })
  return `${group.combine === 'any-of' ? 'at least one of these must hold' : 'all of these must hold'}: ${members.join('; ')}`
}

function comparisonWords(clause: Comparison, conditionTitle: (id: string) => string): string {
  const { title: _own, ...untitled } = clause
  const what = subject(clause, clauseTitle({ ...untitled, deviation: undefined }, conditionTitle))
  if (clause.limits.every((limit) => limit.operator === 'report')) return `${what} must be reported; no limit`
  const limits = listWords(clause.limits.filter((limit) => limit.operator !== 'report').map(limitByClass), 'and')
  return `${what} must be ${limits}${resolutionWords(clause)}${severalWords(clause)}${approvalWords(clause)}`
}

function subject({ deviation }: Comparison, title: string): string {
  if (deviation === undefined) return title
  const measure = deviation.relative ? ', in per cent of it,' : ''
  const reference = deviation.from === 'declared' ? 'the declared value' : `the mean of up to ${deviation.count} preceding results`
  return `the deviation of ${title} from ${reference}${measure}`
}

function limitByClass(limit: Limit): string {
  const classes = Object.entries(limit.byClass)
  return classes.map(([name, quantities]) => `${limitWords(limit.operator, quantities)}${name === EVERY_CLASS ? '' : ` for class ${name}`}`).join(', ')
}

function resolutionWords(clause: Comparison): string {
  const quantity = Object.values(clause.limits[0]?.byClass ?? {})[0]?.[0]
  const uniformity = clause.deviation?.from === 'preceding' && (quantity?.kind === 'fraction' || quantity?.kind === 'points')
  const step = clause.resolution ?? (uniformity ? UNIFORMITY_RESOLUTION : undefined)
  if (step === undefined) return ', compared at the digits of the limit'
  const unit = quantity?.unit ?? KINDS.ratio.stored
  return `, compared in steps of ${step}${unit === '' ? '' : ` ${unit}`}`
}

function severalWords({ several }: Comparison): string {
  return several === 'worst' ? '' : `; of several results the ${several} counts`
}

function approvalWords({ approval }: Comparison): string {
  if (approval === undefined) return ''
  const classes = approval.classes === undefined ? '' : ` for class ${listWords(approval.classes, 'and')}`
  return `; by approval${classes} ${limitByClass(approval.limit)}, on evidence: ${approval.evidence}`
}

function statusWords(clause: Clause): string {
  return `${clause.optional ? '; optional, judged only when asked for' : ''}${clause.information ? '; for information, never part of the verdict' : ''}`
}

function ruleWords(rule: DecisionRule): string {
  if (rule.rule === 'as-specified') return ''
  const words = rule.rule === 'guarded' ? `guarded by ${rule.k} standard uncertainties` : `probability of conformity at least ${rule.p}`
  return `; decision rule: ${words}, ${rule.agreedIn === undefined ? 'not agreed in writing, so judged as specified' : `agreed in ${rule.agreedIn}`}`
}

function originWords({ basis, setBy }: Clause, criterion: Criterion): string {
  if (basis !== undefined) return 'read' in basis ? `; limit read in ${sourceWords(basis.read, criterion)}` : `; limit from memory, to be confirmed: ${basis.memory}`
  if (setBy?.user !== undefined) return `; limit set by the user: ${setBy.user}`
  return setBy?.study === undefined ? '' : `; limit set by the study ${setBy.study}`
}

/** A code of the set's source list with what it stands for; other text as it is. */
function sourceWords(read: string, criterion: Criterion): string {
  const named = Object.hasOwn(criterion.sources, read) ? criterion.sources[read] : undefined
  return named === undefined ? read : `${read} (${named})`
}
