/** One lot, or one control batch, from its text, against records that are on record already, without the disk. */
import { offsetMinutes, type Moment } from '../../core/measure/moment.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { fileReport } from '../diagnostics/report.ts'
import type { Records } from '../records.ts'
import type { Control, Lot } from '../schema/loaded-records.ts'
import type { RecordKind } from '../schema/schemas.ts'
import { loadYaml } from '../yaml/load-yaml.ts'
import { checkHappenings, lotHappenings } from './happenings.ts'
import { checkLot } from './lot.ts'
import { checkPhysical } from './physical.ts'
import type { AllRecords } from './references.ts'
import { checkControl } from './source-and-control.ts'

export interface LotAlone {
  /** Absent where anything in the text is at fault. */
  readonly lot?: Lot
  /** In the order of the text. */
  readonly diagnostics: readonly Diagnostic[]
}

/**
 * Reads a lot as `loadRecords` would with its file among the others.
 * @param id SOURCE/LOT
 * @param records what the lot may refer to
 * @param numbers printed numbers of the source's other lots, "source|number" to the lot's id
 * @param asOf day after which nothing can have happened
 */
export function readLotAlone(
  { id, text }: { readonly id: string; readonly text: string },
  records: Records,
  numbers: ReadonlyMap<string, string>,
  asOf: Moment,
): LotAlone {
  const diagnostics: Diagnostic[] = []
  const report = fileReport(`lots/${id}.yaml`, text, diagnostics)
  const { offset } = records.site
  const lot = loadYaml('lot', text, report, offset === undefined ? 0 : offsetMinutes(offset)) as
    | Lot
    | undefined
  if (lot !== undefined) {
    const all = allOf(records)
    checkPhysical('lot', lot, report)
    checkLot(id, lot, all, report, new Map(numbers))
    checkHappenings(lotHappenings(lot), asOf && { asOf, isOfSite: false }, report)
  }
  const sound = lot !== undefined && report.count() === 0
  return { diagnostics: diagnostics.sort(byPlace), ...(sound ? { lot } : {}) }
}

/**
 * Reports a control batch likewise.
 * @param id of the batch, by its file's name
 */
export function readControlAlone(
  { id, text }: { readonly id: string; readonly text: string },
  records: Records,
): { readonly control?: Control; readonly diagnostics: readonly Diagnostic[] } {
  const diagnostics: Diagnostic[] = []
  const report = fileReport(`controls/${id}.yaml`, text, diagnostics)
  const { offset } = records.site
  const sortedAt = offset === undefined ? 0 : offsetMinutes(offset)
  const control = loadYaml('control', text, report, sortedAt) as Control | undefined
  if (control !== undefined) {
    checkPhysical('control', control, report)
    checkControl(control, allOf(records), report)
  }
  const sound = control !== undefined && report.count() === 0
  return { diagnostics: diagnostics.sort(byPlace), ...(sound ? { control } : {}) }
}

function allOf(records: Records): AllRecords {
  const ids = idsOf(records)
  return {
    ...records,
    has: (kind, name) => ids(kind).has(name),
    names: ids,
    // Where other records are written is not known here.
    place: () => undefined,
  }
}

function idsOf(records: Records): (kind: RecordKind) => ReadonlySet<string> {
  const known: Partial<Record<RecordKind, ReadonlySet<string>>> = {
    source: new Set(records.sources.keys()),
    laboratory: new Set(records.laboratories.keys()),
    condition: new Set([...records.conditions.keys(), ...records.announcedConditions.keys()]),
    control: new Set(records.controls.keys()),
    criterion: new Set(records.criteria.keys()),
    lot: new Set(records.lots.keys()),
  }
  return (kind) => known[kind] ?? new Set()
}

function byPlace(a: Diagnostic, b: Diagnostic): number {
  return a.line - b.line || a.column - b.column
}
