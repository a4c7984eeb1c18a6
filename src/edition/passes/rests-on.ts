/**
 * What lots and sources rest on, in one digest each: the same only where all that was computed of them is the same. A lot
 * rests on its record, on what it refers to and on earlier lots of its source; what changes later leaves its digest as it was.
 */
import type { Finding } from '../../core/checks/finding.ts'
import { uncertaintyFromBatches } from '../../core/evidence/lot-evidence.ts'
import { once } from '../../core/measure/once.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { observationsOf } from '../../core/result/observation.ts'
import { digestOf } from '../../records/issued/digest.ts'
import type { Records } from '../../records/records.ts'
import type { ComputedLot } from './computed-lot.ts'
import type { SharedShipments } from './shipments.ts'
import type { SourceState } from './source-state.ts'

export interface RestsOn {
  /** A source with all its lots. @param beside what checks that hold all sources together found of it */
  readonly source: (state: SourceState, sharing: SharedShipments, beside: unknown) => string
  /**
   * Each lot of a source, in order of sampling.
   * @param findings of the lot at a place, in which all that was found beside others is
   */
  readonly lots: (
    state: SourceState,
    sharing: SharedShipments,
    findings: (place: number) => readonly Finding[],
  ) => (readonly [lot: string, digest: string])[]
  /** What statistics and checks say of a laboratory. */
  readonly laboratory: () => string
  readonly study: (id: string) => string
}

/** @param records cut at the day that the states are of */
export function restsOn(records: Records, asOf: SourceState['asOf']): RestsOn {
  const common = once(() => digestOfAll([asOf, ...ofAllLots(records)]))
  const controls = once(() => digestOfAll([...records.controls]))
  const control = new Map<string, string>()
  const ofControl = (id: string) => {
    const known = control.get(id) ?? digestOfAll([records.controls.get(id) ?? null])
    control.set(id, known)
    return known
  }
  const chains = new WeakMap<SourceState, string[]>()
  const chainOf = (state: SourceState) => {
    const known = chains.get(state) ?? chain(state, ofControl)
    chains.set(state, known)
    return known
  }
  return {
    source: (state, { several }, beside) =>
      digestOfAll([
        common(),
        controls(),
        chainOf(state).at(-1) ?? null,
        state.record,
        state.background,
        state.faultyNumbers,
        replacing(state.lots, records),
        several,
        beside,
      ]),
    lots: (state, { severalOf, ofOne }, findings) =>
      state.lots.map((lot, place) => [
        lot.id,
        digestOfAll([
          common(),
          chainOf(state)[place] ?? null,
          severalOf(lot.id),
          ofOne(lot.id),
          replacing([lot], records),
          findings(place),
        ]),
      ]),
    laboratory: () => digestOfAll([common(), controls()]),
    study: (id) => digestOfAll([common(), records.studies.get(id) ?? null]),
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
  return [site, ...maps.map((map) => [...map]), sources, [...unsoundDocuments]]
}

/** Of each lot in order of sampling: what it is made of, and of all before it. */
function chain({ lots, background }: SourceState, ofControl: (id: string) => string): string[] {
  let before = ''
  return lots.map((lot) => {
    const controls = (lot.record.tests ?? []).flatMap(({ control }) =>
      control === undefined ? [] : [ofControl(control)],
    )
    before = digestOfAll([before, lot.id, lot.record, controls, doubtOf(lot, background)])
    return before
  })
}

/** What earlier batches of its laboratories say of its indices: all that it takes from other lots and from controls not its own. */
function doubtOf(lot: ComputedLot, background: SourceState['background']): unknown[] {
  return observationsOf(lot).flatMap(({ result }) =>
    result.property in RATIO_OF ? [uncertaintyFromBatches(background, result) ?? null] : [],
  )
}

/** Lots that withdrawn ones name in their place may come later: what is on record of each. */
function replacing(lots: readonly ComputedLot[], records: Records): unknown[] {
  return lots.flatMap(({ record }) =>
    (record.revisions ?? []).flatMap((revision) => {
      const id = revision['replaced-by']
      return id === undefined ? [] : [[id, records.lots.get(id) ?? formerly(id, records)]]
    }),
  )
}

function formerly(id: string, { lots }: Records): unknown {
  return [...lots].find(([, lot]) => lot.formerly?.includes(id)) ?? null
}

function digestOfAll(values: readonly unknown[]): string {
  return digestOf(JSON.stringify(values))
}
