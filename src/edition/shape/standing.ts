/** State and verdict of a lot in one, as every list, page and data file gives them. */
import { statedStanding, verdictStanding } from '../../core/criteria/verdict-standing.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { defined } from '../../core/measure/defined.ts'
import type { AwaitedTest } from '../../core/result/awaited-test.ts'
import { type LotStanding, lotStanding, type NamedTest } from '../../words/standing.ts'
import { conditionTitle } from './condition-title.ts'
import type { Edition, ListedLot } from './edition.ts'

/** What names a condition. */
export type NamesConditions = Pick<Edition, 'conditions' | 'announcedConditions'>

/** Under one set, else under the governing one. */
export function standingOf(edition: NamesConditions, lot: ListedLot, criterion?: string): LotStanding {
  const judged = judgedUnder(lot, criterion)
  return lotStanding({
    state: lot.state,
    outcome: judged?.outcome ?? null,
    ...(judged && statedStanding(judged)),
    ...defined({ withdrawn: lot.withdrawn }),
    awaited: lot.awaited.map((test) => namedTest(edition, test)),
  })
}

/** Under a set that the lot is not on record with, from its verdict there. */
export function standingUnder(edition: NamesConditions, lot: ListedLot, verdict: Verdict): LotStanding {
  return lotStanding({
    state: lot.state,
    outcome: verdict.outcome,
    ...verdictStanding(verdict),
    ...defined({ withdrawn: lot.withdrawn }),
    awaited: lot.awaited.map((test) => namedTest(edition, test)),
  })
}

/** The same for a lot by its id; undefined for one that is not in the edition. */
export function standingOfId(
  edition: NamesConditions & Pick<Edition, 'lots'>,
  id: string,
): LotStanding | undefined {
  const lot = edition.lots.get(id)
  return lot && standingOf(edition, lot)
}

/** Undefined where the lot is not judged under the set. */
function judgedUnder({ outcomes }: ListedLot, criterion?: string): ListedLot['outcomes'][number] | undefined {
  return criterion === undefined
    ? outcomes[0]
    : outcomes.find((candidate) => candidate.criterion === criterion)
}

/** Members of a data file: beside the state and the outcome, so that neither is taken for the whole. */
export interface StandingData {
  readonly state: ListedLot['state']
  readonly outcome: Outcome | null
  /** State and outcome in words. */
  readonly standing: string
  /** When the next result is due; null where none is. */
  readonly due: string | null
  /** Since when the longest missing result is overdue; null where none is. */
  readonly overdueSince: string | null
}

export function standingData(edition: NamesConditions, lot: ListedLot): StandingData {
  return {
    state: lot.state,
    outcome: judgedUnder(lot)?.outcome ?? null,
    standing: standingOf(edition, lot).text,
    ...awaitedData(lot),
  }
}

function awaitedData({ awaited }: ListedLot): Pick<StandingData, 'due' | 'overdueSince'> {
  return {
    due: awaited.find(({ overdueSince }) => overdueSince === undefined)?.due.text ?? null,
    overdueSince: awaited.flatMap(({ overdueSince }) => overdueSince ?? [])[0]?.text ?? null,
  }
}

/** An index at another condition than the standard's is never named without it. */
export function namedTest(edition: NamesConditions, test: AwaitedTest): NamedTest {
  const standard = edition.conditions.get(test.condition)?.standing === 'standard'
  return {
    ...test,
    conditionName: standard ? null : `modified (${conditionTitle(edition, test.condition)})`,
  }
}
