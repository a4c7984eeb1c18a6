/** Pass 1: one lot's record to its results and what it states of its own accord. */
import type { LotBackground } from '../../core/evidence/lot-evidence.ts'
import { requestedBy } from '../../core/evidence/requested.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Duty } from '../../core/measure/duty.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { earliestOf, isBy, type Moment } from '../../core/measure/moment.ts'
import { endsOfSampling, regularSamples } from '../../core/mortar/regular-samples.ts'
import type { PlannedTest, UnmadeResult } from '../../core/result/result.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { resultsOverTime } from './lot-results.ts'

export interface ComputedLot extends LotBackground {
  readonly record: Lot
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

/** @param records with the lot's source among them */
export function computedLot(id: string, record: Lot, records: Records, asOf: Moment): ComputedLot {
  return {
    id,
    sampled: sampledAt(record),
    record,
    class: record.class ?? records.sources.get(sourceOf(id))?.class ?? null,
    tonnes: record.quantity.value,
    from: record.produced.from,
    ...resultsOverTime(id, record, records, asOf),
    ...withdrawal(record, asOf),
    ...defined({ takenAt: regularSamples(record) }),
    ...ofLot(record),
  }
}

/**
 * Sampling time that orders a lot in its history: end of the producer's first composite, without one of the first
 * regular sample, else of production.
 */
export function sampledAt({ samples, produced }: Pick<Lot, 'samples' | 'produced'>): Moment {
  const ends = (duty: Duty) => endsOfSampling(samples, duty).map(([, end]) => end)
  return earliestOf(ends('composite')) ?? earliestOf(ends('regular')) ?? produced.to
}

/** Where the lot was withdrawn by the date; a later line on it, which only corrects the first, changes nothing. */
function withdrawal({ revisions = [] }: Lot, asOf: Moment): Pick<LotBackground, 'withdrawn'> {
  const line = revisions.find(({ withdrawn, date }) => withdrawn === 'yes' && isBy(date, asOf))
  return line === undefined ? {} : { withdrawn: line.date }
}

function ofLot(record: Lot): Pick<LotBackground, 'classUnder' | 'facts' | 'documents' | 'requested'> {
  return defined({
    requested: record.criteria && requestedBy(record.criteria),
    classUnder: record['class-under'],
    facts: record.facts,
    documents: record.documents,
  })
}
