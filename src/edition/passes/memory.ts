/**
 * What one computation may take over from the one before, so that a saved record is on its page at once: results of a
 * lot whose record has not changed, the whole of a lot before which nothing has changed, and what is made of all lots of a
 * source where none has. A lot rests on its record, on what it refers to and on earlier lots of its source, never on later
 * ones; whatever else changes, all is made anew.
 */
import { sourceOf } from '../../core/measure/lot-id.ts'
import type { Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { SharedShipments } from './shipments.ts'
import type { ComputedLot } from './computed-lot.ts'
import type { SourceState } from './source-state.ts'
import type { LotEntry, SourceEntry } from '../shape/edition.ts'
import type { OwnChecks } from './audited-source.ts'

interface KeptSource {
  readonly background: string
  readonly lots: readonly ComputedLot[]
  readonly entries: readonly LotEntry[]
  /** What the source lists as drawn from each lot. */
  readonly shared: readonly string[]
}

/** What is made of all lots of a source together. */
interface WholeSource {
  readonly source: Omit<SourceEntry, 'findings' | 'checks' | 'auditOf'>
  readonly own: OwnChecks
}

interface KeptWhole {
  readonly entries: readonly LotEntry[]
  /** Shipments of several of its lots. */
  readonly several: string
  /** Numbers of its lots that have a fault. */
  readonly faulty: string
  readonly whole: WholeSource
}

/** What a computation asks of a memory. */
export type Remembering = Pick<Memory, 'known' | 'begin' | 'computed' | 'entries' | 'whole'>

/** Of a computation that no other one follows. */
export const NO_MEMORY: Remembering = {
  known: (_lot, _asOf, make) => make(),
  begin: () => undefined,
  computed: (_id, _record, make) => make(),
  entries: ({ recorded }, _sharing, make) => recorded.map((_, place) => make(place)),
  whole: (_state, _entries, _sharing, make) => make(),
}

export class Memory {
  #rest = ''
  #asOf = ''
  #known = new WeakMap<Lot, Lot>()
  #lots = new Map<string, ComputedLot>()
  #sources = new Map<string, KeptSource>()
  #wholes = new Map<string, KeptWhole>()

  /** A lot as it was known on a day, the same object for the same record. */
  known(lot: Lot, asOf: Moment, make: () => Lot): Lot {
    if (this.#asOf !== asOf.text) this.#known = new WeakMap()
    this.#asOf = asOf.text
    const kept = this.#known.get(lot) ?? make()
    this.#known.set(lot, kept)
    return kept
  }

  /** Begins a computation: forgets everything unless the records differ in their lots alone. */
  begin(records: Records, asOf: Moment): void {
    const rest = allButLots(records, asOf)
    if (rest === this.#rest) return
    this.#rest = rest
    this.#lots = new Map()
    this.#sources = new Map()
    this.#wholes = new Map()
  }

  /** The results of a lot, made anew only where its record is another object. */
  computed(id: string, record: Lot, make: () => ComputedLot): ComputedLot {
    const kept = this.#lots.get(id)
    if (kept?.record === record) return kept
    const lot = make()
    this.#lots.set(id, lot)
    return lot
  }

  /** The lots of a source in order of sampling; those before the first that changed are as they were. */
  entries(state: SourceState, sharing: SharedShipments, make: (place: number) => LotEntry): LotEntry[] {
    const background = JSON.stringify(state.background)
    const kept = this.#sources.get(state.id)
    const changed = state.lots.findIndex((lot, place) => lot !== kept?.lots[place])
    const same = kept?.background !== background ? 0 : changed < 0 ? state.lots.length : changed
    const shared = state.lots.map(({ id }) => JSON.stringify([sharing.severalOf(id), sharing.ofOne(id)]))
    const entries = state.lots.map(({ record }, place) => {
      const entry = kept?.entries[place]
      const isAsBefore = place < same && shared[place] === kept?.shared[place] && !namesAnother(record)
      return entry !== undefined && isAsBefore ? entry : make(place)
    })
    this.#sources.set(state.id, { background, lots: state.lots, entries, shared })
    return entries
  }

  /** @param entries of all lots of the source, as made by `entries` */
  whole(
    { id, faultyNumbers }: SourceState,
    entries: readonly LotEntry[],
    sharing: SharedShipments,
    make: () => WholeSource,
  ): WholeSource {
    const kept = this.#wholes.get(id)
    const several = JSON.stringify(sharing.several)
    const faulty = JSON.stringify(faultyNumbers)
    const isAsBefore =
      kept?.several === several &&
      kept.faulty === faulty &&
      kept.entries.length === entries.length &&
      entries.every((entry, place) => entry === kept.entries[place])
    if (isAsBefore) return kept.whole
    const whole = make()
    this.#wholes.set(id, { entries, several, faulty, whole })
    return whole
  }
}

/** A withdrawn lot says whether the one that replaces it was issued, which may be a later one. */
function namesAnother({ revisions = [] }: Lot): boolean {
  return revisions.some((revision) => revision['replaced-by'] !== undefined)
}

/** Everything that all lots may rest on, as text: what is read anew is another object although nothing changed. */
function allButLots(records: Records, asOf: Moment): string {
  const {
    lots,
    studies: _studies,
    methods: _methods,
    unsoundDocuments,
    faultyNumbers: _numbers,
    ...others
  } = records
  const renamed = [...lots].flatMap(([id, { formerly }]) => (formerly === undefined ? [] : [[id, formerly]]))
  const orphans = [...lots.keys()].filter((id) => !records.sources.has(sourceOf(id)))
  return JSON.stringify([asOf, renamed, orphans, [...unsoundDocuments], Object.values(others).map(plain)])
}

function plain(value: unknown): unknown {
  return value instanceof Map ? [...value] : value
}
