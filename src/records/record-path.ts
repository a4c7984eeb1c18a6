/** Which kind of record a path holds, and its id. */
import type { RecordKind } from './schema/schemas.ts'
import type { FileFault } from './diagnostics/unread-files.ts'

/** A record by its kind and id, as a path or a reference names it. */
export interface RecordName {
  readonly kind: RecordKind
  readonly id: string
}

const FOLDERS: Readonly<Record<string, RecordKind>> = {
  producers: 'producer',
  laboratories: 'laboratory',
  sources: 'source',
  conditions: 'condition',
  controls: 'control',
  criteria: 'criterion',
  studies: 'study',
}
const ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/
/** Names that some systems keep for devices. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/i

/** Whether a path is that of a table beside a study, which the study names. */
export function isStudyTable(path: string): boolean {
  return /^studies\/[^/]+\.csv$/.test(path)
}

/** The kind of record that lies in a folder of the content folder; undefined for a folder of none. */
export function kindInFolder(folder: string): RecordKind | undefined {
  if (folder === 'lots') return 'lot'
  if (folder === 'methods') return 'method'
  return Object.hasOwn(FOLDERS, folder) ? FOLDERS[folder] : undefined
}

/** The record that a content file holds, by the file's path. */
export function recordAt(path: string): RecordName | FileFault {
  if (path === 'site.yaml') return { kind: 'site', id: 'site' }
  const lot = /^lots\/([^/]+)\/([^/]+)\.yaml$/.exec(path)
  if (lot !== null) return checked({ kind: 'lot', id: `${lot[1]}/${lot[2]}` }, [lot[1] ?? '', lot[2] ?? ''])
  const method = /^methods\/([^/]+)\.mdx$/.exec(path)
  if (method !== null) return checked({ kind: 'method', id: method[1] ?? '' }, [method[1] ?? ''])
  const record = /^([^/]+)\/([^/]+)\.yaml$/.exec(path)
  const kind = FOLDERS[record?.[1] ?? '']
  if (record === null || kind === undefined || !Object.hasOwn(FOLDERS, record[1] ?? '')) {
    if (kindInFolder(path) !== undefined)
      return { ...NO_FOLDER, message: `${path} is a file, and a folder of records was expected` }
    if (isRecordOf(path.replace(/\.yml$/i, '.yaml'), path)) return MISNAMED
    // The only warning: a note or a picture beside the records spoils nothing.
    return {
      severity: 'warning',
      message: 'no record is expected here, so the file is not read',
      mend: 'lots go in lots/SOURCE/LOT.yaml, methods in methods/ID.mdx, other records in their own folder as ID.yaml',
      code: 'file-unexpected',
    }
  }
  if (kind === 'criterion' && OWN_PAGES.includes(record[2] ?? '')) return reserved(record[2] ?? '')
  return checked({ kind, id: record[2] ?? '' }, [record[2] ?? ''])
}

/** A source's page under a criterion stands at sources/SOURCE/CRITERION/, and so do these pages of its own. */
const OWN_PAGES: readonly string[] = ['what-if', 'agency', 'report', 'by-lot', 'by-shipment']

function reserved(id: string): FileFault {
  return {
    severity: 'error',
    message: `"${id}" is not a valid id of a criterion: the address sources/SOURCE/${id}/ is a page of its own`,
    mend: 'give the file another name',
    code: 'id-invalid',
  }
}

/** A record that somebody wrote must not go unread for its ending. */
const MISNAMED: FileFault = {
  severity: 'error',
  message: 'this is a record by its place, and records end in .yaml',
  mend: 'rename the file so that it ends in .yaml',
  code: 'file-unexpected',
}

/** All records of a kind may have gone with their folder. */
const NO_FOLDER: Omit<FileFault, 'message'> = {
  severity: 'error',
  mend: 'put the folder with its records back, or remove the file',
  code: 'file-unexpected',
}

/** Whether a path would be that of a record under another name. */
function isRecordOf(renamed: string, path: string): boolean {
  return renamed !== path && 'kind' in recordAt(renamed)
}

function checked(name: RecordName, parts: readonly string[]): RecordName | FileFault {
  const wrong = parts.find((part) => !ID.test(part) || DEVICE.test(part))
  return wrong === undefined
    ? name
    : {
        severity: 'error',
        message: `"${wrong}" is not a valid id`,
        mend: 'use at most 64 letters, digits and hyphens, beginning with a letter or digit, and no device name such as con or nul',
        code: 'id-invalid',
      }
}
