/** A content folder to typed, cross-referenced records and every diagnostic there is. */
import { checkLot } from './checks/lot.ts'
import { checkCondition } from './checks/condition.ts'
import { checkFormers } from './checks/former-ids.ts'
import { checkLaboratory } from './checks/laboratory.ts'
import { checkPhysical } from './checks/physical.ts'
import { checkControl, checkSource } from './checks/source-and-control.ts'
import { checkSite } from './checks/site.ts'
import { compileCriteria } from './criteria/compile.ts'
import type { Diagnostic } from './diagnostics/diagnostic.ts'
import { inOrder } from './diagnostics/diagnostic-text.ts'
import { LARGEST_BYTES, listFolder, readText } from './files.ts'
import { type FileFault, UNREAD } from './diagnostics/unread-files.ts'
import { placeOf, type Place } from './places.ts'
import { type MethodPage, readMethodPage } from './yaml/method-page.ts'
import { fileReport, type FileReport } from './diagnostics/report.ts'
import { loadYaml } from './yaml/load-yaml.ts'
import type { DescribedCondition, Records } from './records.ts'
import type { RecordKind } from './schema/schemas.ts'
import type {
  Condition,
  Control,
  CriterionRecord,
  Laboratory,
  Lot,
  Producer,
  Site,
  Source,
} from './schema/loaded-records.ts'

export type { Records }

export interface LoadedContent {
  readonly records: Records
  readonly diagnostics: readonly Diagnostic[]
  /** The folder itself cannot be read, or holds no site. */
  readonly fatal?: { readonly message: string; readonly mend: string }
}

/** Stands in where site.yaml cannot be read, so that everything else is still checked. */
const NO_SITE: Site = {
  title: '',
  units: 'SI',
  criteria: [],
  grace: { kind: 'duration', value: 0, unit: 'h', written: '0 h', decimals: 0 },
}

/**
 * Whether site.yaml could be read; without it nothing can be judged, for criteria and grace are not known.
 */
export function hasSite(records: Records): boolean {
  return records.site !== NO_SITE
}

interface Loaded<T> {
  readonly record: T
  readonly report: FileReport
}
type Store = { readonly [K in RecordKind]: Map<string, Loaded<unknown>> }
/**
 * Ids of all files by kind, those with a fault included: a reference to one of them is no fault of its own.
 */
type Files = { readonly [K in RecordKind]: Set<string> }

export function loadRecords(contentDir: string): LoadedContent {
  const listing = listFolder(contentDir)
  if ('fault' in listing)
    return fatal(
      contentDir,
      `The content folder ${contentDir} ${listing.fault}.`,
      'give a folder with records by --content DIR',
    )
  if (listing.files.length === 0)
    return fatal(
      contentDir,
      `The content folder ${contentDir} is empty.`,
      'begin with site.yaml; README.md shows a first lot',
    )
  const diagnostics: Diagnostic[] = listing.unread.map(({ path, why }) => fileFault(path, UNREAD[why]))
  const store = emptyStore()
  const files = emptyFiles()
  const methods: MethodPage[] = []
  const ids = new Map<string, string>()
  for (const { path } of listing.files) {
    const place = placeOf(path)
    if (!('kind' in place)) diagnostics.push(fileFault(path, place))
    else {
      reportCase(ids, place, path, diagnostics)
      files[place.kind].add(place.id)
      loadFile(contentDir, path, place, { store, methods, diagnostics })
    }
  }
  if (!listing.files.some((file) => file.path === 'site.yaml'))
    diagnostics.push(
      fileFault('site.yaml', {
        code: 'file-missing',
        severity: 'error',
        message: 'every content folder needs site.yaml',
        mend: 'write title, units, criteria and grace',
      }),
    )
  const records = assemble(contentDir, { store, files, methods })
  return { records, diagnostics: inOrder(diagnostics) }
}

function fatal(contentDir: string, message: string, mend: string): LoadedContent {
  return {
    records: assemble(contentDir, { store: emptyStore(), files: emptyFiles(), methods: [] }),
    diagnostics: [],
    fatal: { message, mend },
  }
}

function emptyStore(): Store {
  return {
    site: new Map(),
    producer: new Map(),
    laboratory: new Map(),
    source: new Map(),
    condition: new Map(),
    control: new Map(),
    criterion: new Map(),
    lot: new Map(),
    method: new Map(),
  }
}

function emptyFiles(): Files {
  return {
    site: new Set(),
    producer: new Set(),
    laboratory: new Set(),
    source: new Set(),
    condition: new Set(),
    control: new Set(),
    criterion: new Set(),
    lot: new Set(),
    method: new Set(),
  }
}

function fileFault(file: string, fault: FileFault): Diagnostic {
  return { ...fault, file, line: 1, column: 1 }
}

/** Two names that differ by case alone would be one file, one address on many servers. */
function reportCase(ids: Map<string, string>, place: Place, path: string, diagnostics: Diagnostic[]): void {
  const name = `${place.kind}/${place.id.toLowerCase()}`
  const other = ids.get(name)
  ids.set(name, path)
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

interface Into {
  readonly store: Store
  readonly methods: MethodPage[]
  readonly diagnostics: Diagnostic[]
}

function loadFile(folder: string, path: string, place: Place, { store, methods, diagnostics }: Into): void {
  const reading = readText(folder, path)
  if ('fault' in reading) {
    const faults = {
      missing: 'cannot be read',
      unreadable: 'cannot be read',
      'too-large': `is larger than ${LARGEST_BYTES / 1024 / 1024} MiB`,
      'not-utf8': 'is not UTF-8 text',
    }
    diagnostics.push(
      fileFault(path, {
        code: 'file-unreadable',
        severity: 'error',
        message: `the file ${faults[reading.fault]}`,
        mend: reading.fault === 'not-utf8' ? 'save it as UTF-8' : 'check the file and its permissions',
      }),
    )
    return
  }
  const report = fileReport(path, reading.text, diagnostics)
  if (place.kind === 'method') {
    const page = readMethodPage(place.id, reading.text, report)
    if (page !== undefined) methods.push(page)
    return
  }
  const record = loadYaml(place.kind, reading.text, report)
  if (record !== undefined) store[place.kind].set(place.id, { record, report })
}

function loaded<T>(map: Map<string, Loaded<unknown>>): Map<string, Loaded<T>> {
  return map as Map<string, Loaded<T>>
}

function recordsOf<T>(map: Map<string, Loaded<unknown>>): Map<string, T> {
  return new Map(
    [...loaded<T>(map)].map(([id, { record }]) => [id, record] as const).sort(([a], [b]) => (a < b ? -1 : 1)),
  )
}

/** Cross references and checks beyond one file, then the typed records; a record with an error stays out. */
function assemble(
  contentDir: string,
  { store, files, methods }: { store: Store; files: Files; methods: readonly MethodPage[] },
): Records {
  const written = new Map(
    [...loaded<CriterionRecord>(store.criterion)].map(
      ([id, { record, report }]) =>
        [
          id,
          {
            record,
            report: (pointer: string, fault: { code: string; message: string; mend: string }) =>
              report.at(pointer, fault.code as Parameters<FileReport['at']>[1], fault.message, fault.mend),
          },
        ] as const,
    ),
  )
  const criteria = compileCriteria(written, { conditions: files.condition, criteria: files.criterion })
  const records = {
    contentDir,
    site: recordsOf<Site>(store.site).get('site') ?? NO_SITE,
    producers: recordsOf<Producer>(store.producer),
    laboratories: recordsOf<Laboratory>(store.laboratory),
    sources: recordsOf<Source>(store.source),
    ...conditionsOf(recordsOf<Condition>(store.condition)),
    controls: recordsOf<Control>(store.control),
    criteria,
    lots: recordsOf<Lot>(store.lot),
    methods: [...methods].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1)),
  }
  const known = {
    ...records,
    has: (kind: RecordKind, id: string) => files[kind].has(id),
    names: (kind: RecordKind) => [...files[kind]],
  }
  for (const kind of ['condition', 'control', 'lot', 'laboratory', 'source'] as const)
    for (const { record, report } of store[kind].values()) checkPhysical(kind, record, report)
  for (const { record, report } of loaded<Site>(store.site).values()) checkSite(record, known, report)
  for (const { record, report } of loaded<Condition>(store.condition).values())
    if (isDescribed(record)) checkCondition(record, report)
  for (const { record, report } of loaded<Laboratory>(store.laboratory).values())
    checkLaboratory(record, known, report)
  for (const { record, report } of loaded<Source>(store.source).values()) checkSource(record, known, report)
  for (const { record, report } of loaded<Control>(store.control).values())
    checkControl(record, known, report)
  const numbers = new Map<string, string>()
  for (const [id, { record, report }] of loaded<Lot>(store.lot)) checkLot(id, record, known, report, numbers)
  checkFormers(loaded<Lot>(store.lot), files.lot)
  const faulty = (kind: RecordKind) =>
    [...store[kind]].filter(([, { report }]) => report.count() > 0).map(([id]) => id)
  return {
    ...records,
    lots: without(records.lots, faulty('lot')),
    controls: without(records.controls, faulty('control')),
    sources: without(records.sources, faulty('source')),
    conditions: without(records.conditions, faulty('condition')),
    announcedConditions: without(records.announcedConditions, faulty('condition')),
    laboratories: without(records.laboratories, faulty('laboratory')),
  }
}

function conditionsOf(
  all: ReadonlyMap<string, Condition>,
): Pick<Records, 'conditions' | 'announcedConditions'> {
  const described = [...all].flatMap(([id, condition]) =>
    isDescribed(condition) ? [[id, condition] as const] : [],
  )
  return {
    conditions: new Map(described),
    announcedConditions: new Map([...all].filter(([, condition]) => !isDescribed(condition))),
  }
}

/** The schema asks for the details of every standing but one. */
function isDescribed(condition: Condition): condition is DescribedCondition {
  return condition.standing !== 'details-to-be-entered'
}

function without<T>(map: ReadonlyMap<string, T>, ids: readonly string[]): ReadonlyMap<string, T> {
  const left = new Set(ids)
  return ids.length === 0 ? map : new Map([...map].filter(([id]) => !left.has(id)))
}
