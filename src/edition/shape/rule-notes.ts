/** What is said once of a set whose decision rule cannot decide some of its clauses. */
import type { Comparison, Criterion } from '../../core/criteria/criterion.ts'
import { undecidedByRule } from '../../core/criteria/undecided-by-rule.ts'
import { isSameAge } from '../../core/measure/age.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { undecidedWords } from '../../words/rules.ts'
import { titlesOf } from '../../words/worded-verdict.ts'
import type { Edition } from './edition.ts'

/** Sentences without a full stop, one for each rule; none where every clause can be decided. */
export function ruleNotes(
  { laboratories }: Pick<Edition, 'laboratories'>,
  criterion: Criterion,
  conditionTitle: (id: string) => string,
): string[] {
  const stated = [...laboratories.values()].flatMap(({ repeatability = [] }) => repeatability)
  // A ratio of two mortars takes its uncertainty from earlier batches where none is stated.
  const isKnown = ({ property, condition, age }: Comparison) =>
    property in RATIO_OF ||
    stated.some(
      (entry) =>
        entry.property === property &&
        (entry.condition === undefined || entry.condition === condition) &&
        (entry.age === undefined || isSameAge(entry.age, age)),
    )
  const titleOf = titlesOf(criterion, conditionTitle)
  return undecidedByRule(criterion, isKnown).map(({ rule, clauses }) =>
    undecidedWords(
      rule,
      clauses.map(({ id }) => titleOf(id)),
    ),
  )
}
