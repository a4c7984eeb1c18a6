/** An agency's results of a source beside its producer's, computed when somebody asks. */
import { kindOf, isAgencys } from '../../core/agency/pairs.ts'
import { type SourceAgency, sourceAgency } from '../../core/agency/source-agency.ts'
import type { TakenSample } from '../../core/agency/verification-status.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/load.ts'
import type { Source } from '../../records/schema/loaded-records.ts'
import { comparedLot, entryOf, precisionOf } from '../shape/compared-lot.ts'
import type { LotEntry, SourceEntry } from '../shape/edition.ts'

/**
 * What compares them; for all lots it is computed once.
 * @param lots in order of sampling, with what is known by the date
 * @returns a function that takes which lots may be shown, all without it
 */
export function agencyOf(
  source: Source,
  lots: readonly LotEntry[],
  { records, asOf }: { readonly records: Pick<Records, 'site' | 'criteria'>; readonly asOf: Moment },
): SourceEntry['agency'] {
  const compare = (shown: readonly LotEntry[]) =>
    sourceAgency({
      asOf,
      lots: shown.map((lot) => comparedLot(lot, records.criteria)),
      samples: shown.flatMap(takenSamples),
      plan: source['verification-plan'] ?? [],
      precision: precisionOf(records.site),
    })
  let whole: SourceAgency | undefined
  return (isShown) => {
    if (isShown !== undefined) return compare(lots.filter(({ id }) => isShown(id)))
    whole ??= compare(lots)
    return whole
  }
}

/** Each agency sample with a result on record, once. */
function takenSamples({ id, sampled, record, results }: LotEntry): TakenSample[] {
  const bySample = Map.groupBy(results.filter(isAgencys), ({ sample }) => sample)
  return [...bySample].flatMap(([sample, [result]]) => {
    if (result === undefined) return []
    const entry = entryOf(record, result)
    const own = record.samples.find((one) => one.id === sample)
    const kind = kindOf(result, { statedKind: () => entry?.kind })
    const taken = entry?.taken ?? own?.taken?.to ?? own?.on ?? sampled
    return [{ kind, lot: id, taken, sampler: entry?.sampler, custody: entry?.custody }]
  })
}
