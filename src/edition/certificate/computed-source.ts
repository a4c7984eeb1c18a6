/** A source with all its lots, computed when something of it is first asked for, or again after it was let go. */
import type { LastUsed } from '../../core/measure/last-used.ts'
import { once } from '../../core/measure/once.ts'
import type { IssuedReader } from '../../records/issued/read-document.ts'
import type { Records } from '../../records/records.ts'
import { lotEntry } from './lot-entry.ts'
import type { LotEntry, ShipmentEntry, SourceEntry } from '../shape/edition.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import type { AuditIndex } from '../passes/audit.ts'
import { auditedSource, ownChecks } from '../passes/audited-source.ts'
import { type FoundBeside, foundBeside } from '../passes/found-beside.ts'
import type { Histories } from '../passes/histories.ts'
import type { Remembering } from '../passes/memory.ts'
import { type PartsOfLots, partsOfLots } from '../passes/parts-of-lots.ts'
import type { KeptParts } from '../passes/parts-of-sources.ts'
import type { LotDigest, RestsOn } from '../passes/rests-on.ts'
import { type SharedShipments, sharedShipments } from '../passes/shipments.ts'
import { sourceEntry } from '../passes/source-entry.ts'
import type { SourceState } from '../passes/source-state.ts'

export interface WholeSource {
  readonly source: SourceEntry
  /** By id, in order of sampling. */
  readonly lots: ReadonlyMap<string, LotEntry>
  /** Each once, in order of date, then of bill. */
  readonly shipments: readonly ShipmentEntry[]
}

export interface ComputedSource {
  readonly whole: () => WholeSource
  /** Digest of all that the whole is made of, which need not be computed for it. */
  readonly restsOn: () => string
  /** The same of each of its lots; what was found of a lot is in it, so that the whole is computed. */
  readonly lotsRestOn: () => readonly LotDigest[]
}

export interface Making {
  readonly records: Records
  readonly issued: IssuedReader
  readonly index: AuditIndex
  readonly histories: Histories
  readonly memory: Remembering
  /** Sources that stay computed, by id. */
  readonly held: LastUsed<WholeSource>
  readonly rests: RestsOn
  /** What earlier computations with the same program made. */
  readonly kept?: KeptParts | undefined
  readonly atLot: () => void
}

export function computedSource(state: SourceState, making: Making): ComputedSource {
  const { records, index, rests, held } = making
  const sharing = once(() => sharedShipments(records, state.id, state.asOf))
  const beside = once(() => foundBeside(state, sharing(), records, index))
  const alone = once(() => rests.lotsAlone(state, sharing()))
  const whole = () =>
    held.of(state.id, lotsIn, () => wholeSource(state, sharing(), { ...making, beside, alone }))
  return {
    whole,
    restsOn: once(() => rests.source(state, sharing(), [beside(), fromControls(state, making)])),
    lotsRestOn: once(() => {
      const lots = [...whole().lots.values()]
      return rests.lots(alone(), (place) => lots[place] as LotEntry)
    }),
  }
}

function lotsIn({ lots }: WholeSource): number {
  return lots.size
}

/** All that a source takes from control batches beside those of its lots, scatter left out. */
function fromControls({ recorded }: SourceState, { index, histories }: Making): unknown[] {
  const own = new Set(
    recorded.flatMap(({ record }) => (record.tests ?? []).flatMap((test) => test.control ?? [])),
  )
  return [histories.bridges, [...own].map((id) => index.standings.get(id) ?? null)]
}

interface OfSource {
  readonly beside: () => FoundBeside
  readonly alone: () => readonly LotDigest[]
}

function wholeSource(
  state: SourceState,
  sharing: SharedShipments,
  { records, issued, index, histories, memory, kept, atLot, beside, alone }: Making & OfSource,
): WholeSource {
  const from = { records, issued }
  const partsOf = (name: string): PartsOfLots => {
    const parts = partsOfLots(kept, { source: state.id, name, asOf: state.asOf, restOn: alone })
    return {
      ...parts,
      of: (place, make, isSettled) => {
        atLot()
        return parts.of(place, make, isSettled)
      },
    }
  }
  const [sinceIssue, checked] = [partsOf('since its issue'), partsOf('checked alone')]
  const computed = memory.entries(state, sharing, (place) =>
    lotEntry(from, { state, shared: sharing, known: sinceIssue.of }, place),
  )
  sinceIssue.end()
  const toAudit = { state, lots: computed, several: sharing.several, records }
  const { source, own } = memory.whole(state, computed, sharing, () => {
    const made = sourceEntry(state, computed, records)
    const all = { ...made, history: histories.ofSource(state, computed) }
    return { source: all, own: ownChecks({ ...toAudit, source: all, known: checked.of }, index) }
  })
  checked.end()
  atLot()
  const { lots, ...audit } = auditedSource(toAudit, { own, beside: beside() }, index)
  const shipments = [...sharing.several, ...lots.flatMap((lot) => lot.shipments)].sort(byDateAndBill)
  return {
    source: { ...source, ...audit },
    lots: new Map(lots.map((lot) => [lot.id, lot])),
    shipments,
  }
}
