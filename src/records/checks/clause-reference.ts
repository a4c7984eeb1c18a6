/** References from other records to a clause of a set: optional clauses asked for, approvals. */
import { everyClause } from '../../core/criteria/criterion.ts'
import { checkReference, type AllRecords } from './references.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Invoked } from '../schema/loaded-records.ts'

interface At {
  readonly set: string
  readonly clause: string
}

/** Reports a set or a clause that does not exist; a set with faults of its own is passed over. */
export function checkClause(
  named: { readonly set: string; readonly clause: string },
  at: At,
  all: AllRecords,
  report: FileReport,
): void {
  checkReference('criterion', named.set, at.set, all, report)
  const criterion = all.criteria.get(named.set)
  if (criterion === undefined) return
  const ids = [...everyClause(criterion.clauses)].map(({ id }) => id)
  if (ids.includes(named.clause)) return
  report.at(
    at.clause,
    'reference-unknown',
    `the specification ${named.set} has no clause "${named.clause}"`,
    nearNames(named.clause, ids) || `name one of: ${ids.join(', ')}`,
  )
}

/** Sets that a lot or a project invokes, each once, with the clauses that it asks for. */
export function checkInvoked(
  invoked: readonly Invoked[],
  pointer: string,
  all: AllRecords,
  report: FileReport,
): void {
  invoked.forEach(({ set, requested }, index) => {
    const at = { set: `${pointer}/${index}/set`, list: `${pointer}/${index}/requested` }
    checkReference('criterion', set, at.set, all, report)
    checkRequested(set, requested, at, all, report)
    if (invoked.slice(0, index).some((other) => other.set === set))
      report.at(at.set, 'duplicate-id', `${set} is listed twice`, 'list each criterion once')
  })
}

/** Every optional clause that a record says is asked for under a set. */
export function checkRequested(
  set: string,
  clauses: readonly string[] | undefined,
  at: { readonly set: string; readonly list: string },
  all: AllRecords,
  report: FileReport,
): void {
  clauses?.forEach((clause, index) => {
    checkClause({ set, clause }, { set: at.set, clause: `${at.list}/${index}` }, all, report)
  })
}
