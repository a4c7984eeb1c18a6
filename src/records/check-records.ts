/** Sources and control batches against the other records, and every quantity against what is physical. */
import { property, type PropertyKey } from '../core/properties.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../core/units.ts'
import { checkDate, checkOrder } from './check-dates.ts'
import { checkReadings } from './check-readings.ts'
import { checkReference, type Known } from './known.ts'
import type { FileReport } from './report.ts'
import { reportQuantity } from './schema-faults.ts'
import type { RecordKind } from './schemas.ts'
import type { Control, Source } from './types.ts'
import { escapePointer } from './yaml-source.ts'

export function checkSource(source: Source, known: Known, report: FileReport): void {
  checkReference('producer', source.producer, '/producer', known, report)
  const plants = Object.keys(known.producers.get(source.producer)?.plants ?? {})
  if (source.plant !== undefined && known.producers.has(source.producer) && !plants.includes(source.plant)) {
    report.at('/plant', 'reference-unknown', `the producer has no plant "${source.plant}"`, plants.length === 0 ? 'write the plant in the producer’s record' : `known: ${plants.join(', ')}`)
  }
  source.criteria?.forEach((entry, index) => { checkReference('criterion', entry.set, `/criteria/${index}/set`, known, report) })
  source.events?.forEach((event, index) => { checkOrder({ earlier: event.date, later: event.to, pointer: `/events/${index}/to`, sentence: 'the event ends before it begins' }, report) })
  for (const [key, text] of Object.entries(source.declared ?? {})) {
    const kind = property(key as PropertyKey).kind
    const quantity = readQuantity(text as string, kind)
    if (isFault(quantity)) reportQuantity(`/declared/${escapePointer(key)}`, quantity, [kind], report)
  }
}

export function checkControl(control: Control, known: Known, report: FileReport): void {
  checkReference('condition', control.condition, '/condition', known, report)
  checkReference('laboratory', control.laboratory, '/laboratory', known, report)
  checkDate(control.cast, '/cast', report)
  checkReadings(control, '', known.conditions.get(control.condition), report)
}

/** Bounds by kind of quantity, stored unit: outside them no bench reads anything. */
const BOUNDS: Readonly<Partial<Record<QuantityKind, readonly [number, number]>>> = {
  force: [1e-4, 20_000], stress: [0.01, 1000], resistance: [0, 1e9], resistivity: [1e-3, 1e7], temperature: [-50, 200], length: [0.1, 5000], area: [1, 1e6],
  'lot-mass': [1e-3, 1e7], 'batch-mass': [1e-4, 1e7], density: [0.1, 30], frequency: [0.1, 1e9], duration: [0, 200_000], 'temperature-difference': [0, 100],
}

/** Reports quantities that are not physical: by property for results, by kind elsewhere. */
export function checkPhysical(kind: RecordKind, record: unknown, report: FileReport): void {
  walk(record, '', (quantity, pointer) => {
    const key = kind === 'lot' ? /\/results\/([^/]+)(\/value)?$/.exec(pointer)?.[1] : undefined
    const bounds = key === undefined ? BOUNDS[quantity.kind] : property(key as PropertyKey).bounds
    if (bounds === undefined || (bounds[0] <= quantity.value && quantity.value <= bounds[1])) return
    report.at(pointer, 'quantity-range', `${quantity.written} is not physical here`, `check the number and its unit: between ${bounds[0]} and ${bounds[1]} in the stored unit was expected`)
  })
}

function walk(value: unknown, pointer: string, visit: (quantity: Quantity, pointer: string) => void): void {
  if (typeof value !== 'object' || value === null) return
  if ('written' in value && 'kind' in value) {
    visit(value as Quantity, pointer)
    return
  }
  if (Array.isArray(value)) {
    for (let index = 0; index < value.length; index += 1) if (typeof value[index] === 'object') walk(value[index], `${pointer}/${index}`, visit)
    return
  }
  for (const key of Object.keys(value)) {
    const member = (value as Record<string, unknown>)[key]
    if (typeof member === 'object') walk(member, `${pointer}/${escapePointer(key)}`, visit)
  }
}
