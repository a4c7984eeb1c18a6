/** What lies below issued/ and belongs to no revision on record. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { UNREAD } from '../diagnostics/unread-files.ts'
import { documentAt, isUnreadFolder, listIssued, partAt, readPart } from '../files.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { valueOfForm } from './issued-forms.ts'
import type { PrivatePart } from './private-part.ts'

type Lots = ReadonlyMap<string, { readonly record: Lot }>

interface Searched {
  readonly folder: string
  readonly lots: Lots
  /** Ids of all lots with a file, even one with a fault. */
  readonly ids: ReadonlySet<string>
  readonly diagnostics: Diagnostic[]
  /** Paths of the documents on record. */
  readonly documents: ReadonlySet<string>
  /** Digests of the parts that they refer to. */
  readonly used: ReadonlySet<string>
  /** Whether every document on record could be read. */
  readonly sound: boolean
}

/** @param searched faults go to the list */
export function checkStrays({ folder, lots, ids, diagnostics, documents, used, sound }: Searched): void {
  const fault = (path: string, of: Fault) =>
    diagnostics.push({ file: `issued/${path}`, line: 1, column: 1, ...of })
  const paths = listIssued(folder)
  const strays = paths.flatMap((path) => {
    const of = documents.has(path) || partAt(path) !== undefined ? null : strayFault(path, lots, ids)
    return of === null ? [] : [{ path, of }]
  })
  for (const { path, of } of strays) fault(path, of)
  // What a document refers to that could not be read, or whose record has a fault of its own, is not known.
  if (!sound || strays.length > 0 || [...ids].some((id) => !lots.has(id))) return
  const counts = revisionCounts(lots)
  const unused: string[] = []
  for (const path of paths) {
    const part = partAt(path)
    if (part === undefined || used.has(part)) continue
    const lost = lostFault(readPart(folder, part), counts)
    if (lost === null) unused.push(path)
    else fault(path, lost)
  }
  const [first, ...others] = unused
  if (first !== undefined) fault(first, unusedFault(others.length))
}

/** Numbers of revisions on record, by every id that a lot has or had. */
function revisionCounts(lots: Lots): ReadonlyMap<string, number> {
  return new Map(
    [...lots].flatMap(([id, { record }]) =>
      [id, ...(record.formerly ?? [])].map((name) => [name, record.revisions?.length ?? 0] as const),
    ),
  )
}

/**
 * A private part names the revision that it was written for: where that is not on record, it may be all that is
 * left of it.
 */
function lostFault(bytes: Buffer | null, counts: ReadonlyMap<string, number>): Fault | null {
  const part = bytes === null ? null : (valueOfForm('private', bytes) as PrivatePart | null)
  if (part === null || part.revision < (counts.get(part.certificate) ?? 0)) return null
  return {
    code: 'issued-part-unused',
    severity: 'warning',
    message: `this belongs to revision ${part.revision} of ${part.certificate}, which is not on record`,
    mend: 'restore the document and its line from version control or a backup; if an issue was only interrupted, the next issue removes this',
  }
}

type Fault = Pick<Diagnostic, 'code' | 'severity' | 'message' | 'mend'>

function unusedFault(others: number): Fault {
  return {
    code: 'issued-part-unused',
    severity: 'warning',
    message: `no issued document refers to this part${others === 0 ? '' : `, nor to ${others} more`}`,
    mend: `leave ${others === 0 ? 'it: the next issue removes it' : 'them: the next issue removes them'}`,
  }
}

function strayFault(path: string, lots: Lots, ids: ReadonlySet<string>): Fault | null {
  if (isUnreadFolder(path)) return UNREAD.unreadable
  const document = documentAt(path)
  if (document === undefined)
    return {
      code: 'issued-stray',
      severity: 'error',
      message: 'this is neither an issued document (SOURCE/LOT/N.json) nor a part of one',
      mend: 'remove it from issued/',
    }
  const { lot, number } = document
  if (!ids.has(lot))
    return {
      code: 'issued-unrecorded',
      severity: 'error',
      message: `an issued document of a lot that is not on record: lots/${lot}.yaml is missing`,
      mend: 'restore the lot’s record: what was issued is withdrawn, never deleted',
    }
  const loaded = lots.get(lot)
  if (loaded === undefined) return null
  const count = loaded.record.revisions?.length ?? 0
  return {
    code: 'issued-unrecorded',
    severity: 'error',
    message: `the record of ${lot} has ${count === 0 ? 'no revision' : `revisions up to ${count - 1}`}, but this document is of revision ${number}`,
    mend: 'after an interrupted issue, issue with --resume; otherwise restore the line in revisions:',
  }
}
