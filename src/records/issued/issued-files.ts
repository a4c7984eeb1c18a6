/**
 * What issued documents and their parts say of themselves. Each file is read, hashed and held against its form once; what
 * is kept of it is small and plain JSON, for ten thousand lots have fifty thousand of them.
 */
import { defined } from '../../core/measure/defined.ts'
import { documentPath, issuedMark, readIssued, readPart } from '../files.ts'
import type { ReadBefore } from '../read-before.ts'
import { digestOf } from './digest.ts'
import { type IssuedForm, valueOfForm } from './issued-forms.ts'
import type { IssuedHead } from './issued-head.ts'
import { type PartReference, SHARED, type SharedMember } from './parts.ts'
import { type JudgedDocument, type PrintedMisfit, printedMisfit } from './printed-verdict.ts'
import type { PrivatePart } from './private-part.ts'

/** What a document says that its record or a part says as well. */
export interface SaidDocument
  extends Pick<
    IssuedHead,
    | 'certificate'
    | 'revision'
    | 'state'
    | 'issued'
    | 'by'
    | 'function'
    | 'reason'
    | 'replacedBy'
    | 'replaces'
    | 'private'
  > {
  /** Digests of the parts that it shares with others. */
  readonly parts: Readonly<Record<SharedMember, string>>
  readonly misfit: PrintedMisfit | null
}

interface StoredDocument {
  readonly digest: string
  /** null for bytes that are no document. */
  readonly said: SaidDocument | null
}

/** What a private part says, with what it puts back into the head of its document. */
export interface SaidPrivate extends Pick<PrivatePart, 'certificate' | 'revision'> {
  readonly by?: unknown
  readonly replacedBy?: unknown
}

export interface ReadPart {
  /** What is wrong with it, null for nothing. */
  readonly fault: string | null
}

export interface IssuedFiles {
  /** Null where it cannot be read. */
  readonly document: (lot: string, number: number) => StoredDocument | null
  readonly part: (digest: string, member: SharedMember) => ReadPart
  readonly privatePart: (digest: string) => ReadPart & { readonly said: SaidPrivate | null }
}

/**
 * The files of one content folder.
 * @param before files below issued/ that were read before; what is kept of them is plain JSON
 */
export function issuedFiles(folder: string, before: ReadBefore): IssuedFiles {
  const parts = new Map<string, ReadPart>()
  const partNow = (digest: string, member: SharedMember) =>
    before.of(`${partPath(digest)} ${member}`, issuedMark(folder, partPath(digest)), () => {
      const { fault } = readForm(readPart(folder, digest), digest, member)
      return { value: { fault }, keep: fault === null }
    })
  return {
    document: (lot, number) => {
      const path = `issued/${documentPath(lot, number)}`
      return before.of(path, issuedMark(folder, path), () => {
        const value = storedDocument(readIssued(folder, lot, number))
        return { value, keep: value !== null && value.said !== null }
      })
    },
    part: (digest, member) => {
      const key = `${member} ${digest}`
      const known = parts.get(key) ?? partNow(digest, member)
      parts.set(key, known)
      return known
    },
    privatePart: (digest) =>
      before.of(partPath(digest), issuedMark(folder, partPath(digest)), () => {
        const { fault, value } = readForm(readPart(folder, digest), digest, 'private')
        const said = fault === null ? saidPrivate(value as PrivatePart) : null
        return { value: { fault, said }, keep: fault === null }
      }),
  }
}

function partPath(digest: string): string {
  return `issued/parts/${digest}.json`
}

function storedDocument(bytes: Buffer | null): StoredDocument | null {
  if (bytes === null) return null
  const document = valueOfForm('document', bytes)
  // Of this form by the schema.
  return { digest: digestOf(bytes), said: document === null ? null : saidDocument(document as StoredForm) }
}

/** A document as stored: its parts by digest. */
type StoredForm = IssuedHead & JudgedDocument & Readonly<Record<SharedMember, PartReference>>

function saidDocument(document: StoredForm): SaidDocument {
  const { certificate, revision, state, issued, by, replacedBy, replaces } = document
  return {
    ...{ certificate, revision, state, issued, by, function: document.function, reason: document.reason },
    ...defined({ replacedBy, replaces }),
    private: document.private,
    parts: Object.fromEntries(
      SHARED.map((member) => [member, document[member].part]),
    ) as SaidDocument['parts'],
    misfit: printedMisfit(document),
  }
}

function saidPrivate({ certificate, revision, persons = [], drafts = [] }: PrivatePart): SaidPrivate {
  const revealed = (key: keyof IssuedHead): unknown =>
    [...persons, ...drafts].find(([path]) => path.length === 1 && path[0] === key)?.[1]
  return { certificate, revision, ...defined({ by: revealed('by'), replacedBy: revealed('replacedBy') }) }
}

const MISSING = 'is missing or cannot be read'
const ALTERED = 'was altered: its bytes are not those of its name'

function readForm(
  bytes: Buffer | null,
  digest: string,
  form: Exclude<IssuedForm, 'document'>,
): ReadPart & { readonly value: unknown } {
  if (bytes === null) return { fault: MISSING, value: null }
  if (digestOf(bytes) !== digest) return { fault: ALTERED, value: null }
  const value = valueOfForm(form, bytes)
  return { fault: value === null ? `is not a ${form} part of an issued document` : null, value }
}
