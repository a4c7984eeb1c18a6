/** Which records have a fault, by the files that diagnostics name. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { kindInFolder } from '../record-path.ts'
import type { RecordKind } from '../schema/schemas.ts'

/** A record with an error, or a file that may be one. */
export interface FaultyRecord {
  /** The first file with an error that tells of it, relative to the content folder. */
  readonly file: string
  /** `any` for what cannot be said to be of one kind. */
  readonly kind: RecordKind | 'any'
  /** As a reference would name it; of a lot SOURCE/LOT, or "SOURCE/" where the lot is not known. */
  readonly id: string
}

/**
 * Every record that an error was found in, each once, in the order of the diagnostics. An issued document stands for its lot.
 * @param diagnostics warnings among them are left out
 */
export function faultyRecords(diagnostics: readonly Pick<Diagnostic, 'file' | 'severity'>[]): FaultyRecord[] {
  const found = new Map<string, FaultyRecord>()
  for (const { file, severity } of diagnostics) {
    const record = { file, ...recordOf(file) }
    const key = `${record.kind} ${record.id}`
    if (severity === 'error' && !found.has(key)) found.set(key, record)
  }
  return [...found.values()]
}

/** By the place of a file, whatever is wrong with its name. */
function recordOf(file: string): Pick<FaultyRecord, 'kind' | 'id'> {
  if (file === 'site.yaml') return { kind: 'site', id: 'site' }
  const [folder = '', ...rest] = file.split('/')
  // What lies in issued/SOURCE/LOT/ belongs to that lot; the parts belong to many.
  if (folder === 'issued') return rest[0] === 'parts' ? ANY : lotOf(rest)
  const kind = kindInFolder(folder)
  if (kind === 'lot') return lotOf(rest)
  const id = withoutEnding(rest[0] ?? '')
  return kind === undefined || id === '' ? ANY : { kind, id }
}

const ANY = { kind: 'any', id: '' } as const

/** @param path below lots/ or issued/ */
function lotOf([source = '', lot = '']: readonly string[]): Pick<FaultyRecord, 'kind' | 'id'> {
  return source === '' ? ANY : { kind: 'lot', id: `${source}/${withoutEnding(lot)}` }
}

function withoutEnding(name: string): string {
  return name.replace(/\.[^.]*$/, '')
}
