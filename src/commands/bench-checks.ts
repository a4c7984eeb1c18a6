/**
 * What checks and histories cost beside computing, in seconds of the processor, so that what else the machine does
 * changes little: the lots of an edition, then the histories of its sources, then the checks that ask for both.
 */
import { median } from '../core/statistics/median.ts'
import { cpuUsage } from 'node:process'
import { asOfDate } from '../edition/compute.ts'
import { lotEntry } from '../edition/certificate/lot-entry.ts'
import { auditIndex } from '../edition/passes/audit.ts'
import { auditedSource, ownChecks, type ToAudit } from '../edition/passes/audited-source.ts'
import { foundBeside } from '../edition/passes/found-beside.ts'
import { controlEntries } from '../edition/passes/control-entries.ts'
import { Histories } from '../edition/passes/histories.ts'
import { knownRecords } from '../edition/passes/known-record.ts'
import { type SharedShipments, sharedShipments } from '../edition/passes/shipments.ts'
import { sourceEntry } from '../edition/passes/source-entry.ts'
import { sourceStates } from '../edition/passes/source-state.ts'
import { issuedReader } from '../records/issued/read-document.ts'
import { loadRecords, type Records } from '../records/load.ts'
import { today } from './program.ts'

/** Rounds that the medians are of. */
const ROUNDS = 3

/** One round goes before, so that compiling is in no figure. */
export function checksAndHistories(folder: string): Record<string, number> {
  const { records } = loadRecords(folder, today())
  oneRound(records)
  const rounds = Array.from({ length: ROUNDS }, () => oneRound(records))
  const medianOf = (figure: keyof Round) => median(rounds.map((round) => round[figure]))
  return {
    lots: records.lots.size,
    sources: records.sources.size,
    computeSeconds: medianOf('compute'),
    checksSeconds: medianOf('checks'),
    historySeconds: medianOf('history'),
  }
}

interface Round {
  readonly compute: number
  readonly history: number
  readonly checks: number
}

function oneRound(whole: Records): Round {
  const asOf = asOfDate(whole, { today: today() })
  const [compute, { records, controls, sources }] = timed(() => judgedSources(whole, asOf))
  const [history] = timed(() => {
    for (const { source } of sources) source.history()
  })
  const [checks] = timed(() => {
    const index = auditIndex(records, asOf, controls)
    for (const { sharing, ...source } of sources) {
      const beside = foundBeside(source.state, sharing, records, index)
      auditedSource(source, { own: ownChecks(source, index), beside }, index)
    }
  })
  return { compute, history, checks }
}

/** Every lot judged, and what its source's history and checks are made from. */
function judgedSources(whole: Records, asOf: ReturnType<typeof asOfDate>) {
  const records = knownRecords(whole, asOf)
  const controls = controlEntries(records, asOf)
  const from = { records, issued: issuedReader(records.contentDir) }
  const histories = new Histories(records, controls)
  const sources = [...sourceStates(records, asOf, { controls }).values()].map(
    (state): ToAudit & { readonly sharing: SharedShipments } => {
      const sharing = sharedShipments(records, state.id, asOf)
      const lots = state.lots.map((_, place) => lotEntry(from, { state, shared: sharing }, place))
      const source = { ...sourceEntry(state, lots, records), history: histories.ofSource(state, lots) }
      return { state, source, lots, several: sharing.several, records, sharing }
    },
  )
  return { records, controls, sources }
}

/** What earlier work left behind is cleared away first, so that it counts for nothing here. */
function timed<Made>(work: () => Made): [seconds: number, made: Made] {
  globalThis.gc?.()
  const started = cpuUsage()
  const made = work()
  const { user, system } = cpuUsage(started)
  return [(user + system) / 1e6, made]
}
