/** How a lot's results are computed and judged from today's records, step by step. */
import { isNeutral } from '../../core/criteria/combining.ts'
import { setName } from '../../core/criteria/criterion.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { property } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { Result } from '../../core/result/result.ts'
import { fullSentence } from '../../words/sentences.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { quantity, resultText } from '../../words/units.ts'
import type { WordedClause, WordedVerdict } from '../../words/worded-verdict.ts'
import { type WorkingLine, workingLines } from '../../words/working-lines.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { wordsOfVerdict } from '../shape/verdict-words.ts'
import { plainNumber } from '../../words/numbers.ts'

export interface WorkingView {
  /** Name and version of the program that computed it. */
  readonly program: string
  readonly results: readonly Working[]
}
export interface Working {
  readonly name: string
  readonly value: string
  readonly lines: readonly PrintedLine[]
}
/** A step of the computation with its value, or what a set makes of the result with its outcome. */
export interface PrintedLine {
  readonly label: string
  readonly text: string
  readonly note: string | null
  readonly value: string
  readonly outcome: Outcome | null
}

type Seen = Pick<Edition, 'criteria' | 'conditions' | 'announcedConditions' | 'program' | 'site'>

/** @returns null where there is nothing to show */
export function workingView(
  edition: Seen,
  { results, verdicts }: Pick<LotEntry, 'results' | 'verdicts'>,
): WorkingView | null {
  const worked = workedResults(results.filter((result) => result.role === 'producer'))
  if (worked.length === 0) return null
  const worded = verdicts.map((verdict) => wordsOfVerdict(edition, verdict))
  return {
    program: edition.program,
    results: worked.map((result) => ({
      name: nameOf(result, edition),
      value: resultText(result, edition.site.units),
      lines: [
        ...workingLines(result.working(), edition.site.units).map((line) =>
          printedStep(line, edition.site.units),
        ),
        ...worded.flatMap((verdict) => judgementLines(result, verdict, edition)),
      ],
    })),
  }
}

/**
 * Indices first. An index's working holds the readings of both mortars, so that a strength or resistivity
 * beside it needs none of its own.
 */
function workedResults(results: readonly Result[]): Result[] {
  const [indices, others] = [results.filter(isIndex), results.filter((result) => !isIndex(result))]
  const indexed = new Set(
    indices
      .filter(({ age }) => age !== undefined)
      .map((index) => testOf({ ...index, property: RATIO_OF[index.property] })),
  )
  return [...indices, ...others].filter(
    (result) => result.working().length > 0 && !indexed.has(testOf(result)),
  )
}

function isIndex(result: Result): boolean {
  return property(result.property).nature === 'index'
}

function testOf({
  sample,
  condition,
  age,
  property: key,
}: Pick<Result, 'sample' | 'condition' | 'age'> & { readonly property?: string | undefined }): string {
  return [sample, condition, age?.hours, key].join('|')
}

function nameOf({ property: key, condition, age }: Result, edition: Seen): string {
  return [property(key).title, condition && conditionTitle(edition, condition), age?.text]
    .filter((part) => part !== undefined)
    .join(', ')
}

/** Figures are in the units of the site already. */
function printedStep(
  { label, expression, value, unit, decimals, source }: WorkingLine,
  units: UnitSystem,
): PrintedLine {
  return {
    label,
    text: expression,
    note: source ?? null,
    value: value === undefined ? '' : quantity(value, decimals ?? 2, unit ?? '', units),
    outcome: null,
  }
}

/** What a set makes of a result: rounding, limit and outcome. */
function judgementLines(result: Result, { criterion, clauses }: WordedVerdict, edition: Seen): PrintedLine[] {
  const set = edition.criteria.get(criterion)
  return [...everyClauseOutcome<WordedClause>(clauses)]
    .filter(
      (clause) => clause.clauses === undefined && clause.result === result.key && !isNeutral(clause.outcome),
    )
    .map((clause) => ({
      label: set === undefined ? criterion : setName(set),
      text: fullSentence(clause.reason),
      note: doubtNote(clause),
      value: '',
      outcome: clause.outcome,
    }))
}

/** The doubt of an outcome and the uncertainty that this rests on. */
function doubtNote({ doubt, uncertainty }: WordedClause): string | null {
  const parts = [
    doubt,
    uncertainty && `standard uncertainty ${plainNumber(uncertainty.u, 1)}: ${uncertainty.basis}`,
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? null : fullSentence(parts.join('; '))
}
