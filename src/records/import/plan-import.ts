/** From the sheets of a file and its map to the texts of records as they would be, with all that stands against it. */
import { isMapping, type Difference, inWords, type Mapping, type RecordDraft } from './draft.ts'
import { draftRecords, lotNamed } from './drafts.ts'
import { editYaml, EditFault, type Path } from '../edit/edit-yaml.ts'
import { inKeyOrder, keyOrder } from '../edit/key-order.ts'
import { type Plain, writeYaml } from '../edit/write-yaml.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { lineStarts } from '../yaml/line-and-column.ts'
import { parseYaml } from '../yaml/parse-yaml.ts'
import { spansOf } from '../yaml/spans.ts'
import type { Sheet } from './grid.ts'
import type { ImportFault, TellFault } from './import-fault.ts'
import type { ImportMap } from './import-map.ts'
import { readTables } from './table-rows.ts'

/** Where values came from, as the record keeps it. */
export interface ImportOrigin {
  /** Without folders. */
  readonly file: string
  /** "sha256-" and hexadecimal digits. */
  readonly digest: string
  /** "2026-12-31". */
  readonly on: string
}

export interface ImportRequest {
  readonly sheets: readonly Sheet[]
  readonly map: ImportMap
  readonly origin: ImportOrigin
  /** The text of a record by its path; null where there is none. */
  readonly textAt: (path: string) => string | null
  /** Values on record give way to those of the file. */
  readonly replace: boolean
}

/** A record that the import makes or adds to. */
export interface RecordChange {
  readonly path: string
  readonly kind: 'lot' | 'control'
  readonly id: string
  /** null for a new record. */
  readonly before: string | null
  readonly text: string
  readonly draft: RecordDraft
  /** A new record of which a row was refused: what else it lacks, that row may say. */
  readonly isPartial: boolean
}

export interface RecordDifference extends Difference {
  readonly kind: 'lot' | 'control'
  readonly id: string
}

export interface ImportPlan {
  readonly changes: readonly RecordChange[]
  /** Values on record that the file states otherwise. */
  readonly differences: readonly RecordDifference[]
  readonly faults: readonly ImportFault[]
  readonly rows: number
  readonly leftOut: number
  /** Records that the file speaks of and adds nothing to. */
  readonly unchanged: number
}

/** Nothing is written: what would be is told. */
export function planImport({ sheets, map, origin, textAt, replace }: ImportRequest): ImportPlan {
  const faults: ImportFault[] = []
  const tell: TellFault = (fault) => {
    faults.push(fault)
  }
  const { rows, refused, leftOut } = readTables(sheets, map, tell)
  const lacking = new Set(refused.flatMap((row) => lotNamed(row) ?? []))
  const onRecord = (folder: string) => (id: string) => mappingIn(textAt(`${folder}/${id}.yaml`))
  const drafts = draftRecords(rows, { lot: onRecord('lots'), control: onRecord('controls') }, tell)
  const all = [
    ...[...drafts.controls].map(([id, draft]) => ({ kind: 'control' as const, id, draft })),
    ...[...drafts.lots].map(([id, draft]) => ({ kind: 'lot' as const, id, draft })),
  ]
  const differences = all.flatMap(({ kind, id, draft }) =>
    draft.differences.map((one) => ({ ...one, kind, id })),
  )
  if (replace) for (const { draft } of all) draft.replace()
  const changed = all.filter(({ draft }) => draft.isChanged)
  const changes = changed.flatMap((one): RecordChange[] => {
    const path = `${one.kind === 'lot' ? 'lots' : 'controls'}/${one.id}.yaml`
    const before = textAt(path)
    const text = changedText(one, before, origin)
    const isPartial = before === null && lacking.has(one.id)
    if (typeof text === 'string') return [{ ...one, path, before, text, isPartial }]
    tell({ code: 'import-record', severity: 'error', place: one.draft.begun, ...text })
    return []
  })
  const unchanged = all.length - changed.length
  return { changes, differences, faults, rows: rows.length, leftOut, unchanged }
}

/** A record's value as its text says; null for none, and for one that cannot be read, which reading it again tells. */
function mappingIn(text: string | null): Mapping | null {
  const parsed = text === null ? null : parseYaml(text)
  return parsed !== null && 'value' in parsed && isMapping(parsed.value as Plain)
    ? (parsed.value as Mapping)
    : null
}

interface DraftOf {
  readonly kind: 'lot' | 'control'
  readonly id: string
  readonly draft: RecordDraft
}

function changedText(
  { kind, id, draft }: DraftOf,
  before: string | null,
  { file, digest, on }: ImportOrigin,
): string | { readonly message: string; readonly mend: string } {
  const line = { file, digest, on }
  const known = draft.items(['imported'])
  const imported = known.some((one) => one['digest'] === digest) ? known : [...known, line]
  const value: Plain = inKeyOrder(kind, { ...draft.value, imported })
  const order = (path: Path) => keyOrder(kind, path)
  try {
    if (before === null) return spaced(writeYaml(value))
    return editYaml(before, [{ set: [], to: value }], { order })
  } catch (error) {
    if (!(error instanceof EditFault)) throw error
    return {
      message: `the record ${kind} ${id} cannot be added to: ${error.message}`,
      mend: 'correct the record first',
    }
  }
}

/** A blank line before each section of a record, as a person writes it. */
function spaced(text: string): string {
  return text.replace(/\n(?=[A-Za-z][\w-]*:\n)/g, '\n\n')
}

/** What a difference says, and how either value is kept. */
export function differenceFault({ kind, id, path, onRecord, inFile, place }: RecordDifference): ImportFault {
  return {
    code: 'import-differs',
    severity: 'error',
    place,
    message: `${kind} ${id}, ${pathWords(path)}: on record ${inWords(onRecord)}, in the file ${inWords(inFile)}`,
    mend: 'correct the file or the record; --replace writes what the file says over all such values',
  }
}

/** "tests 1, strength 28 d, specimens a": where a value stands in a record. */
export function pathWords(path: Path): string {
  return path.reduce<string>(
    (words, key) =>
      typeof key === 'number' ? `${words} ${key + 1}` : words === '' ? key : `${words}, ${key}`,
    '',
  )
}

/** A diagnostic of a record that an import would write, told at the cell that it comes from. */
export function recordFault(
  change: RecordChange,
  { code, line, column, message, mend }: Diagnostic,
): ImportFault {
  const offset = (lineStarts(change.text)[line - 1] ?? 0) + column - 1
  const pointer = pointerAt(change.text, offset)
  return {
    code: 'import-record',
    severity: 'error',
    place: change.draft.originOf(pointer),
    message: `${change.kind} ${change.id}: ${message} (${code})`,
    mend,
  }
}

/** The value that begins at an offset, or the last that begins before it. */
function pointerAt(text: string, offset: number): string {
  let [nearest, start] = ['', -1]
  for (const [pointer, span] of spansOf(text))
    for (const begins of [span.start, span.key?.start ?? -1])
      if (start <= begins && begins <= offset) [nearest, start] = [pointer, begins]
  return nearest
}
