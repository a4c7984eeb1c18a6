/**
 * What checks and histories cost beside computing: an edition made in the order of `computeEdition`, the processor's
 * time taken of each of the three, so that what else the machine does changes little.
 */
import { cpuUsage } from 'node:process'
import { asOfDate } from '../edition/compute.ts'
import { lotEntry } from '../edition/certificate/lot-entry.ts'
import { auditIndex, auditLot } from '../edition/passes/audit.ts'
import { auditSource } from '../edition/passes/audit-source.ts'
import { controlEntries } from '../edition/passes/control-entries.ts'
import { Histories } from '../edition/passes/histories.ts'
import { knownRecords } from '../edition/passes/known-record.ts'
import { sharedShipments } from '../edition/passes/shipments.ts'
import { sourceStates } from '../edition/passes/source-state.ts'
import { issuedReader } from '../records/issued/read-document.ts'
import { loadRecords } from '../records/load.ts'
import { today } from './program.ts'

/** Processor seconds of each part, and how much was looked at. */
export function checksAndHistories(folder: string): Record<string, number> {
  const whole = loadRecords(folder, today()).records
  const asOf = asOfDate(whole, { today: today() })
  const seconds = { compute: 0, checks: 0, history: 0 }
  const timed = <T>(part: keyof typeof seconds, work: () => T): T => {
    const started = cpuUsage()
    const made = work()
    const { user, system } = cpuUsage(started)
    seconds[part] += (user + system) / 1e6
    return made
  }
  const { records, controls, states } = timed('compute', () => {
    const records = knownRecords(whole, asOf)
    const controls = controlEntries(records, asOf)
    return { records, controls, states: sourceStates(records, asOf, controls) }
  })
  const from = { records, issued: issuedReader(records.contentDir) }
  const index = timed('checks', () => auditIndex(records, asOf, controls))
  const histories = new Histories(records, controls)
  let looked = 0
  for (const [id, state] of states) {
    const shared = sharedShipments(records, id, asOf)
    const lots = timed('compute', () => state.lots.map((_, place) => lotEntry(from, state, place, shared)))
    looked += timed('checks', () => [
      ...lots.flatMap((lot) => auditLot(lot, records, state, index)),
      ...auditSource({ state, lots, several: shared.several, records }, index),
    ]).length
    timed('history', histories.ofSource(state, lots))
  }
  for (const id of records.laboratories.keys()) timed('history', () => histories.ofLaboratory(id))
  return {
    lots: [...states.values()].reduce((sum, { lots }) => sum + lots.length, 0),
    sources: states.size,
    computeSeconds: seconds.compute,
    checksSeconds: seconds.checks,
    historySeconds: seconds.history,
    looked,
  }
}
