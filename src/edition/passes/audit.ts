/** Pass 4: what the audit checks say of each lot, alone and beside all others. */
import type { Pair } from '../../core/agency/pairs.ts'
import { agencyLotChecks } from '../../core/checks/agency-differs.ts'
import { blendTotal } from '../../core/checks/blend-total.ts'
import { type BatchStanding, batchStandings } from '../../core/checks/control-batches.ts'
import { readingsOfControl, specimensEqual, type SpecimensRead } from '../../core/checks/copied-specimens.ts'
import { farFromHistory } from '../../core/checks/far-from-history.ts'
import type { CheckId } from '../../core/checks/catalogue.ts'
import { type Checked, lookedOnce } from '../../core/checks/checked.ts'
import type { Finding } from '../../core/checks/finding.ts'
import { finishedBesideReadings } from '../../core/checks/finished-beside-readings.ts'
import { shippedOnMissedAge } from '../../core/checks/missed-early.ts'
import { otherSampleFindings } from '../../core/checks/other-sample-fails.ts'
import { implausibleLot } from '../../core/checks/plausible-lot.ts'
import { implausibleResults } from '../../core/checks/plausible-results.ts'
import {
  readingsAlike,
  type ReadingsIndex,
  readingsIndex,
  type ReadingsOfLot,
} from '../../core/checks/readings-alike.ts'
import { overdueFindings } from '../../core/checks/result-overdue.ts'
import { sampledOutside } from '../../core/checks/samples-and-castings.ts'
import {
  type BillIndex,
  billIndex,
  type sharedShipmentFindings,
  shippedFindings,
} from '../../core/checks/shipped.ts'
import { shippingDays } from '../../core/checks/shipping-days.ts'
import { OXIDES } from '../../core/composition/oxides.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { isSameAge } from '../../core/measure/age.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { isPropertyKey } from '../../core/measure/properties.ts'
import {
  type ConductingSpecimen,
  type CrushedSpecimen,
  figuresOf,
  isQuantity,
  type ReportedValue,
} from '../../core/mortar/mortar.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { ControlEntry, LotEntry } from '../shape/edition.ts'
import { sharedShipments, shipmentsOf } from './shipments.ts'
import type { SourceState } from './source-state.ts'

/** A row of so many is told from others by itself: own choice. */
const ENOUGH_OXIDES = 5

/** What a check asks of all lots, made once. */
export interface AuditIndex {
  readonly bills: BillIndex
  readonly readings: ReadingsIndex
  readonly controls: ReadonlyMap<string, ControlEntry>
  /** Each control batch among those before it. */
  readonly standings: ReadonlyMap<string, readonly BatchStanding[]>
}

/** @param asOf calendar date by which the records are cut */
export function auditIndex(
  records: Records,
  asOf: Moment,
  controls: ReadonlyMap<string, ControlEntry>,
): AuditIndex {
  const readings = (id: string) => readingsOf(records.lots.get(id) as Lot)
  return {
    controls,
    standings: batchStandings(controls.values()),
    bills: billIndex(listedBills(records, asOf)),
    readings: readingsIndex([...records.lots.keys()], readings),
  }
}

/** Shipments of each lot, and of each source those of several lots. */
function* listedBills(
  records: Records,
  asOf: Moment,
): Generator<Parameters<typeof sharedShipmentFindings>[0]> {
  const shared = new Map([...records.sources.keys()].map((id) => [id, sharedShipments(records, id, asOf)]))
  for (const [id, lot] of records.lots) {
    const named = shared.get(sourceOf(id))?.ofOne(id) ?? []
    yield { id, producer: producerOf(records, id), shipments: [...shipmentsOf(id, lot, asOf), ...named] }
  }
  for (const [id, { producer }] of records.sources)
    yield { id, producer, shipments: shared.get(id)?.several ?? [] }
}

/** What the checks say of one lot, in the order of its findings. */
export interface LotChecks {
  readonly first: readonly Checked[]
  /** What is asked of all lots together stands between these. */
  readonly last: readonly Checked[]
}

/**
 * What the checks say of one lot by itself and its source, those of its documents left out.
 * @param pairs of the lot, as its source compares them
 */
export function ownLotChecks(
  lot: LotEntry,
  records: Records,
  { state, pairs }: { readonly state: SourceState; readonly pairs: readonly Pair[] },
): LotChecks {
  const { id, number, record } = lot
  const findings = [
    ...overdueFindings(lot),
    ...finishedBesideReadings(lot),
    ...otherSampleFindings(lot),
    ...implausibleLot({
      id,
      number,
      pattern: state.record['lot-number-pattern'],
      quantity: record.quantity,
      mortars: mortarsOf(record, records),
    }),
    ...implausibleResults({ ...lot, kind: state.record.kind }),
    ...farFromHistory({ ...lot, class: lot.class ?? null }, state.history, state.asOf),
  ]
  const sets = specimensRead(record, records)
  return {
    first: byCheck(EVERY_LOT, findings),
    last: [
      ...agencyLotChecks(id, pairs),
      specimensEqual(id, sets),
      readingsOfControl(id, sets),
      ...blendTotal(
        id,
        (record.blend ?? []).map(({ source, share }) => ({ source, percent: share.value })),
      ),
      ...shippingDays(lot),
      ...shippedOnMissedAge(lot),
      sampledOutside(lot),
    ],
  }
}

/** What the checks say of one lot beside all others of the site. */
export function lotAmongAll(
  { id, record, shipments }: Pick<LotEntry, 'id' | 'record' | 'shipments'>,
  records: Records,
  { bills, readings }: Pick<AuditIndex, 'bills' | 'readings'>,
): Checked[] {
  const shipped = { id, producer: producerOf(records, id), quantityTonnes: record.quantity.value, shipments }
  return byCheck(AMONG_ALL, [
    ...shippedFindings(shipped, bills),
    ...readingsAlike({ id, readings: readingsOf(record) }, readings),
  ])
}

function byCheck(checks: readonly CheckId[], findings: readonly Finding[]): Checked[] {
  return checks.map((check) =>
    lookedOnce(
      check,
      findings.filter(({ reason }) => reason.code === check),
    ),
  )
}

/** Checks that ask their question of every lot by itself. */
const EVERY_LOT: readonly CheckId[] = [
  'result-overdue',
  'finished-beside-readings',
  'other-sample-fails',
  'number-off-pattern',
  'lot-quantity',
  'water-out-of-proportion',
  'result-implausible',
  'test-and-control-swapped',
  'oxide-total',
  'alkalis-above-total',
  'loss-too-small',
  'far-from-history',
]

/** Checks that hold every lot against all others. */
const AMONG_ALL: readonly CheckId[] = [
  'shipment-mass',
  'shipped-above-quantity',
  'bill-twice',
  'readings-alike',
]

function producerOf(records: Records, id: string): string {
  return records.sources.get(sourceOf(id))?.producer ?? sourceOf(id)
}

function mortarsOf(record: Lot, records: Records): Parameters<typeof implausibleLot>[0]['mortars'] {
  return (record.tests ?? []).map(({ condition, control, sample, water }) => ({
    condition,
    control,
    sample,
    water,
    controlWater: records.controls.get(control ?? '')?.water,
  }))
}

function specimensRead(record: Lot, records: Records): SpecimensRead[] {
  return (record.tests ?? []).flatMap((test) => {
    const { condition, sample, laboratory, control } = test
    const batch = control === undefined ? undefined : records.controls.get(control)
    return (['strength', 'resistivity'] as const).flatMap((of) =>
      (test[of] ?? []).map(({ age, specimens }): SpecimensRead => {
        const same = batch?.[of]?.find((reading) => isSameAge(reading.age, age))
        const head = { of, condition, age: age.text, laboratory, sample, control: control ?? null }
        return { ...head, specimens: countedReadings(specimens), ofControl: countedReadings(same?.specimens) }
      }),
    )
  })
}

/** What specimens were read as, those left out not among them. */
function countedReadings(specimens: Readonly<Record<string, object>> = {}): Quantity[] {
  return Object.values(specimens).flatMap((specimen) => {
    if (isQuantity(specimen)) return [specimen]
    const read = specimen as CrushedSpecimen & ConductingSpecimen
    const reading = read.load ?? read.strength ?? read.resistance ?? read.resistivity
    // What lies beyond the meter was not read.
    const isRead = read.excluded === undefined && reading?.above === undefined
    return reading !== undefined && isRead ? [reading] : []
  })
}

function readingsOf(record: Lot): ReadingsOfLot[] {
  const analyses = (record.analyses ?? []).map(({ sample, laboratory, results }) => ({
    sample,
    laboratory,
    ...analysisValues(results),
  }))
  const mortars = (record.tests ?? []).map(({ sample, laboratory, strength = [], resistivity = [] }) => ({
    of: 'mortar' as const,
    sample,
    laboratory,
    values: [...strength, ...resistivity].flatMap(({ age, specimens = {} }) =>
      Object.values(specimens).map((specimen) => `${age.text} ${specimenText(specimen)}`),
    ),
  }))
  return [...analyses, ...mortars]
}

/** A row of oxides may be copied alone; an analysis without one is told by all it reports. */
function analysisValues(
  results: NonNullable<Lot['analyses']>[number]['results'],
): Pick<ReadingsOfLot, 'of' | 'values'> {
  const entries = Object.entries(results)
  const oxides = entries.filter(([key]) => isPropertyKey(key) && OXIDES.includes(key))
  const [of, told] =
    ENOUGH_OXIDES <= oxides.length ? (['oxides', oxides] as const) : (['analysis', entries] as const)
  return { of, values: told.flatMap(([key, value]) => valuesOf(key, value)).sort() }
}

function valuesOf(key: string, value: ReportedValue | undefined): string[] {
  return value === undefined ? [] : figuresOf(value).map((figure) => `${key} ${figure.value.written}`)
}

function specimenText(specimen: object): string {
  if (isQuantity(specimen)) return specimen.written
  return Object.values(specimen)
    .flatMap((part: unknown) =>
      typeof part === 'object' && part !== null && isQuantity(part) ? [part.written] : [],
    )
    .join(' ')
}
