/** A lot's record with what it refers to, handed to the core. */
import type { KnownOfLot } from '../../core/evidence/lot-evidence.ts'
import { defined } from '../../core/measure/defined.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { lotResults } from '../../core/readings/lot-results.ts'
import type { LotEvidence } from '../../core/mortar/mortar.ts'
import { disruptiveDays } from '../../core/readings/disruptive-days.ts'
import { inForce, type Moment } from '../../core/measure/moment.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { type Observation, observedOver } from '../../core/result/observation.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'

/**
 * Control and test are read within this many °C of each other where neither site nor condition says
 * otherwise: own default.
 */
const READ_WITHIN = 1

/** Results of a lot as known on a date, tests that gave no value, and planned tests. */
export function resultsOfLot(id: string, lot: Lot, records: Records, asOf: Moment): KnownOfLot {
  return lotResults(evidenceOn(id, lot, records, asOf))
}

/** The same, with all that ever stood by then where anything changed. */
export function resultsOverTime(
  id: string,
  lot: Lot,
  records: Records,
  asOf: Moment,
): KnownOfLot & { readonly observations?: readonly Observation[] } {
  const evidence = evidenceOn(id, lot, records, asOf)
  const known = lotResults(evidence)
  const resultsAt = (date: Moment) => lotResults({ ...evidence, asOf: date }).results
  const observations = observedOver(disruptiveDays(evidence), resultsAt, known.results)
  return { ...known, ...defined({ observations }) }
}

function evidenceOn(id: string, lot: Lot, records: Records, asOf: Moment): LotEvidence {
  const source = records.sources.get(sourceOf(id))
  if (source === undefined)
    throw new RangeError(`resultsOfLot needs a lot whose source is on record, got ${id}`)
  return {
    samples: lot.samples,
    analyses: lot.analyses ?? [],
    tests: lot.tests ?? [],
    verification: lot.verification ?? [],
    conditions: records.conditions,
    controls: records.controls,
    kind: source.kind,
    asOf,
    graceHours: records.site.grace.value,
    readWithin: records.site['read-within']?.value ?? READ_WITHIN,
    methodOf: (laboratory, property, date) => methodInForce(records, laboratory, property, date),
    mouldOf: (laboratory, date) => mouldInForce(records, laboratory, date),
  }
}

/** The method that a laboratory uses for a property on a date, with its edition. */
export function methodInForce(
  records: Records,
  laboratory: string,
  property: string,
  date: Moment,
): string | undefined {
  const methods = records.laboratories.get(laboratory)?.methods as
    | Record<string, { method: string; edition?: string; from?: Moment; to?: Moment }[] | undefined>
    | undefined
  const method = methods?.[property]?.find((entry) => inForce(entry, date))
  return method === undefined ? undefined : [method.method, method.edition].filter(Boolean).join('-')
}

/** Side of the cubes that a laboratory casts on a date. */
export function mouldInForce(records: Records, laboratory: string, date: Moment): Quantity | undefined {
  return records.laboratories.get(laboratory)?.moulds?.find((entry) => inForce(entry, date))?.side
}
