/** The date an edition is read on. */
import { compareMoments, dateOf, type Moment } from '../../core/measure/moment.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'

/**
 * The latest thing that has happened in a lot's record: production, sampling, a reading, a shipment or an
 * issue.
 */
function* happenings(lot: Lot): Generator<Moment> {
  yield lot.produced.to
  for (const sample of lot.samples) yield sample.taken?.to ?? sample.on ?? lot.produced.to
  for (const analysis of lot.analyses ?? []) yield analysis.tested
  for (const test of lot.tests ?? []) {
    yield test.cast
    for (const reading of [...(test.strength ?? []), ...(test.resistivity ?? [])])
      if (reading.tested !== undefined) yield reading.tested
  }
  for (const shipment of lot.shipments ?? []) yield shipment.date
  for (const result of lot.verification ?? []) yield result.tested
  for (const revision of lot.revisions ?? []) yield revision.date
}

/** Moment of the latest result in a lot's record; undefined without results. */
export function latestResult({ analyses = [], tests = [] }: Lot): Moment | undefined {
  const readings = tests.flatMap(({ strength = [], resistivity = [] }) => [...strength, ...resistivity])
  const moments = [...analyses, ...readings].flatMap(({ tested }) => tested ?? [])
  return moments.toSorted(compareMoments).at(-1)
}

/** The calendar date of the latest happening in all lots; undefined without lots. */
export function latestHappening(lots: Iterable<Lot>): Moment | undefined {
  let latest: Moment | undefined
  for (const lot of lots)
    for (const moment of happenings(lot)) if (latest === undefined || latest.day < moment.day) latest = moment
  return latest && dateOf(latest)
}
