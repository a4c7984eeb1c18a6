/** What judging may ask of a lot, taken out of its entry. */
import type { EvidenceLot } from '../../core/evidence/source-evidence.ts'
import { requestedBy } from '../../core/evidence/requested.ts'
import { defined } from '../../core/measure/defined.ts'
import { regularSamples } from '../../core/mortar/regular-samples.ts'
import type { LotEntry } from './edition.ts'

export function evidenceLot({ record, ...lot }: LotEntry): EvidenceLot {
  return defined({
    id: lot.id,
    number: lot.number,
    state: lot.state,
    class: lot.class ?? null,
    sampled: lot.sampled,
    from: record.produced.from,
    tonnes: record.quantity.value,
    results: lot.results,
    unmade: lot.unmade,
    planned: lot.planned,
    withdrawn: lot.withdrawn,
    takenAt: regularSamples(record),
    classUnder: record['class-under'],
    facts: record.facts,
    documents: record.documents,
    requested: record.criteria && requestedBy(record.criteria),
  })
}
