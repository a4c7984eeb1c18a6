/** Writes the revisions of one run of npm run issue, and says what an interruption left out. */
import { setImmediate } from 'node:timers/promises'
import type { Records } from '../records/records.ts'
import { countWords } from '../words/numbers.ts'
import { lockContent } from './folder-lock.ts'
import { onInterruption } from './interruption.ts'
import type { PlannedRevision } from './plan-issue.ts'
import { CommandFailure, EXIT } from './program.ts'
import { readIssuable, refuseBlocked } from './issuable.ts'
import { sweepUnused } from './sweep-unused.ts'
import { checkLine, writeRevision } from './write-revision.ts'

/**
 * Writes the revisions, one lot after the other.
 * @param written hears of each that is whole
 * @throws CommandFailure where another command is at work there or was meanwhile, or a file cannot be written
 */
export async function writeAll(
  records: Records,
  planned: readonly PlannedRevision[],
  written: (revision: PlannedRevision) => void,
): Promise<void> {
  const { contentDir } = records
  const release = lockContent(contentDir)
  const open = planned.map(({ request }) => request.lot)
  const watched = onInterruption(() => {
    release()
    process.stderr.write(interruptedText(planned.length, open))
  })
  try {
    checkNothingCame(records, planned)
    for (const { request, revision } of planned) checkLine(contentDir, request.lot, revision)
    for (const one of planned) {
      writeRevision(contentDir, one.request.lot, one.revision)
      open.shift()
      written(one)
      // A signal is heard here, between two lots: each is issued whole or not begun.
      await setImmediate()
    }
    sweepUnused(contentDir)
  } finally {
    watched()
    release()
  }
  process.stdout.write(`${countWords(planned.length, 'revision')} issued.\n`)
}

/** @param open lots that were not begun */
function interruptedText(planned: number, open: readonly string[]): string {
  const issued = `Interrupted: ${planned - open.length} of ${countWords(planned, 'revision')} issued.\n`
  return open.length === 0 ? issued : `${issued}Not begun: ${open.join(', ')}\nfix: issue these again\n`
}

/** Between reading and locking another command may have issued the same lot. */
function checkNothingCame(records: Records, planned: readonly PlannedRevision[]): void {
  const now = readIssuable(records.contentDir)
  refuseBlocked(
    now,
    planned.map(({ request }) => request.lot),
  )
  for (const { request } of planned) {
    const [before, after] = [records, now.records].map(
      ({ lots }) => lots.get(request.lot)?.revisions?.length ?? 0,
    )
    if (before !== after)
      throw new CommandFailure(
        `${request.lot} was issued by another command in the meantime.`,
        EXIT.failed,
        'look at what was issued, then run the command again if it is still needed',
      )
  }
}
