/** Clauses that name the study which set their limit: the reference, and whether the two still agree. */
import { type Comparison, everyClause } from '../../core/criteria/criterion.ts'
import { once } from '../../core/measure/once.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { type ScreenedRoute, screening } from '../../core/studies/screening/screening.ts'
import { checkReference, type AllRecords } from '../checks/references.ts'
import type { WrittenClause } from '../criteria/written-criterion.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { StudyRecord } from '../records.ts'
import type { CriterionRecord } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { type LimitFromStudy, limitFromStudy } from './limit-from-study.ts'
import { knownIndices } from './known-indices.ts'
import { screeningAsked } from './screening-asked.ts'

/** Routes of a screening study as known on a day; none of a study of another kind or with a fault. */
export type RoutesOf = (study: string) => readonly ScreenedRoute[]

/**
 * Each study is screened when a clause first asks.
 * @param asOf readings after it are left out; without it none is
 */
export function routesOf(studies: ReadonlyMap<string, StudyRecord>, asOf: Moment | undefined): RoutesOf {
  const known = new Map(
    [...studies].map(([id, study]) => [
      id,
      once(() => {
        const { indices } = knownIndices(study, asOf).indices
        // How firm the order of conditions is, no limit asks.
        return screening(indices, screeningAsked(study.record, { resamples: 0, chance: () => 0 }))
      }),
    ]),
  )
  return (id) => (studies.get(id)?.record.kind === 'screening' ? (known.get(id)?.() ?? []) : [])
}

/** @param id of the set; one with faults of its own has its references checked alone */
export function checkSetBy(
  [id, record]: readonly [string, CriterionRecord],
  all: AllRecords,
  routes: RoutesOf,
  report: FileReport,
): void {
  const places = [...writtenClauses(record.clauses ?? [], '/clauses', '')]
  const before = report.count()
  for (const { written, pointer } of places) checkStudyNamed(written, below(pointer, 'set-by'), all, report)
  if (before < report.count()) return
  for (const clause of everyClause(all.criteria.get(id)?.clauses ?? [])) {
    const study = all.studies.get(clause.setBy?.study ?? '')
    if (clause.form !== 'comparison' || clause.layer !== id || study === undefined) continue
    const found = limitFromStudy(
      clause,
      { record: study.record, routes: routes(clause.setBy?.study ?? '') },
      all.conditions.get(clause.condition ?? ''),
    )
    const place = places.find((one) => one.id === clause.id)
    if (found !== null && place !== undefined) warn(clause, found, place, report)
  }
}

interface Place {
  readonly id: string
  readonly written: WrittenClause
  readonly pointer: string
}

/** Every clause as written, with the id that it has or is given. */
function* writtenClauses(
  clauses: readonly WrittenClause[],
  pointer: string,
  group: string,
): Generator<Place> {
  for (const [index, written] of clauses.entries()) {
    const id = written.clause ?? `${group}-${index + 1}`
    const at = below(pointer, index)
    yield { id, written, pointer: at }
    for (const key of ['any-of', 'all-of'] as const)
      yield* writtenClauses(written[key] ?? [], below(at, key), id)
  }
}

function checkStudyNamed(
  { 'set-by': setBy }: WrittenClause,
  pointer: string,
  all: AllRecords,
  report: FileReport,
): void {
  const { study, condition } = setBy ?? {}
  if (study === undefined) return
  checkReference('study', study, below(pointer, 'study'), all, report)
  const named = all.studies.get(study)?.record
  if (named === undefined) return
  if (named.kind !== 'screening')
    report.at(
      below(pointer, 'study'),
      'reference-mismatch',
      `the study ${study} is of the kind ${named.kind}, which sets no threshold`,
      'name a screening study, or the user who set the limit',
    )
  const codes = Object.keys(named.conditions ?? {})
  if (condition === undefined || codes.includes(condition)) return
  report.at(
    below(pointer, 'condition'),
    'reference-unknown',
    `the study ${study} has no condition "${condition}"`,
    nearNames(condition, codes) || `name one of: ${codes.join(', ')}`,
  )
}

/** Both may be meant, so the clause is judged by all the same. */
function warn(
  clause: Comparison,
  found: LimitFromStudy,
  { written, pointer }: Place,
  report: FileReport,
): void {
  const { study } = clause.setBy ?? {}
  const there = `${found.condition}, ${found.age.text}`
  const key = (['at-least', 'above', 'change', 'property'] as const).find((one) => written[one] !== undefined)
  const at = key === undefined ? pointer : below(pointer, key)
  if (found.limits.length === 0)
    report.warnAt(
      at,
      'limit-off-study',
      `the study ${study} has no ${clause.property} at ${there}`,
      'name a condition and an age that the study read, or the user who set the limit',
    )
  for (const { threshold, atLimit, limit, written: here } of found.limits) {
    if (threshold === limit) continue
    report.warnAt(
      at,
      'limit-off-study',
      threshold === null
        ? `the study ${study} gives no threshold at ${there}, where ${atLimit === null ? 'one of the classes has no material' : 'classes overlap'}`
        : `the limit is ${here}, and the threshold of the study ${study} at ${there} is ${threshold} %`,
      'write the threshold of the study, or name under set-by the user who set another limit',
    )
  }
  for (const { what, clause: here, study: other } of found.differences)
    report.warnAt(
      written.condition === undefined ? at : below(pointer, 'condition'),
      'limit-off-study',
      `the ${what} is ${here} for the clause, and ${other} in ${found.condition} of the study ${study}`,
      'name a condition of the study that is the clause’s own',
    )
}
