/** A content folder to typed, cross-referenced records and every diagnostic there is. */
import type { Moment } from '../core/measure/moment.ts'
import { assemble, noFiles, NO_SITE, type ReadFiles } from './checks/assemble.ts'
import { datedLots, type LotDates } from './checks/dated-lots.ts'
import type { Diagnostic } from './diagnostics/diagnostic.ts'
import { inOrder } from './diagnostics/diagnostic-text.ts'
import { type FileFault, fileFault, UNREAD } from './diagnostics/unread-files.ts'
import { listFolder, type Unread } from './files.ts'
import { checkIssued } from './issued/check-issued.ts'
import { loadFile, loadText } from './checks/load-record.ts'
import { SharedValues } from './checks/shared-values.ts'
import { isStudyTable, kindInFolder, recordAt, type RecordName } from './record-path.ts'
import type { Records } from './records.ts'
import { ReadBefore } from './read-before.ts'
import { loadStudyReadings } from './studies/load-study-readings.ts'

export type { Records }

export interface LoadedContent {
  readonly records: Records
  readonly diagnostics: readonly Diagnostic[]
  /** Lots with a fault whose time of sampling is known all the same; by SOURCE/LOT. */
  readonly datedFaultyLots: ReadonlyMap<string, LotDates>
  /** What the diagnostics tell keeps every record from being read. */
  readonly nothingRead?: true
  /** The folder itself cannot be read, or holds no site. */
  readonly fatal?: { readonly message: string; readonly mend: string }
}

/**
 * Whether site.yaml could be read; without it nothing can be judged, for criteria and grace are not known.
 */
export function hasSite(records: Records): boolean {
  return records.site !== NO_SITE
}

/** Texts of records as they would be, by path: read in place of what the disk holds, or beside it. */
export type ChangedTexts = ReadonlyMap<string, string>

export interface LoadOptions {
  /** Files of the same folder that were read before; records that have not changed are the same objects. */
  readonly before?: ReadBefore
  /** The same of issued documents and their parts. */
  readonly issued?: ReadBefore
  /** Texts that are not written yet. */
  readonly changed?: ChangedTexts
  /** A day to read the records on, which may lie ahead. */
  readonly asked?: Moment
  /** Hears which of how many files is read. */
  readonly reading?: (place: number, files: number) => void
}

/**
 * @param contentDir path of the folder; what is wrong with the folder as a whole is told as `fatal`
 * @param today the day that the records are read on where the site states none; without either nothing lies ahead
 */
export function loadRecords(
  contentDir: string,
  today?: Moment,
  {
    before = new ReadBefore(),
    issued = new ReadBefore(),
    changed = new Map(),
    asked,
    reading = () => undefined,
  }: LoadOptions = {},
): LoadedContent {
  const listing = listFolder(contentDir)
  if ('fault' in listing)
    return fatal(
      contentDir,
      `The content folder ${contentDir} ${listing.fault}.`,
      'name a folder with records: --content DIR',
    )
  if (listing.files.length === 0)
    return fatal(
      contentDir,
      `The content folder ${contentDir} is empty.`,
      'begin with site.yaml; README.md shows a first lot',
    )
  const shut = listing.unread.filter(isShutFolder)
  if (shut.length > 0)
    return nothingFrom(
      contentDir,
      shut.map(({ path, why }) => fileFault(path, UNREAD[why])),
    )
  const diagnostics = listing.unread.map(({ path, why }) => fileFault(path, UNREAD[why]))
  const onDisk = listing.files.map(({ path }) => path)
  const paths = changed.size === 0 ? onDisk : [...new Set([...onDisk, ...changed.keys()])].sort()
  const files = loadFiles({ contentDir, before, changed, reading }, paths, diagnostics)
  if (isNewer(diagnostics)) return nothingFrom(contentDir, diagnostics)
  if (!paths.includes(SITE_FILE)) diagnostics.push(fileFault(SITE_FILE, NO_SITE_FILE))
  const records = assemble(files, today, asked)
  const unsoundDocuments = checkIssued({
    folder: contentDir,
    before: issued,
    lots: files.loaded.lot,
    ids: files.ids.lot,
    diagnostics,
  })
  return {
    records: { ...records, unsoundDocuments },
    diagnostics: inOrder(diagnostics),
    datedFaultyLots: datedLots(files, diagnostics),
  }
}

const SITE_FILE = 'site.yaml'

/** Whether a later version of the program is needed, to which what seems a fault here may be none. */
function isNewer(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some(({ code }) => code === 'format-newer')
}

const NO_SITE_FILE: FileFault = {
  code: 'file-missing',
  severity: 'error',
  message: 'every content folder needs site.yaml',
  mend: 'write title, units, criteria and grace',
}

function fatal(contentDir: string, message: string, mend: string): LoadedContent {
  return { ...nothingFrom(contentDir, []), fatal: { message, mend } }
}

/** What is told alone: all else that seems a fault would come of it. */
function nothingFrom(contentDir: string, diagnostics: readonly Diagnostic[]): LoadedContent {
  const records = assemble(noFiles(contentDir))
  return { records, diagnostics, datedFaultyLots: new Map(), nothingRead: true }
}

/** Whether a folder of records cannot be read: whatever refers to one of them would seem to be at fault. */
function isShutFolder({ path, why }: Unread): boolean {
  return why === 'unreadable' && kindInFolder(path.split('/')[0] ?? '') !== undefined
}

interface Folder extends Required<Pick<LoadOptions, 'before' | 'changed' | 'reading'>> {
  readonly contentDir: string
}

function loadFiles(
  { contentDir, before, changed, reading }: Folder,
  paths: readonly string[],
  diagnostics: Diagnostic[],
): ReadFiles {
  const files = noFiles(contentDir)
  const byName = new Map<string, string>()
  const values = new SharedValues()
  // The site first: its offset puts the moments of all other records in order.
  const siteFirst = paths.toSorted((a, b) => Number(b === SITE_FILE) - Number(a === SITE_FILE))
  for (const [place, path] of siteFirst.entries()) {
    reading(place, paths.length)
    if (isStudyTable(path)) continue
    const name = recordAt(path)
    if (!('kind' in name)) diagnostics.push(fileFault(path, name))
    else {
      reportCase(byName, name, path, diagnostics)
      files.ids[name.kind].add(name.id)
      const text = changed.get(path)
      if (text === undefined) loadFile({ files, before, values }, name, path, diagnostics)
      else loadText(files, name, { path, text }, diagnostics)
      if (isNewer(diagnostics)) return files
    }
  }
  loadStudyReadings(files, paths.filter(isStudyTable), diagnostics)
  return files
}

/** Two names that differ by case alone would be one file, one address on many servers. */
function reportCase(
  byName: Map<string, string>,
  { kind, id }: RecordName,
  path: string,
  diagnostics: Diagnostic[],
): void {
  const name = `${kind}/${id.toLowerCase()}`
  const other = byName.get(name)
  byName.set(name, path)
  if (other !== undefined)
    diagnostics.push(
      fileFault(path, {
        code: 'id-case',
        severity: 'error',
        message: `the id differs from ${other} only by case`,
        mend: 'rename one of the two',
      }),
    )
}
