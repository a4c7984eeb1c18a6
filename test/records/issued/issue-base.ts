/** Issues the good records that diagnostics spoil: two revisions of one lot, one of the other. */
import { readMoment } from '../../../src/core/measure/moment.ts'
import { writeRevision } from '../../../src/commands/write-revision.ts'
import { carryOutPlan } from '../../../src/edition/certificate/issue-plan.ts'
import { loadRecords } from '../../../src/records/load.ts'

export const LOT = 'tuff/T-1'
const OTHER = 'tuff/T-9'

function request(lot: string, date: string, reason: string) {
  const issue = { lot, by: 'A. Mason', function: 'manager', reason, withdrawn: false }
  return { ...issue, date: readMoment(date) }
}

/** @param folder a copy of test/diagnostics/base */
export function issueBase(folder: string): void {
  const plan = [
    request(LOT, '2026-03-17', 'first'),
    request(LOT, '2026-04-10', '28 d results'),
    request(OTHER, '2026-04-10', 'first'),
  ]
  const issuing = {
    program: 'test',
    saltOf: ({ lot, reason }: { readonly lot: string; readonly reason: string }) => lot + reason,
  }
  const { records } = loadRecords(folder)
  for (const { request: own, revision } of carryOutPlan(records, plan, readMoment('2026-04-10'), issuing))
    writeRevision(folder, own.lot, revision)
}
