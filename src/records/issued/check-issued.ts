/**
 * Issued documents against the lots' records: every revision of every lot, its document, the parts it refers to
 * and the revision before it. What was issued is never lost or altered without a word.
 */
import { once } from '../../core/measure/once.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { documentPath } from '../files.ts'
import type { ReadBefore } from '../read-before.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { checkStrays } from './check-strays.ts'
import { type IssuedFiles, issuedFiles, type SaidDocument, type SaidPrivate } from './issued-files.ts'
import { SHARED } from './parts.ts'

/** A lot's record and where its faults go. */
interface LoadedLot {
  readonly record: Lot
  readonly report: FileReport
}

interface Checked {
  readonly folder: string
  /** Files of the folder that were read before. */
  readonly before: ReadBefore
  readonly lots: ReadonlyMap<string, LoadedLot>
  /** Ids of all lots with a file, even one with a fault. */
  readonly ids: ReadonlySet<string>
  readonly diagnostics: Diagnostic[]
}

/**
 * @param checked faults go to the lots' reports and to the list
 * @returns documents with a fault, as SOURCE/LOT/N.json: nothing may be read from them
 */
export function checkIssued(checked: Checked): ReadonlySet<string> {
  const used = new Set<string>()
  const unsound = new Set<string>()
  const files = issuedFiles(checked.folder, checked.before)
  const documents = new Set<string>()
  const ownerOf = revisionOwners(checked.lots)
  for (const [id, { record, report }] of checked.lots)
    for (const [place, { number }] of (record.revisions ?? []).entries()) {
      documents.add(documentPath(id, number))
      const before = report.count()
      // A revision out of its order is a fault of the record, told already.
      if (number === place) checkRevision({ ...checked, id, place, record, report, used, files, ownerOf })
      if (number !== place || before < report.count()) unsound.add(documentPath(id, number))
    }
  const sound = [...checked.lots.values()].every(({ report }) => report.count() === 0)
  checkStrays({ ...checked, documents, used, sound })
  return unsound
}

/** Which other lot has a revision of a digest; sought only where one is asked for. */
function revisionOwners(lots: Checked['lots']): CheckedRevision['ownerOf'] {
  const owners = once(() =>
    Map.groupBy(
      [...lots].flatMap(
        ([
          id,
          {
            record: { revisions = [] },
          },
        ]) => revisions.map(({ digest }) => ({ id, digest })),
      ),
      ({ digest }) => digest,
    ),
  )
  return (digest, id) =>
    owners()
      .get(digest)
      ?.find((one) => one.id !== id)?.id
}

type Revision = NonNullable<Lot['revisions']>[number]

interface CheckedRevision {
  readonly id: string
  /** Place of the revision in the record. */
  readonly place: number
  readonly record: Lot
  readonly report: FileReport
  readonly files: IssuedFiles
  /** Another lot that has a revision of this digest. */
  readonly ownerOf: (digest: string, id: string) => string | undefined
  /** Parts that a document refers to; filled here. */
  readonly used: Set<string>
}

const RESTORE = 'restore it from version control or a backup: what was issued is never changed or deleted'

function checkRevision(checked: CheckedRevision): void {
  const { id, place, record, report } = checked
  const revision = record.revisions?.[place]
  if (revision === undefined) return
  const at = `/revisions/${place}`
  const file = `issued/${documentPath(id, place)}`
  const stored = checked.files.document(id, place)
  if (stored === null) {
    const other = checked.ownerOf(revision.digest, id)
    report.at(
      at,
      'issued-missing',
      `the issued document ${file} is missing or cannot be read${other === undefined ? '' : `; its line is that of ${other}, so the record looks copied`}`,
      other === undefined ? RESTORE : `remove revisions: where this is a copy of ${other}; else ${RESTORE}`,
    )
    return
  }
  const { digest, said } = stored
  if (digest !== revision.digest) {
    report.at(
      `${at}/digest`,
      'issued-altered',
      `${file} is not the document that was issued: its digest is ${digest}`,
      RESTORE,
    )
    return
  }
  if (said === null) report.at(at, 'issued-altered', `${file} is not an issued document of format 2`, RESTORE)
  else checkDocument(said, revision, checked)
}

function checkDocument(document: SaidDocument, revision: Revision, checked: CheckedRevision): void {
  const { id, place, record, report, used, files } = checked
  const mismatch: Mismatch = (member, issued, here) => {
    if (issued === here) return
    report.at(
      `/revisions/${place}${member}`,
      'issued-mismatch',
      `the document of revision ${place} says ${quoted(issued)} where the record says ${quoted(here)}`,
      'restore the line as it was issued',
    )
  }
  // A lot that was renamed keeps the documents of its earlier id.
  if (!(record.formerly ?? []).includes(document.certificate)) mismatch('', document.certificate, id)
  mismatch('/number', document.revision, place)
  mismatch('/date', document.issued, revision.date.text)
  mismatch('/function', document.function, revision.function)
  mismatch('/reason', document.reason, revision.reason)
  mismatch('', document.state === 'withdrawn', revision.withdrawn === 'yes')
  const { misfit } = document
  if (misfit !== null)
    report.at(
      `/revisions/${place}`,
      'issued-mismatch',
      `the document of revision ${place} prints ${quoted(misfit.printed)} where its data say ${quoted(misfit.data)}`,
      RESTORE,
    )
  const before = record.revisions?.[place - 1]
  mismatch('', document.replaces?.digest, before?.digest)
  mismatch('', document.replaces?.revision, before?.number)
  const checkPart = (digest: string, fault: string | null) => {
    used.add(digest)
    if (fault !== null)
      report.at(
        `/revisions/${place}`,
        'issued-part',
        `the part issued/parts/${digest}.json of revision ${place} ${fault}`,
        RESTORE,
      )
  }
  for (const member of SHARED) {
    const digest = document.parts[member]
    checkPart(digest, files.part(digest, member).fault)
  }
  const { fault, said } = files.privatePart(document.private)
  checkPart(document.private, fault)
  if (said !== null) checkPrivate(said, document, { mismatch, revision })
}

type Mismatch = (member: string, issued: unknown, here: unknown) => void

function checkPrivate(
  part: SaidPrivate,
  document: SaidDocument,
  { mismatch, revision }: { readonly mismatch: Mismatch; readonly revision: Revision },
): void {
  mismatch('', part.certificate, document.certificate)
  mismatch('', part.revision, document.revision)
  mismatch('/by', part.by ?? document.by, revision.by)
  mismatch('/replaced-by', part.replacedBy ?? document.replacedBy, revision['replaced-by'])
}

function quoted(value: unknown): string {
  return value === undefined ? 'nothing' : JSON.stringify(value)
}
