/**
 * What checks and histories cost beside computing, in seconds of the processor, so that what else the machine does
 * changes little: an edition as a whole, then its lots alone, then its histories alone; checks are the rest.
 */
import { cpuUsage } from 'node:process'
import { asOfDate, computeEdition } from '../edition/compute.ts'
import { lotEntry } from '../edition/certificate/lot-entry.ts'
import { controlEntries } from '../edition/passes/control-entries.ts'
import { Histories } from '../edition/passes/histories.ts'
import { knownRecords } from '../edition/passes/known-record.ts'
import { sharedShipments } from '../edition/passes/shipments.ts'
import { sourceStates } from '../edition/passes/source-state.ts'
import { issuedReader } from '../records/issued/read-document.ts'
import { loadRecords, type Records } from '../records/load.ts'
import { PROGRAM, today } from './program.ts'

/** The lots are made once before, so that compiling is in no figure but that of the checks themselves. */
export function checksAndHistories(folder: string): Record<string, number> {
  const { records } = loadRecords(folder, today())
  lotsAlone(records)
  const [whole, lots] = timed(() => computeEdition(records, { program: PROGRAM, today: today() }).lots.size)
  const [compute, { states, histories }] = timed(() => lotsAlone(records))
  const [history] = timed(() => {
    for (const ask of histories) ask()
  })
  return {
    lots,
    sources: states,
    computeSeconds: compute,
    checksSeconds: whole - compute - history,
    historySeconds: history,
  }
}

/** Every lot judged, with what its source's history would be made from. */
function lotsAlone(whole: Records) {
  const asOf = asOfDate(whole, { today: today() })
  const records = knownRecords(whole, asOf)
  const controls = controlEntries(records, asOf)
  const from = { records, issued: issuedReader(records.contentDir) }
  const made = new Histories(records, controls)
  const states = sourceStates(records, asOf, controls)
  const histories = [...states.values()].map((state) => {
    const shared = sharedShipments(records, state.id, asOf)
    return made.ofSource(
      state,
      state.lots.map((_, place) => lotEntry(from, state, place, shared)),
    )
  })
  return { states: states.size, histories }
}

function timed<Made>(work: () => Made): [seconds: number, made: Made] {
  const started = cpuUsage()
  const made = work()
  const { user, system } = cpuUsage(started)
  return [(user + system) / 1e6, made]
}
