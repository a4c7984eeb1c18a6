/** Which criteria a lot is judged under: those listed, those that its record invokes, those that a project asks for. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { type Requested, requestedBy } from '../../core/evidence/requested.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { fittingCriteria, listedCriteria } from '../../records/checks/criteria-in-force.ts'
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
  const own = [
    ...listedCriteria(records, source, lot.produced.to),
    ...(lot.criteria ?? []).map(({ set }) => set),
  ]
  const asked = askedByProjects(records, source, [id, lot], asOf)
  const ofProjects = asked.map(({ set }) => set).filter((set) => !own.includes(set))
  const criteria = fittingCriteria(records, source, [...own, ...ofProjects])
  return { criteria, ofProjects, requested: requestedBy(asked) }
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
