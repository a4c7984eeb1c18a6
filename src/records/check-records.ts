/** Sources and control batches against the other records. */
import { property, type PropertyKey } from '../core/properties.ts'
import { isFault, readQuantity } from '../core/units.ts'
import { checkDate, checkOrder, checkPeriod } from './check-dates.ts'
import { reportRange, within } from './check-physical.ts'
import { checkReadings } from './check-readings.ts'
import { checkReference, type Known } from './known.ts'
import type { FileReport } from './report.ts'
import { reportQuantity } from './schema-faults.ts'
import type { Control, Source } from './types.ts'
import { escapePointer } from './yaml-source.ts'

export function checkSource(source: Source, known: Known, report: FileReport): void {
  checkReference('producer', source.producer, '/producer', known, report)
  const plants = Object.keys(known.producers.get(source.producer)?.plants ?? {})
  if (source.plant !== undefined && known.producers.has(source.producer) && !plants.includes(source.plant)) {
    report.at('/plant', 'reference-unknown', `the producer has no plant "${source.plant}"`, plants.length === 0 ? 'write the plant in the producer’s record' : `known: ${plants.join(', ')}`)
  }
  source.criteria?.forEach((entry, index) => {
    checkReference('criterion', entry.set, `/criteria/${index}/set`, known, report)
    checkPeriod(entry, `/criteria/${index}`, report)
  })
  source.approvals?.forEach((approval, index) => { checkPeriod(approval, `/approvals/${index}`, report) })
  source.events?.forEach((event, index) => {
    const dated = [checkDate(event.date, `/events/${index}/date`, report), checkDate(event.to, `/events/${index}/to`, report)]
    if (dated.every(Boolean)) checkOrder({ earlier: event.date, later: event.to, pointer: `/events/${index}/to`, sentence: 'the event ends before it begins' }, report)
  })
  for (const [key, text] of Object.entries(source.declared ?? {})) checkDeclared(key as PropertyKey, text as string, report)
}

/** A declared value is written with its unit; which unit the schema cannot say, for it depends on the key. */
function checkDeclared(key: PropertyKey, text: string, report: FileReport): void {
  const { kind, bounds } = property(key)
  const quantity = readQuantity(text, kind)
  const pointer = `/declared/${escapePointer(key)}`
  if (isFault(quantity)) reportQuantity(pointer, quantity, [kind], report)
  else if (!within(quantity.value, bounds)) reportRange(pointer, quantity, bounds, report)
}

export function checkControl(control: Control, known: Known, report: FileReport): void {
  checkReference('condition', control.condition, '/condition', known, report)
  checkReference('laboratory', control.laboratory, '/laboratory', known, report)
  checkDate(control.cast, '/cast', report)
  checkReadings(control, '', known.conditions.get(control.condition), report)
}
