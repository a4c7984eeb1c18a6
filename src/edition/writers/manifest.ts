/**
 * manifest.json: what a build wrote and which certificates stand behind it, so that the next build, on this
 * machine or another, can tell what was lost or exchanged since (schemas/manifest.json).
 */
import { defined } from '../../core/measure/defined.ts'
import { canonicalJson, digestOf } from '../../records/issued/digest.ts'
import { writtenForm } from '../../records/schema/written.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { partOfSource } from '../shape/part-of-source.ts'

export interface Manifest extends IssuedState {
  readonly format: 1
  readonly program: string
  readonly audience: Edition['audience']
  readonly asOf: string
  /** Digest of every file of the site by its path; neither this one nor the folder's marker. */
  readonly files: Readonly<Record<string, string>>
}

/** What must not vanish or change unseen. */
export interface IssuedState {
  /** Every lot with a certificate, by SOURCE/LOT. */
  readonly lots: Readonly<Record<string, IssuedLot>>
  /** Digest of each record that certificates rest on, as FOLDER/ID, and of site.yaml. */
  readonly records: Readonly<Record<string, string>>
}

export interface IssuedLot {
  readonly state: LotEntry['state']
  readonly formerly: readonly string[]
  readonly revisions: readonly IssuedRevisionLine[]
}

export interface IssuedRevisionLine {
  readonly number: number
  readonly date: string
  /** Of the issued document. */
  readonly digest: string
}

/** @param edition already the audience's: a lot that it does not show is not in its manifest */
export function issuedState(edition: Edition): IssuedState {
  const ofSources = [...edition.sources.keys()].map((id) => [id, issuedOf(edition, id)] as const)
  return {
    lots: inOrder(ofSources.flatMap(([, { lots }]) => lots)),
    records: inOrder([
      ...digests('conditions', edition.conditions, writtenForm),
      ...digests('conditions', edition.announcedConditions, writtenForm),
      ...digests('controls', edition.controls, ({ record }) => writtenForm(record)),
      ...digests('criteria', edition.criteria, (set) => set),
      ...digests('laboratories', edition.laboratories, writtenForm),
      // Of producers without what is not published; of a source, nothing is withheld.
      ...digests('producers', edition.producers, writtenForm),
      ...ofSources.map(([id, { record }]): [string, string] => [`sources/${id}`, record]),
      ['site.yaml', digestOf(plainJson(writtenForm(judgedBy(edition))))],
    ]),
  }
}

interface IssuedOfSource {
  readonly lots: readonly (readonly [string, IssuedLot])[]
  readonly record: string
}

/** Lots of a source with a certificate, and the digest of its record. */
const issuedOf = partOfSource('issued', (edition: Edition, source): IssuedOfSource => {
  const issued = edition.lotsOf(source).filter((lot) => lot.issued !== null)
  return {
    lots: issued.map(({ id }) => [id, issuedLot(edition.lot(id))]),
    record: digestOf(plainJson(writtenForm(edition.source(source).record))),
  }
})

/**
 * @param edition already the audience's
 * @param state of the same edition
 * @param files digest of every file of the site by path
 */
export function manifestOf(
  edition: Edition,
  state: IssuedState,
  files: Iterable<readonly [string, string]>,
): Manifest {
  return {
    format: 1,
    program: edition.program,
    audience: edition.audience,
    asOf: edition.asOf.text,
    files: inOrder(files),
    ...state,
  }
}

/** What of the site's record bears on verdicts that it shows. */
function judgedBy({ site: { criteria, requested, grace, offset, publish = [], ...site } }: Edition): object {
  const projects = publish.includes('project') ? site.projects : undefined
  return { criteria, requested, grace, offset, readWithin: site['read-within'], ...defined({ projects }) }
}

function issuedLot({ state, formerly, revisions }: LotEntry): IssuedLot {
  return {
    state,
    formerly,
    revisions: revisions.map(({ number, date, digest }) => ({ number, date: date.text, digest })),
  }
}

function digests<T>(
  folder: string,
  records: ReadonlyMap<string, T>,
  form: (record: T) => unknown,
): [string, string][] {
  return [...records].map(([id, record]) => [`${folder}/${id}`, digestOf(plainJson(form(record)))])
}

/** Times become their texts, as in every data file. */
function plainJson(value: unknown): string {
  return canonicalJson(JSON.parse(JSON.stringify(value)))
}

/** By code unit, so that the same site gives the same bytes. */
function inOrder<T>(entries: Iterable<readonly [string, T]>): Record<string, T> {
  return Object.fromEntries([...entries].sort(([a], [b]) => (a < b ? -1 : 1)))
}
