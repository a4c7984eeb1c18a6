/** Indices, uncertainty, validity and verdict of the lot on the bench, as elements. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { Result } from '../../core/result/result.ts'
import { propertyWords } from '../../words/property-names.ts'
import { basisWords } from '../../words/uncertainty.ts'
import { leveledIntervalWords } from '../../words/interval-words.ts'
import { nextSpecimensWords } from '../../words/next-specimens.ts'
import { limitText } from '../../words/limits.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import { quantity, resultText } from '../../words/units.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { setOfVerdict, TRIAL_HEADING } from '../../words/outcomes.ts'
import { type WordedClause, wordedVerdict } from '../../words/worded-verdict.ts'
import { element, marked, outcomeElement, tableOf } from '../elements.ts'
import type { BenchJudged } from './read-bench.ts'

interface Shown {
  readonly judged: BenchJudged
  readonly criterion: Criterion | undefined
  readonly conditionTitle: (id: string) => string
  readonly units: UnitSystem
}

/** The verdict alone, in a line: what is read out when it changes. */
export function headlineOf({ judged, criterion }: Pick<Shown, 'judged' | 'criterion'>): Node {
  if (criterion === undefined)
    return document.createTextNode('Choose a specification to judge the lot under.')
  const { standing } = judged
  return standing === undefined
    ? document.createTextNode('This specification is not for the material of the source.')
    : marked(standing.mark, [sentence(standing.brief)])
}

/** What the specimens that are still to be tested must carry. */
export function nextElements({ next }: BenchJudged): Node[] {
  return next
    .flatMap((specimens) => nextSpecimensWords(specimens))
    .map((text) => element('p', [unbroken(text)]))
}

/** Clauses and results below it. */
export function judgedElements(shown: Shown): Node[] {
  return [...verdictElements(shown), resultsElement(shown)]
}

function verdictElements({ judged, criterion, conditionTitle, units }: Shown): Node[] {
  const { verdict } = judged
  if (verdict === undefined || criterion === undefined) return []
  const worded = wordedVerdict(verdict, criterion, conditionTitle, units)
  return [
    ...(verdict.trial ? [element('p', [TRIAL_HEADING], 'trial')] : []),
    element('p', [setOfVerdict(verdict, criterion)], 'small'),
    ...worded.reasons.map((reason) => element('p', [unbroken(fullSentence(reason))])),
    tableOf(
      'Clauses',
      ['Clause', 'Limit', 'Outcome', 'Reason'],
      worded.clauses.flatMap((clause) => clauseRows(clause, 0)),
    ),
  ]
}

function clauseRows(clause: WordedClause, depth: number): (string | Node)[][] {
  return [
    [
      `${'– '.repeat(depth)}${clause.title}`,
      clause.limit === null ? '—' : limitText(clause.limit),
      outcomeElement(clause.outcome),
      unbroken(fullSentence(clause.reason)),
    ],
    ...(clause.clauses ?? []).flatMap((member) => clauseRows(member, depth + 1)),
  ]
}

function resultsElement({ judged, conditionTitle, units }: Shown): Node {
  return tableOf(
    'Results',
    ['Result', 'Value', 'Uncertainty', 'Valid'],
    judged.results.map(({ result, uncertainty }) => [
      resultTitle(result, conditionTitle),
      resultText(result, units),
      [
        ...(uncertainty === undefined
          ? []
          : [
              `u ${quantity(uncertainty.u, result.decimals + 1, result.unit, units)}, ${basisWords(uncertainty.basis)}`,
            ]),
        ...(result.interval === undefined ? [] : [leveledIntervalWords(result.interval, result.decimals)]),
      ].join('; ') || '—',
      [
        result.valid ? 'valid' : 'not valid',
        ...result.reasons.map((reason) => resultReasonIn(reason, units)),
      ].join('; '),
    ]),
  )
}

function resultTitle(result: Result, conditionTitle: (id: string) => string): string {
  const { property, condition, age, sample } = result
  return [
    sentence(propertyWords({ property })),
    ...(condition === undefined ? [] : [conditionTitle(condition)]),
    ...(age === undefined ? [] : [age.text]),
    `sample ${sample}`,
  ].join(', ')
}
