/** The control batches with their strengths and resistivities. */
import { defined } from '../../core/measure/defined.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { disruptiveDaysOfControl } from '../../core/readings/disruptive-days.ts'
import { controlResults } from '../../core/readings/control-results.ts'
import { observedOver } from '../../core/result/observation.ts'
import type { Records } from '../../records/load.ts'
import type { ControlEntry } from '../shape/edition.ts'
import { mouldInForce } from './lot-results.ts'

/** Every control batch cast by the as-of date, by id. */
export function controlEntries(records: Records, asOf: Moment): Map<string, ControlEntry> {
  const entries = new Map<string, ControlEntry>()
  for (const [id, record] of records.controls) {
    const condition = records.conditions.get(record.condition)
    if (condition === undefined || !isBy(record.cast, asOf)) continue
    const mould = mouldInForce(records, record.laboratory, record.cast)
    const batch = { id, control: record, condition, ...defined({ mould }) }
    const resultsAt = (date: Moment) => controlResults({ ...batch, asOf: date })
    const results = resultsAt(asOf)
    const observations = observedOver(disruptiveDaysOfControl(record, asOf), resultsAt, results)
    entries.set(id, { id, record, results, ...defined({ observations }) })
  }
  return entries
}
