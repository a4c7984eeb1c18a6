/** Which criteria a lot is judged under: those listed, those that its record invokes, those that a project asks for. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { type Requested, requestedBy } from '../../core/evidence/requested.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { inForce, isBy, type Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/load.ts'
import type { Invoked, Lot, Source } from '../../records/schema/loaded-records.ts'

export interface CriteriaOfLot {
  /** Those whose kinds of material apply, the governing one first, invoked ones last. */
  readonly criteria: readonly Criterion[]
  /** Ids of those that nothing but a project of a shipment asks for. */
  readonly ofProjects: readonly string[]
  /** Optional clauses that projects ask for, by set. */
  readonly requested: Requested
}

/**
 * @param id of the lot
 * @param asOf calendar date; what was shipped later invokes nothing yet
 */
export function criteriaOfLot(
  records: Records,
  source: Source,
  [id, lot]: readonly [string, Lot],
  asOf: Moment,
): CriteriaOfLot {
  const own = [...listed(records, source, lot.produced.to), ...(lot.criteria ?? []).map(({ set }) => set)]
  const asked = askedByProjects(records, source, [id, lot], asOf)
  const ofProjects = asked.map(({ set }) => set).filter((set) => !own.includes(set))
  const criteria = fitting(records, source, [...own, ...ofProjects])
  return { criteria, ofProjects, requested: requestedBy(asked) }
}

/**
 * The listed criteria in force for what a source makes on a day, the governing one first.
 * @param produced last day of the production
 */
export function criteriaInForce(records: Records, source: Source, produced: Moment): Criterion[] {
  return fitting(records, source, listed(records, source, produced))
}

/** Each set once, as far as it is for the source's kind of material. */
function fitting(records: Records, { kind }: Source, sets: readonly string[]): Criterion[] {
  return [...new Set(sets)]
    .flatMap((set) => records.criteria.get(set) ?? [])
    .filter((criterion) => criterion.kinds.some((fits) => fits === kind))
}

/** The site's, or those of the source that were in force when the lot was made. */
function listed({ site }: Records, { criteria }: Source, produced: Moment): readonly string[] {
  return criteria === undefined
    ? site.criteria
    : criteria.filter((entry) => inForce(entry, produced)).map((entry) => entry.set)
}

function askedByProjects(
  { site: { projects = [] } }: Records,
  source: Source,
  [id, lot]: readonly [string, Lot],
  asOf: Moment,
): Invoked[] {
  if (projects.length === 0) return []
  const shared = (source.shipments ?? []).filter(({ lots }) => lots.includes(nameInSource(id)))
  const shipped = [...(lot.shipments ?? []), ...shared].filter(({ date }) => isBy(date, asOf))
  const to = new Set(shipped.flatMap(({ project }) => project?.trim() ?? []))
  return projects.filter(({ name }) => to.has(name.trim())).flatMap(({ criteria }) => criteria)
}
