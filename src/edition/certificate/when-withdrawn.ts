/** What a withdrawn lot was: what its last document says, whatever became of other lots and of the records since. */
import { momentOfDay, type Moment, readMoment } from '../../core/measure/moment.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import type { IssuedDocument } from '../shape/document.ts'
import { outcomeChanges } from './compare-issued.ts'

/** A lot's verdicts, and what belongs to them. */
export type Judgement = Pick<JudgedLot, 'asOf' | 'verdicts' | 'ofProjects' | 'bestClass'>

/**
 * @param withdrawn the day
 * @param document the newest, null where it cannot be read: then the lot is what it was on the day before
 * @param judgedOn the lot as judged on a day
 * Note: another lot may have been withdrawn on the day of the document, before or after it, which no record tells:
 * the day before stands in where the document says what that day gives. Where neither does, since the record or a set
 * was altered, the outcomes are the document's all the same.
 */
export function whenWithdrawn(
  withdrawn: Moment,
  document: IssuedDocument | null,
  judgedOn: (asOf: Moment) => JudgedLot,
): Judgement {
  if (document === null) return judgedOn(dayBefore(withdrawn))
  const issued = readMoment(document.issued)
  const then = judgedOn(issued)
  if (outcomeChanges(document, then.verdicts).length === 0) return then
  const before = judgedOn(dayBefore(issued))
  if (outcomeChanges(document, before.verdicts).length === 0) return before
  return {
    asOf: then.asOf,
    verdicts: withStatedOutcomes(then.verdicts, document),
    ofProjects: then.ofProjects,
    bestClass: then.bestClass,
  }
}

function dayBefore({ day, sortedAt }: Moment): Moment {
  return momentOfDay(day - 1, sortedAt)
}

function withStatedOutcomes(
  verdicts: Judgement['verdicts'],
  { data }: IssuedDocument,
): Judgement['verdicts'] {
  const stated = [...(data.verdict === undefined ? [] : [data.verdict]), ...data.others]
  return verdicts.map((verdict) => {
    const own = stated.find(({ criterion }) => criterion === verdict.criterion)
    return own === undefined || own.outcome === verdict.outcome
      ? verdict
      : { ...verdict, outcome: own.outcome, decidedBy: own.decidedBy ?? [] }
  })
}
