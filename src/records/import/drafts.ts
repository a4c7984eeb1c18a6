/** The rows of a file as drafts of the records that they belong to: which lot, sample, analysis, test, age and specimen. */
import { isPropertyKey } from '../../core/measure/properties.ts'
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { addCasting, tellUnawaited } from './draft-casting.ts'
import { stateFigure } from './draft-figure.ts'
import { isMapping, isNothing, isSame, type Mapping, RecordDraft, type Stated } from './draft.ts'
import { hasReadings, MortarDrafts } from './draft-mortar.ts'
import type { TellFault } from './import-fault.ts'
import { fieldValue, momentOf, rowFault, statedOf } from './row-values.ts'
import type { ReadRow } from './table-rows.ts'

/** What is on record, by id; null for what is not. */
export interface OnRecord {
  readonly lot: (id: string) => Mapping | null
  readonly control: (id: string) => Mapping | null
}

export interface ImportDrafts {
  /** By SOURCE/LOT. */
  readonly lots: ReadonlyMap<string, RecordDraft>
  readonly controls: ReadonlyMap<string, RecordDraft>
}

/** Puts every row into the draft of its record; a row that does not say enough is told. */
export function draftRecords(rows: readonly ReadRow[], onRecord: OnRecord, tell: TellFault): ImportDrafts {
  const lots = new Map<string, RecordDraft>()
  const controls = new Map<string, RecordDraft>()
  const mortars = new MortarDrafts(tell)
  const draftIn = (drafts: Map<string, RecordDraft>, id: string, existing: Mapping | null, row: ReadRow) => {
    const draft = drafts.get(id) ?? new RecordDraft(existing, row.place, tell)
    drafts.set(id, draft)
    return draft
  }
  // What a lot and its samples are is known before what was found out about them.
  for (const row of rows.toSorted((a, b) => turnOf(a) - turnOf(b))) {
    if (row.table.holds === 'controls') {
      const id = fieldValue(row, 'control')
      if (id === undefined) tell(rowFault(row, 'which control batch it belongs to', 'control'))
      else mortars.add(row, draftIn(controls, id.written, onRecord.control(id.written), row), [])
      continue
    }
    const id = lotOf(row, tell)
    if (id !== null) addToLot(row, draftIn(lots, id, onRecord.lot(id), row), mortars, tell)
  }
  mortars.finish()
  for (const [id, own] of Map.groupBy(rows, lotNamed)) {
    const draft = lots.get(id ?? '')
    if (draft !== undefined) tellUnawaited(own, draft, tell)
  }
  return { lots, controls }
}

const TURNS: readonly string[] = ['lots', 'samples', 'analyses', 'controls', 'tests', 'shipments']

function turnOf({ table }: ReadRow): number {
  return TURNS.indexOf(table.holds)
}

/** SOURCE/LOT of a row that says both. */
export function lotNamed(row: ReadRow): string | null {
  const [source, lot] = [fieldValue(row, 'source'), fieldValue(row, 'lot')]
  return source === undefined || lot === undefined ? null : `${source.written}/${lot.written}`
}

function lotOf(row: ReadRow, tell: TellFault): string | null {
  const id = lotNamed(row)
  if (id === null)
    tell(
      fieldValue(row, 'lot') === undefined
        ? rowFault(row, 'which lot it belongs to', 'lot')
        : rowFault(row, 'which source the lot is of', 'source'),
    )
  return id
}

function addToLot(row: ReadRow, draft: RecordDraft, mortars: MortarDrafts, tell: TellFault): void {
  const { holds } = row.table
  addLot(row, draft)
  if (holds === 'lots') addSample(row, draft, tell)
  else if (holds === 'tests') addTest(row, draft, mortars, tell)
  else if (holds === 'shipments') addShipment(row, draft, tell)
  else addAnalyses(row, draft, tell)
}

/** Fields of a lot that stand deeper; a day of production is its beginning and its end. */
const LOT_PATHS: Readonly<Record<string, readonly Path[]>> = {
  produced: [
    ['produced', 'from'],
    ['produced', 'to'],
  ],
  'produced-from': [['produced', 'from']],
  'produced-to': [['produced', 'to']],
  'feed-cell': [['feed', 'cell']],
  'feed-moisture': [['feed', 'moisture']],
  'feed-note': [['feed', 'note']],
}

/** A column goes before what the map says of all rows. */
function addLot(row: ReadRow, draft: RecordDraft): void {
  const seen = new Set<string>()
  for (const value of row.values) {
    const { part, key } = value.field
    if (part !== 'lot' || key === 'source' || key === 'lot' || seen.has(key)) continue
    seen.add(key)
    for (const path of LOT_PATHS[key] ?? [[key]]) draft.state(path, statedOf(value))
  }
}

/** Fields of a sample that stand deeper, or that are read together with another. */
const SAMPLE_PATHS: Readonly<Record<string, Path>> = {
  'taken-from': ['taken', 'from'],
  'taken-to': ['taken', 'to'],
  retained: ['retained', 'place'],
  'retained-until': ['retained', 'until'],
}

/**
 * The sample that a row speaks of, put into the lot where the row says more than its mark.
 * @returns its mark; undefined where the row names none
 */
function addSample(row: ReadRow, draft: RecordDraft, tell: TellFault): string | undefined {
  const values = row.values.filter(({ field }) => field.part === 'sample')
  const on = momentOf(row, 'sampled', 'sampled-time')
  const id = fieldValue(row, 'sample')?.written ?? dayMark(row, on)
  const known = draft.items(['samples']).map((sample) => sample['id'])
  if (id === undefined) return known.length === 1 ? String(known[0]) : undefined
  const kind = fieldValue(row, 'sample-kind')?.written ?? (row.table.holds === 'samples' ? 'grab' : undefined)
  const says =
    values.some(({ field }) => !['id', 'on-time'].includes(field.key)) || row.table.holds === 'samples'
  if (!says) return id
  if (!known.includes(id) && kind === undefined) {
    tell(rowFault(row, `how the sample ${id} was taken`, 'sample-kind'))
    return id
  }
  const index = draft.itemOf(
    ['samples'],
    (sample) => sample['id'] === id,
    () => ({ id, kind: kind as Plain }),
    row.place,
  )
  const at = ['samples', index]
  if (on !== undefined) draft.state([...at, 'on'], on)
  const seen = new Set<string>()
  for (const value of values) {
    const { key } = value.field
    if (['id', 'on', 'on-time'].includes(key) || seen.has(key)) continue
    seen.add(key)
    draft.state([...at, ...(SAMPLE_PATHS[key] ?? [key])], statedOf(value))
  }
  return id
}

/** A regular sample is known by its day. */
function dayMark({ table }: ReadRow, on: Stated | undefined): string | undefined {
  return table.holds === 'samples' && on !== undefined
    ? String(on.written).replaceAll(':', '').replace('T', '-')
    : undefined
}

function addAnalyses(row: ReadRow, draft: RecordDraft, tell: TellFault): void {
  const sample = addSample(row, draft, tell)
  addCasting(row, draft, sample)
  const results = row.values.filter(({ name }) => isPropertyKey(name))
  if (results.length === 0 && row.table.holds === 'analyses')
    tell({
      code: 'import-row',
      severity: 'note',
      place: row.place,
      message: 'the row gives no result',
      mend: 'nothing is to do where the results are still to come',
    })
  const told = new Set<string>()
  for (const result of results) {
    const { age } = result.scope
    const scope = age === undefined ? {} : { age }
    const laboratory = fieldValue(row, 'laboratory')
    const tested = momentOf(row, 'tested', 'tested-time', scope)
    const index = analysisOf(row, draft, { sample, laboratory: laboratory?.written, tested })
    if (typeof index === 'string') {
      if (!told.has(index)) tell(rowFault(row, ANALYSIS_LACKS[index] ?? index, index))
      told.add(index)
      continue
    }
    for (const name of ['reported', 'deviations', 'subcontracted'] as const) {
      const value = fieldValue(row, name, scope)
      if (value !== undefined) draft.state(['analyses', index, name], statedOf(value))
    }
    stateFigure(draft, ['analyses', index, 'results', result.name], {
      value: result,
      condition: fieldValue(row, 'condition')?.written,
      age: fieldValue(row, 'age')?.written,
    })
  }
}

const ANALYSIS_LACKS: Readonly<Record<string, string>> = {
  sample: 'which sample was analysed',
  laboratory: 'which laboratory found its results',
  tested: 'when its results were found',
}

interface NamedAnalysis {
  readonly sample: string | undefined
  readonly laboratory: string | undefined
  readonly tested: Stated | undefined
}

/** The index of an analysis, made where there is none; the name of what is missing to tell it. */
function analysisOf(
  row: ReadRow,
  draft: RecordDraft,
  { sample, laboratory, tested }: NamedAnalysis,
): number | 'sample' | 'laboratory' | 'tested' {
  const isIt = (one: Mapping) =>
    (sample === undefined || one['sample'] === sample) &&
    (laboratory === undefined || one['laboratory'] === laboratory) &&
    (tested === undefined || isSame(one['tested'] ?? '', tested.written, { as: 'moment' }))
  if (sample !== undefined && laboratory !== undefined && tested !== undefined) {
    const index = draft.itemOf(
      ['analyses'],
      isIt,
      () => ({ laboratory, sample, tested: tested.written, results: {} }),
      row.place,
    )
    for (const key of ['laboratory', 'sample', 'tested'])
      draft.claim(['analyses', index, key], fieldValue(row, key)?.place)
    return index
  }
  const found = draft.items(['analyses']).filter(isIt)
  const [only] = found
  if (found.length === 1 && only !== undefined) return draft.items(['analyses']).indexOf(only)
  return sample === undefined ? 'sample' : laboratory === undefined ? 'laboratory' : 'tested'
}

function addTest(row: ReadRow, draft: RecordDraft, mortars: MortarDrafts, tell: TellFault): void {
  const sample = addSample(row, draft, tell)
  for (const condition of mortars.conditionsOf(row)) {
    const known = {
      sample,
      condition,
      control: fieldValue(row, 'control')?.written,
      laboratory: fieldValue(row, 'laboratory')?.written,
    }
    const cast = momentOf(row, 'cast', 'cast-time')
    const index = testOf(row, draft, known, cast)
    if (typeof index === 'number') mortars.add(row, draft, ['tests', index], condition)
    else tell(rowFault(row, TEST_LACKS[index] ?? index, index))
  }
}

const TEST_LACKS: Readonly<Record<string, string>> = {
  condition: 'at which condition the mortar was made',
  sample: 'of which sample the mortar was made',
  control: 'which control batch the mortar is compared with',
  laboratory: 'which laboratory made the mortar',
  cast: 'when the mortar was cast',
}

type KnownOfTest = Readonly<Record<'sample' | 'condition' | 'control' | 'laboratory', string | undefined>>

/** The index of a test, made where there is none; the name of what is missing to tell it. */
function testOf(
  row: ReadRow,
  draft: RecordDraft,
  known: KnownOfTest,
  cast: Stated | undefined,
): number | string {
  if (known.condition === undefined) return 'condition'
  const given = Object.entries(known).filter(([, value]) => value !== undefined)
  const isIt = (one: Mapping) =>
    // A mortar that was on record before its control is the same mortar.
    given.every(([key, value]) => one[key] === value || (key === 'control' && isNothing(one[key]))) &&
    (cast === undefined || isSame(one['cast'] ?? '', cast.written, { as: 'moment' }))
  const found = draft.items(['tests']).filter(isIt)
  const [only] = found
  if (found.length === 1 && only !== undefined) return draft.items(['tests']).indexOf(only)
  // The strength of a control beside the readings takes the place of a control batch; a casting alone is compared with none.
  const needsControl = !row.values.some(({ name }) => name === 'control-strength') && hasReadings(row)
  const names = needsControl
    ? (['sample', 'control', 'laboratory'] as const)
    : (['sample', 'laboratory'] as const)
  const missing = names.find((key) => known[key] === undefined)
  if (missing !== undefined) return missing
  if (cast === undefined) return 'cast'
  const index = draft.itemOf(
    ['tests'],
    isIt,
    () => ({ ...Object.fromEntries(given), cast: cast.written }) as Mapping,
    row.place,
  )
  for (const key of ['sample', 'condition', 'control', 'laboratory', 'cast'])
    draft.claim(['tests', index, key], fieldValue(row, key)?.place)
  return index
}

function addShipment(row: ReadRow, draft: RecordDraft, tell: TellFault): void {
  const bill = fieldValue(row, 'bill')
  if (bill === undefined) {
    tell(rowFault(row, 'its bill of lading', 'bill'))
    return
  }
  const index = draft.itemOf(
    ['shipments'],
    (one) => isMapping(one) && String(one['bill']) === bill.written,
    () => ({ bill: bill.written }),
    bill.place ?? row.place,
  )
  const seen = new Set(['bill'])
  for (const value of row.values) {
    const { part, key } = value.field
    if (part !== 'shipment' || seen.has(key)) continue
    seen.add(key)
    draft.state(['shipments', index, key], statedOf(value))
  }
}
