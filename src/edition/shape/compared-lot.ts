/** A lot as the comparison of producer and agency takes it, and the site's table of precision. */
import type { ComparedLot } from '../../core/agency/pairs.ts'
import { type PrecisionRow, precisionRow } from '../../core/agency/precision.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import { kept } from '../../core/measure/kept.ts'
import type { Result } from '../../core/result/result.ts'
import type { Lot, Site } from '../../records/schema/loaded-records.ts'
import type { LotEntry } from './edition.ts'

/** The governing set is that of the lot's first verdict, as everywhere. */
export function comparedLot(
  { id, number, sampled, record, results, verdicts, withdrawn, class: claimed }: LotEntry,
  criteria: ReadonlyMap<string, Criterion>,
): ComparedLot {
  const [governing] = verdicts
  return {
    id,
    number,
    sampled,
    results,
    statedKind: (result) => entryOf(record, result)?.kind,
    withdrawn,
    class: governing?.class ?? claimed ?? null,
    criterion: governing === undefined ? undefined : criteria.get(governing.criterion),
  }
}

/** The record's entry that a result of the agency comes from. */
export function entryOf(
  { verification = [] }: Pick<Lot, 'verification'>,
  { sample, laboratory }: Pick<Result, 'sample' | 'laboratory'>,
): NonNullable<Lot['verification']>[number] | undefined {
  return verification.find((one) => one.sample === sample && one.laboratory === laboratory)
}

const tables = new WeakMap<object, { readonly rows: readonly PrecisionRow[] }>()

/** The site's rows of precision as numbers, read once. */
export function precisionOf({ precision }: Pick<Site, 'precision'>): readonly PrecisionRow[] {
  if (precision === undefined) return []
  return kept(tables, precision, () => ({ rows: precision.flatMap((row) => precisionRow(row) ?? []) })).rows
}
