/** When a lot's results became known, and since when it has not met: what its shipments are held against. */
import { heldSince, knownAges, type LotOverTime } from '../../core/checks/on-shipping.ts'
import { lateRoutes } from '../../core/criteria/late-routes.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { kept } from '../../core/measure/kept.ts'
import { type Moment, momentOfDay } from '../../core/measure/moment.ts'
import { observationsOf } from '../../core/result/observation.ts'
import type { Records } from '../../records/load.ts'
import { judgeLot, type JudgedLot } from './judge-lot.ts'
import type { SourceState } from './source-state.ts'

interface Place {
  readonly records: Records
  readonly state: SourceState
  /** The lot's place in `state.lots`. */
  readonly place: number
  /** The verdicts that the lot stands with, and the day they are of: today's, but for a withdrawn lot. */
  readonly stands: Pick<JudgedLot, 'asOf' | 'verdicts'>
}

/**
 * @param judged the lot today
 * @param shipped whether anything left of it: the past of a lot that nothing left of is judged for nobody
 */
export function lotOverTime(
  at: Place,
  judged: JudgedLot,
  revisions: LotOverTime['revisions'],
  shipped: 'shipped' | 'not-shipped',
): LotOverTime {
  const past = shipped === 'shipped' && isFailed(at.stands.verdicts[0]) ? pastOf(at) : NO_FAILURE
  return { ages: knownAges(judged), revisions, ...past }
}

type Past = Pick<LotOverTime, 'failed' | 'failing'>

const NO_FAILURE: Past = { failed: null, failing: [] }

/** Judging is dear, so that the days are gone through from the newest, and no further than the first without. */
function pastOf({ records, state, place, stands }: Place): Past {
  const days = changingDays(state, place, stands.asOf)
  const judged = new Map<number, JudgedLot>()
  const verdictOn = (day: Moment) =>
    kept(judged, day.day, () => judgeLot(records, state, place, day)).verdicts[0]
  const failed = heldSince(days, (day) => isFailed(verdictOn(day)))
  if (failed === null) return NO_FAILURE
  const failing = failingClauses(stands.verdicts[0]).map((clause) => ({
    clause,
    known: heldSince(days, (day) => failingClauses(verdictOn(day)).includes(clause)),
  }))
  return { failed, failing }
}

/** Not where a report is only late: the result may still meet what is not met so far. */
function isFailed(verdict: Verdict | undefined): boolean {
  return verdict?.outcome === 'does-not-meet' && 0 < failingClauses(verdict).length
}

/** Clauses that are not met, whatever an overdue result may be. */
function failingClauses(verdict: Verdict | undefined): string[] {
  return (verdict?.clauses ?? [])
    .filter(
      (clause) =>
        clause.outcome === 'does-not-meet' && !clause.information && lateRoutes(clause).length === 0,
    )
    .map(({ id }) => id)
}

/** Days by a date on which a result of the lot came or changed. */
function changingDays({ lots }: Pick<SourceState, 'lots'>, place: number, asOf: Moment): Moment[] {
  const lot = lots[place]
  const days = lot === undefined ? [] : observationsOf(lot).flatMap(({ from, until = from }) => [from, until])
  return [...new Set(days)]
    .filter((day) => day <= asOf.day)
    .sort((a, b) => a - b)
    .map((day) => momentOfDay(day, asOf.sortedAt))
}
