/**
 * What lots and sources rest on, in one digest each: the same only where all that was computed of them is the same. A lot
 * rests on its record, on what it refers to and on earlier lots of its source; what changes later leaves its digest as it was.
 * Nor does another as-of day change it, while the lot awaits nothing and no date that it rests on was passed in between.
 */
import { everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { uncertaintyFromBatches } from '../../core/evidence/lot-evidence.ts'
import { kept } from '../../core/measure/kept.ts'
import { presentId } from '../../core/measure/lot-id.ts'
import { type Moment, readMoment } from '../../core/measure/moment.ts'
import { once } from '../../core/measure/once.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { observationsOf } from '../../core/result/observation.ts'
import { digestOf } from '../../records/issued/digest.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { LotEntry } from '../shape/edition.ts'
import type { SharedShipments } from './shipments.ts'
import type { RecordedLot, SourceState } from './source-state.ts'

export type LotDigest = readonly [lot: string, digest: string]

export interface RestsOn {
  /** What the lots of a source tell of scatter. @param lots in order of sampling */
  readonly batches: (source: string, lots: readonly RecordedLot[]) => string
  /**
   * A source with all its lots.
   * @param beside what checks that hold all sources together found of it, and what it takes from control batches that are
   * not its own
   */
  readonly source: (state: SourceState, sharing: SharedShipments, beside: unknown) => string
  /** Each lot of a source, in order of sampling, without the day and without what was found of it. */
  readonly lotsAlone: (state: SourceState, sharing: SharedShipments) => LotDigest[]
  /**
   * The same with both.
   * @param alone what `lotsAlone` gives
   * @param entry of the lot at a place: what was found of it beside others is in its findings
   */
  readonly lots: (alone: readonly LotDigest[], entry: (place: number) => LotEntry) => LotDigest[]
  /** What statistics and checks say of a laboratory. */
  readonly laboratory: () => string
  readonly study: (id: string) => string
  /** A control batch with its results. */
  readonly control: (id: string) => string
}

/** @param records cut at the day that the states are of */
export function restsOn(records: Records, asOf: Moment): RestsOn {
  const common = once(() => {
    const text = JSON.stringify(ofAllLots(records))
    return digestOfAll([text, passedDates(text, asOf)])
  })
  const controls = once(() => digestOfAll([...records.controls]))
  const control = new Map<string, string>()
  const ofControl = (id: string) => {
    const known = control.get(id) ?? digestOfRecord(records.controls.get(id) ?? null, asOf)
    control.set(id, known)
    return known
  }
  const chains = new Map<string, Chain>()
  const chainOf = (source: string, lots: readonly RecordedLot[]) =>
    kept(chains, source, () => chain(lots, asOf, ofControl))
  return {
    batches: (source, lots) => digestOfAll([asOf, common(), chainOf(source, lots).tested.at(-1) ?? null]),
    source: (state, { several }, beside) =>
      digestOfAll([
        asOf,
        common(),
        chainOf(state.id, state.recorded),
        state.record,
        state.background,
        state.faultyNumbers,
        replacing(state.recorded, records),
        several,
        beside,
      ]),
    lotsAlone: (state, { severalOf, ofOne }) => {
      const [own, doubts] = [chainOf(state.id, state.recorded), doubtChain(state)]
      return state.recorded.map((lot, place) => [
        lot.id,
        digestOfAll([
          common(),
          own.tested[place] ?? null,
          own.alone[place] ?? null,
          doubts[place] ?? null,
          severalOf(lot.id),
          ofOne(lot.id),
          replacing([lot], records),
        ]),
      ])
    },
    lots: (alone, entry) =>
      alone.map(([id, digest], place) => {
        const lot = entry(place)
        return [id, digestOfAll([digest, isSettled(lot) ? null : asOf, lot.findings])]
      }),
    laboratory: () => digestOfAll([asOf, common(), controls()]),
    study: (id) => digestOfAll([asOf, common(), records.studies.get(id) ?? null]),
    control: (id) => digestOfAll([common(), ofControl(id)]),
  }
}

/** All that any lot may rest on, but for control batches and other lots. */
function ofAllLots(records: Records): unknown[] {
  const { site, producers, laboratories, conditions, announcedConditions, criteria, unsoundDocuments } =
    records
  // Shipments of several lots are told of each lot that they may have come from.
  const sources = [...records.sources].map(([id, { shipments: _, answers: _answers, ...source }]) => [
    id,
    source,
  ])
  const maps = [producers, laboratories, conditions, announcedConditions, criteria]
  // The day that the site is read on is asked for apart.
  const { 'as-of': _asOf, ...read } = site
  return [read, ...maps.map((map) => [...map]), sources, [...unsoundDocuments]]
}

/** Of each lot in order of sampling. */
interface Chain {
  /** What is on record of it and of its controls, and of all before it, but for what no later lot asks for. */
  readonly tested: readonly string[]
  /** The rest of its own: what was shipped, and how long its samples are kept. */
  readonly alone: readonly string[]
}

function chain(lots: readonly RecordedLot[], asOf: Moment, ofControl: (id: string) => string): Chain {
  let before = ''
  const tested = lots.map(({ id, record }) => {
    const controls = (record.tests ?? []).flatMap(({ control }) =>
      control === undefined ? [] : [ofControl(control)],
    )
    before = digestOfAll([before, id, digestOfRecord(askedLater(record), asOf), controls])
    return before
  })
  return { tested, alone: lots.map(({ record }) => digestOfRecord(notAskedLater(record), asOf)) }
}

function askedLater({ shipments: _, samples, ...record }: Lot): object {
  return { ...record, samples: samples?.map(({ retained: _retained, ...sample }) => sample) }
}

function notAskedLater({ shipments, samples }: Lot): unknown {
  return [shipments ?? null, samples?.map(({ retained }) => retained ?? null) ?? null]
}

/**
 * The same of what earlier batches of its laboratories say of its indices: all that a lot takes from lots of other sources
 * and from controls that are not its own.
 */
function doubtChain({ lots, background }: SourceState): string[] {
  let before = ''
  return lots.map((lot) => {
    const doubts = observationsOf(lot).flatMap(({ result }) =>
      result.property in RATIO_OF ? [uncertaintyFromBatches(background, result) ?? null] : [],
    )
    before = digestOfAll([before, doubts])
    return before
  })
}

/** Lots that withdrawn ones name in their place may come later: what is on record of each. */
function replacing(lots: readonly RecordedLot[], records: Records): unknown[] {
  return lots.flatMap(({ record }) =>
    (record.revisions ?? []).flatMap((revision) => {
      const id = revision['replaced-by']
      return id === undefined ? [] : [[id, records.lots.get(presentId(records.lots, id) ?? id) ?? null]]
    }),
  )
}

function digestOfRecord(record: unknown, asOf: Moment): string {
  const text = JSON.stringify(record)
  return digestOfAll([text, passedDates(text, asOf)])
}

/** Dates this near to the as-of day count as of another day each day: an offset may put them on either side of it. */
const NEAR_DAYS = 2

/**
 * How many of the dates in a text lie before a day, and the day itself while any is near: whatever holds from a date, up to
 * one or after one, holds alike on all days for which this is the same.
 */
function passedDates(text: string, asOf: Moment): unknown[] {
  let [passed, near] = [0, false]
  for (const [date] of text.matchAll(/\b\d{4}-\d{2}-\d{2}/g)) {
    const { day } = readMoment(date)
    if (day < asOf.day) passed += 1
    if (Math.abs(day - asOf.day) <= NEAR_DAYS) near = true
  }
  return [passed, near ? asOf.day : null]
}

/** Whether no later day alone makes anything else of the lot: a draft and a document out of force state the day. */
export function isSettled({
  state,
  planned,
  verdicts,
}: Pick<LotEntry, 'state' | 'planned' | 'verdicts'>): boolean {
  if (state === 'draft' || planned.length > 0) return false
  return !verdicts.some(({ clauses }) =>
    [...everyClauseOutcome(clauses)].some(
      ({ kind, outcome }) => kind === 'document' && outcome === 'does-not-meet',
    ),
  )
}

function digestOfAll(values: readonly unknown[]): string {
  return digestOf(JSON.stringify(values))
}
