/** Audit check: a sample that is not judged would not meet the limit that the judged one meets. */
import type { StatedLimit } from '../criteria/limits-for-class.ts'
import {
  type ClauseOutcome,
  everyClauseOutcome,
  type OtherSample,
  type Verdict,
} from '../criteria/verdict.ts'
import { defined } from '../measure/defined.ts'
import type { PropertyKey } from '../measure/properties.ts'
import { type Finding, warningOn } from './finding.ts'

interface Failure {
  readonly property: PropertyKey
  readonly other: OtherSample
  readonly criterion: string
  readonly clause: ClauseOutcome
}

/**
 * A warning for each result on a sample that no clause judges and that would not meet the limit of one.
 * @param lot id as SOURCE/LOT, and its verdicts on a date
 * @returns one for each result, with all clauses that it would not meet; clauses for information are left out
 */
export function otherSampleFindings(lot: {
  readonly id: string
  readonly verdicts: readonly Verdict[]
}): Finding[] {
  const failures = lot.verdicts.flatMap(({ criterion, clauses }) =>
    [...everyClauseOutcome(clauses)].flatMap((clause) => failuresOf(criterion, clause)),
  )
  return [...Map.groupBy(failures, ({ other }) => other.result)].map(([key, own]) =>
    failing(lot.id, key, own),
  )
}

function failuresOf(criterion: string, clause: ClauseOutcome): Failure[] {
  const { property, others = [], information } = clause
  if (property === undefined || information) return []
  return others.map((other) => ({ property, other, criterion, clause }))
}

/** The set that another one rests on, where it holds the same clause. @param layer that set the limit */
function takenFrom(layer: string, id: string, others: readonly Failure[]): string | undefined {
  return others.find(
    ({ criterion, clause }) => criterion === layer && clause.id === id && clause.limit?.layer === layer,
  )?.criterion
}

function statedOf({ operator, written }: StatedLimit): StatedLimit {
  return { operator, written }
}

function failing(lot: string, key: string, failures: readonly Failure[]): Finding {
  const [first] = failures as [Failure, ...Failure[]]
  const { sample, sampleKind, value, unit, decimals } = first.other
  const clauses = failures.flatMap(({ criterion, clause: { id, limit } }) => {
    if (limit === null) return []
    const from = takenFrom(
      limit.layer,
      id,
      failures.filter((one) => one.criterion !== criterion),
    )
    return [{ criterion, clause: id, limit: statedOf(limit), ...defined({ from }) }]
  })
  const params = { lot, property: first.property, sample, sampleKind, value, unit, decimals, clauses }
  return warningOn(lot, { code: 'other-sample-fails', params }, key)
}
