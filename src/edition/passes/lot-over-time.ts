/** When a lot's results became known, and since when it has not met: what its shipments are held against. */
import { heldSince, knownAges, type LotOverTime } from '../../core/checks/on-shipping.ts'
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
  const fails = shipped === 'shipped' && judged.verdicts[0]?.outcome === 'does-not-meet'
  return { ages: knownAges(judged), revisions, failed: fails ? failedSince(at) : null }
}

/** Judging is dear, so that the days are gone through from the newest, and no further than the first without. */
function failedSince({ records, state, place }: Place): Moment | null {
  const days = changingDays(state, place)
  return heldSince(
    days,
    (day) => judgeLot(records, state, place, day).verdicts[0]?.outcome === 'does-not-meet',
  )
}

/** Days by the as-of date on which a result of the lot came or changed. */
function changingDays({ lots, asOf }: SourceState, place: number): Moment[] {
  const lot = lots[place]
  const days = lot === undefined ? [] : observationsOf(lot).flatMap(({ from, until = from }) => [from, until])
  return [...new Set(days)]
    .filter((day) => day <= asOf.day)
    .sort((a, b) => a - b)
    .map((day) => momentOfDay(day, asOf.sortedAt))
}
