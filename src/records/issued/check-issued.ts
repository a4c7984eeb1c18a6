/**
 * Issued documents against the lots' records: every revision of every lot, its document, the parts it refers to
 * and the revision before it. What was issued is never lost or altered without a word.
 */
import { once } from '../../core/measure/once.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { documentPath, fileMark, type ReadBefore, readIssued, readPart } from '../files.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { checkStrays } from './check-strays.ts'
import { digestOf } from './digest.ts'
import type { IssuedHead } from './issued-head.ts'
import { type IssuedForm, valueOfForm } from './issued-forms.ts'
import { type PartReference, SHARED, type SharedMember } from './parts.ts'
import { type JudgedDocument, printedMisfit } from './printed-verdict.ts'
import type { PrivatePart } from './private-part.ts'

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
  const partFault = partFaults(checked)
  const documents = new Set<string>()
  const ownerOf = revisionOwners(checked.lots)
  for (const [id, { record, report }] of checked.lots)
    for (const [place, { number }] of (record.revisions ?? []).entries()) {
      documents.add(documentPath(id, number))
      const before = report.count()
      // A revision out of its order is a fault of the record, told already.
      if (number === place) checkRevision({ ...checked, id, place, record, report, used, partFault, ownerOf })
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

/** What is wrong with a part, null for nothing; each is read once. */
type PartFault = (digest: string, form: IssuedForm) => string | null

const MISSING = 'is missing or cannot be read'
const ALTERED = 'was altered: its bytes are not those of its name'

function partFaults({ folder, before }: Pick<Checked, 'folder' | 'before'>): PartFault {
  const faults = new Map<string, string | null>()
  return (digest, form) => {
    const key = `${form} ${digest}`
    const known = faults.get(key)
    if (known !== undefined) return known
    const { fault } = before.of(`${form} ${partPath(digest)}`, fileMark(folder, partPath(digest)), () => {
      const found = faultOf(readPart(folder, digest), digest, form)
      return { value: { fault: found }, keep: found === null }
    })
    faults.set(key, fault)
    return fault
  }
}

function partPath(digest: string): string {
  return `issued/parts/${digest}.json`
}

function faultOf(bytes: Buffer | null, digest: string, form: IssuedForm): string | null {
  if (bytes === null) return MISSING
  if (digestOf(bytes) !== digest) return ALTERED
  return valueOfForm(form, bytes) === null ? `is not a ${form} part of an issued document` : null
}

type Revision = NonNullable<Lot['revisions']>[number]

interface CheckedRevision {
  readonly id: string
  /** Place of the revision in the record. */
  readonly place: number
  readonly record: Lot
  readonly report: FileReport
  readonly folder: string
  readonly before: ReadBefore
  readonly partFault: PartFault
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
  const stored = storedDocument(checked, file)
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
  const { digest, document } = stored
  if (digest !== revision.digest) {
    report.at(
      `${at}/digest`,
      'issued-altered',
      `${file} is not the document that was issued: its digest is ${digest}`,
      RESTORE,
    )
    return
  }
  if (document === null)
    report.at(at, 'issued-altered', `${file} is not an issued document of format 2`, RESTORE)
  // Of this form by the schema.
  else checkDocument(document as StoredHead, revision, checked)
}

interface StoredDocument {
  readonly digest: string
  /** null for bytes that are no document. */
  readonly document: unknown
}

/** Null where it cannot be read. */
function storedDocument(
  { id, place, folder, before }: Pick<CheckedRevision, 'id' | 'place' | 'folder' | 'before'>,
  file: string,
): StoredDocument | null {
  return before.of(file, fileMark(folder, file), () => {
    const bytes = readIssued(folder, id, place)
    if (bytes === null) return { value: null, keep: false }
    const document = valueOfForm('document', bytes)
    return { value: { digest: digestOf(bytes), document }, keep: document !== null }
  })
}

/** A document as stored: what it says of itself, and its parts by digest. */
type StoredHead = IssuedHead & JudgedDocument & Readonly<Record<SharedMember, PartReference>>

function checkDocument(document: StoredHead, revision: Revision, checked: CheckedRevision): void {
  const { id, place, record, report, used, partFault } = checked
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
  const misfit = printedMisfit(document)
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
  for (const member of SHARED) checkPart(document[member].part, partFault(document[member].part, member))
  const { fault, part } = privatePart(checked, document.private)
  checkPart(document.private, fault)
  if (part !== null) checkPrivate(part, document, { mismatch, revision })
}

/** The private part of a document, or what is wrong with it. */
function privatePart(
  { folder, before }: Pick<Checked, 'folder' | 'before'>,
  digest: string,
): { readonly fault: string | null; readonly part: PrivatePart | null } {
  const path = partPath(digest)
  return before.of(path, fileMark(folder, path), () => {
    const bytes = readPart(folder, digest)
    const fault = faultOf(bytes, digest, 'private')
    const part = bytes === null || fault !== null ? null : (valueOfForm('private', bytes) as PrivatePart)
    return { value: { fault, part }, keep: fault === null }
  })
}

type Mismatch = (member: string, issued: unknown, here: unknown) => void

function checkPrivate(
  part: PrivatePart,
  document: IssuedHead,
  { mismatch, revision }: { readonly mismatch: Mismatch; readonly revision: Revision },
): void {
  const shown = (key: keyof IssuedHead): unknown =>
    [...(part.persons ?? []), ...(part.drafts ?? [])].find(
      ([path]) => path.length === 1 && path[0] === key,
    )?.[1] ?? document[key]
  mismatch('', part.certificate, document.certificate)
  mismatch('', part.revision, document.revision)
  mismatch('/by', shown('by'), revision.by)
  mismatch('/replaced-by', shown('replacedBy'), revision['replaced-by'])
}

function quoted(value: unknown): string {
  return value === undefined ? 'nothing' : JSON.stringify(value)
}
