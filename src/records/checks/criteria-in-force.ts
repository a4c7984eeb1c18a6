/** Which of the listed criteria hold for what a source makes. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { inForce, type Moment } from '../../core/measure/moment.ts'
import type { Records } from '../records.ts'
import type { Source } from '../schema/loaded-records.ts'

type Listing = Pick<Records, 'site' | 'criteria'>

/**
 * The listed criteria in force for what a source makes on a day, the governing one first.
 * @param produced last day of the production
 */
export function criteriaInForce(records: Listing, source: Source, produced: Moment): Criterion[] {
  return fittingCriteria(records, source, listedCriteria(records, source, produced))
}

/** Each set once, as far as it is for the source's kind of material. */
export function fittingCriteria(
  { criteria }: Pick<Listing, 'criteria'>,
  { kind }: Source,
  sets: readonly string[],
): Criterion[] {
  return [...new Set(sets)]
    .flatMap((set) => criteria.get(set) ?? [])
    .filter((criterion) => criterion.kinds.some((fits) => fits === kind))
}

/** The site's, or those of the source that were in force when the lot was made. */
export function listedCriteria(
  { site }: Pick<Listing, 'site'>,
  { criteria }: Source,
  produced: Moment,
): readonly string[] {
  return criteria === undefined
    ? site.criteria
    : criteria.filter((entry) => inForce(entry, produced)).map((entry) => entry.set)
}
