/** Records of lots and control batches as tables, one a kind, that an import with the map beside them reads back. */
import { defined } from '../../core/measure/defined.ts'
import { isPropertyKey } from '../../core/measure/properties.ts'
import { isFinishable } from '../../core/measure/ratio-indices.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { figuresOf, type ReportedValue } from '../../core/mortar/mortar.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import type { Control, Lot } from '../schema/loaded-records.ts'
import { controlRows, testRows } from './mortar-rows.ts'
import {
  type Entry,
  type ExportTable,
  listEntry,
  momentEntry,
  quantityEntry,
  TableBuilder,
  textEntry,
} from './table-builder.ts'

export interface ExportedRecords {
  readonly lots: ReadonlyMap<string, Lot>
  readonly controls: ReadonlyMap<string, Control>
}

/** Tables that hold something, those that others refer to first. */
export function exportTables({ lots, controls }: ExportedRecords): ExportTable[] {
  const [produced, samples, results, shipments] = builders()
  const strength = { lots: new TableBuilder(), controls: new TableBuilder() }
  const resistivity = { lots: new TableBuilder(), controls: new TableBuilder() }
  for (const [id, control] of controls)
    for (const { measure, entries } of controlRows(id, control))
      (measure === 'strength' ? strength : resistivity).controls.add(entries)
  for (const [id, lot] of lots) {
    const name = nameEntries(id)
    produced.add([...name, ...lotEntries(lot)])
    for (const sample of lot.samples) samples.add([...name, ...sampleEntries(sample)])
    for (const analysis of lot.analyses ?? []) results.add([...name, ...analysisEntries(analysis)])
    for (const test of lot.tests ?? [])
      for (const { measure, entries } of testRows(name, test))
        (measure === 'strength' ? strength : resistivity).lots.add(entries)
    for (const shipment of lot.shipments ?? []) shipments.add([...name, ...shipmentEntries(shipment)])
  }
  return [
    [produced, 'Lots', 'lots'],
    [samples, 'Samples', 'samples'],
    [results, 'Results', 'analyses'],
    [strength.controls, 'Control loads', 'controls'],
    [resistivity.controls, 'Control resistances', 'controls'],
    [strength.lots, 'Loads', 'tests'],
    [resistivity.lots, 'Resistances', 'tests'],
    [shipments, 'Shipments', 'shipments'],
  ].flatMap(([builder, name, holds]) => {
    const table = builder as TableBuilder
    return table.isEmpty ? [] : [table.table(name as string, holds as ExportTable['mapped']['holds'])]
  })
}

function builders(): [TableBuilder, TableBuilder, TableBuilder, TableBuilder] {
  return [new TableBuilder(), new TableBuilder(), new TableBuilder(), new TableBuilder()]
}

function nameEntries(id: string): Entry[] {
  const source = sourceOf(id)
  return [...textEntry('source', source), ...textEntry('lot', id.slice(source.length + 1))]
}

function lotEntries({ number, produced, quantity, silo, note, ...lot }: Lot): Entry[] {
  return [
    ...textEntry('number', number),
    ...textEntry('class', lot.class),
    ...momentEntry('produced-from', produced.from),
    ...momentEntry('produced-to', produced.to),
    ...quantityEntry('quantity', quantity),
    ...textEntry('purchase-order', lot['purchase-order']),
    ...textEntry('silo', silo),
    ...listEntry('silo-seals', lot.seals),
    ...textEntry('feed-cell', lot.feed?.cell),
    ...quantityEntry('feed-moisture', lot.feed?.moisture),
    ...textEntry('feed-note', lot.feed?.note),
    ...textEntry('note', note),
  ]
}

function sampleEntries(sample: Lot['samples'][number]): Entry[] {
  return [
    ...textEntry('sample', sample.id),
    ...textEntry('sample-kind', sample.kind),
    ...textEntry('duty', sample.duty),
    ...textEntry('split-of', sample.of),
    ...momentEntry('sampled-from', sample.taken?.from),
    ...momentEntry('sampled-to', sample.taken?.to),
    ...momentEntry('sampled', sample.on),
    ...textEntry('sample-place', sample.place),
    ...textEntry('sampled-by', sample.by),
    ...textEntry('sampling-method', sample.method),
    ...textEntry('increments', sample.increments),
    ...quantityEntry('sample-mass', sample.mass),
    ...textEntry('container', sample.container),
    ...quantityEntry('represents', sample.represents),
    ...textEntry('sent-to', sample.to),
    ...momentEntry('received', sample.received),
    ...textEntry('retained', sample.retained?.place),
    ...momentEntry('retained-until', sample.retained?.until),
    ...textEntry('seal', sample.seal),
  ]
}

function analysisEntries(analysis: NonNullable<Lot['analyses']>[number]): Entry[] {
  return [
    ...textEntry('laboratory', analysis.laboratory),
    ...textEntry('sample', analysis.sample),
    ...momentEntry('tested', analysis.tested),
    ...momentEntry('reported', analysis.reported),
    ...textEntry('deviations', analysis.deviations),
    ...textEntry('subcontracted', analysis.subcontracted),
    ...Object.entries(analysis.results).flatMap(([key, value]) =>
      value === undefined ? [] : resultEntries(key, value as ReportedValue),
    ),
  ]
}

function resultEntries(key: string, value: ReportedValue): Entry[] {
  return figuresOf(value).flatMap(({ value: quantity, condition, age, ...figure }) => {
    const { basis, method, 'standard-uncertainty': u } = figure as Remarks
    const mortar =
      isPropertyKey(key) && isFinishable(key)
        ? { ...defined({ condition, age: age?.text, 'standard-uncertainty': u?.written }) }
        : {}
    return quantityEntry(key, quantity, { ...mortar, ...defined({ basis, method }) })
  })
}

interface Remarks {
  readonly basis?: string
  readonly method?: string
  readonly 'standard-uncertainty'?: Quantity
}

function shipmentEntries(shipment: NonNullable<Lot['shipments']>[number]): Entry[] {
  return [
    ...textEntry('bill', shipment.bill),
    ...momentEntry('date', shipment.date),
    ...quantityEntry('mass', shipment.mass),
    ...textEntry('to', shipment.to),
    ...textEntry('project', shipment.project),
    ...textEntry('purchase-order', shipment['purchase-order']),
    ...textEntry('seal', shipment.seal),
    ...textEntry('vehicle', shipment.vehicle),
  ]
}
