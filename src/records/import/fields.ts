/** What a column of a sheet may give, by the kind of table, and how its cells are read. */
import { isPropertyKey, PROPERTIES, type PropertyKey } from '../../core/measure/properties.ts'
import type { QuantityKind } from '../../core/measure/units.ts'

/** What the rows of a table are. */
export const TABLE_KINDS = ['lots', 'samples', 'analyses', 'tests', 'controls', 'shipments'] as const
export type TableKind = (typeof TABLE_KINDS)[number]

/** Said of a date of tests in `every`: the day that an age ends on, counted from casting. */
export const CAST_AND_AGE = 'cast + age'

/** How the cells of a column are read. */
export type Reads =
  /** list: texts with a semicolon between them. */
  | { readonly as: 'text' | 'list' | 'id' | 'date' | 'moment' | 'time' | 'age' | 'count' }
  | { readonly as: 'quantity'; readonly kind: QuantityKind; readonly above?: true }

/** The mapping of a record that a field belongs to. */
export type Part = 'lot' | 'sample' | 'analysis' | 'figure' | 'mortar' | 'age' | 'specimen' | 'shipment'

export interface Field {
  readonly part: Part
  /** Its key there. */
  readonly key: string
  readonly reads: Reads
}

const text = { as: 'text' } as const
const list = { as: 'list' } as const
const id = { as: 'id' } as const
const date = { as: 'date' } as const
const moment = { as: 'moment' } as const
const time = { as: 'time' } as const
const quantity = (kind: QuantityKind): Reads => ({ as: 'quantity', kind })

function fields(part: Part, reads: Readonly<Record<string, Reads>>): Record<string, Field> {
  return Object.fromEntries(Object.entries(reads).map(([key, how]) => [key, { part, key, reads: how }]))
}

const LOT_NAME = fields('lot', { source: id, lot: id })
const LOT: Readonly<Record<string, Field>> = {
  ...fields('lot', { number: text, class: text, quantity: quantity('lot-mass'), silo: text }),
  produced: { part: 'lot', key: 'produced', reads: date },
  'produced-from': { part: 'lot', key: 'produced-from', reads: moment },
  'produced-to': { part: 'lot', key: 'produced-to', reads: moment },
  'feed-cell': { part: 'lot', key: 'feed-cell', reads: text },
  'feed-moisture': { part: 'lot', key: 'feed-moisture', reads: quantity('fraction') },
  'feed-note': { part: 'lot', key: 'feed-note', reads: text },
  'silo-seals': { part: 'lot', key: 'seals', reads: list },
  'purchase-order': { part: 'lot', key: 'purchase-order', reads: text },
}
const SAMPLE: Readonly<Record<string, Field>> = {
  sample: { part: 'sample', key: 'id', reads: id },
  'sample-kind': { part: 'sample', key: 'kind', reads: text },
  'sample-place': { part: 'sample', key: 'place', reads: text },
  'sampled-by': { part: 'sample', key: 'by', reads: text },
  sampled: { part: 'sample', key: 'on', reads: moment },
  'sampled-time': { part: 'sample', key: 'on-time', reads: time },
  'sampled-from': { part: 'sample', key: 'taken-from', reads: moment },
  'sampled-to': { part: 'sample', key: 'taken-to', reads: moment },
  ...fields('sample', {
    duty: text,
    increments: { as: 'count' },
    represents: quantity('lot-mass'),
    seal: text,
    received: moment,
    container: text,
    retained: text,
  }),
  'sampling-method': { part: 'sample', key: 'method', reads: text },
  'sample-mass': { part: 'sample', key: 'mass', reads: quantity('batch-mass') },
  'sent-to': { part: 'sample', key: 'to', reads: id },
  'split-of': { part: 'sample', key: 'of', reads: id },
  'retained-until': { part: 'sample', key: 'retained-until', reads: date },
}
const ANALYSIS: Readonly<Record<string, Field>> = {
  ...fields('analysis', {
    laboratory: id,
    tested: moment,
    'tested-time': time,
    reported: moment,
    deviations: text,
    subcontracted: id,
  }),
  // A finished figure names its mortar.
  ...fields('figure', { condition: id, age: { as: 'age' } }),
  ...fields('mortar', { cast: moment, 'cast-time': time }),
}
const MORTAR: Readonly<Record<string, Field>> = {
  ...fields('mortar', {
    condition: id,
    control: id,
    laboratory: id,
    cast: moment,
    'cast-time': time,
    flow: quantity('fraction'),
    water: quantity('batch-mass'),
    mould: quantity('length'),
    note: text,
  }),
  'mortar-deviations': { part: 'mortar', key: 'deviations', reads: text },
  ...fields('age', {
    age: { as: 'age' },
    tested: moment,
    'tested-time': time,
    reported: moment,
    temperature: quantity('temperature'),
    'end-contact': quantity('resistance'),
    core: quantity('temperature'),
    'left-bath': moment,
    'out-of-liquid': quantity('duration'),
    frequency: quantity('frequency'),
    conditioning: text,
    saturation: text,
    'mean-strength': quantity('stress'),
    'control-strength': quantity('stress'),
    'meter-known': quantity('resistance'),
    'meter-read': quantity('resistance'),
    'mean-resistivity': quantity('resistivity'),
    of: { as: 'count' },
    deviations: text,
    'retest-of': moment,
  }),
  specimen: { part: 'specimen', key: 'mark', reads: id },
  ...fields('specimen', {
    load: quantity('force'),
    strength: quantity('stress'),
    resistance: { as: 'quantity', kind: 'resistance', above: true },
    resistivity: { as: 'quantity', kind: 'resistivity', above: true },
    side: quantity('length'),
    'other-side': quantity('length'),
    length: quantity('length'),
    diameter: quantity('length'),
    mass: quantity('batch-mass'),
    excluded: text,
    'excluded-on': date,
  }),
}
const CEMENT: Readonly<Record<string, Field>> = {
  cement: { part: 'mortar', key: 'cement-lot', reads: text },
  'cement-type': { part: 'mortar', key: 'cement-type', reads: text },
  'cement-alkalis': { part: 'mortar', key: 'cement-Na2O-equivalent', reads: quantity('fraction') },
  'cement-strength': { part: 'mortar', key: 'cement-strength', reads: quantity('stress') },
}
const SHIPMENT = fields('shipment', {
  bill: text,
  date,
  mass: quantity('lot-mass'),
  to: text,
  project: text,
  'purchase-order': text,
  seal: text,
  vehicle: text,
})

// A row of results or readings may say what its lot and sample are as well: one table a month is common.
const FIELDS: Readonly<Record<TableKind, Readonly<Record<string, Field>>>> = {
  lots: { ...SAMPLE, ...LOT, ...LOT_NAME, ...fields('lot', { note: text }) },
  samples: { ...LOT, ...SAMPLE, ...ANALYSIS, ...LOT_NAME },
  analyses: { ...LOT, ...SAMPLE, ...ANALYSIS, ...LOT_NAME },
  tests: { ...LOT, ...SAMPLE, ...MORTAR, ...LOT_NAME },
  controls: { ...MORTAR, ...CEMENT },
  shipments: { ...SHIPMENT, ...LOT_NAME },
}

/** A field by its name in a map; undefined where tables of the kind have none of that name. */
export function fieldOf(table: TableKind, name: string): Field | undefined {
  if ((table === 'analyses' || table === 'samples') && isReported(name))
    return { part: 'analysis', key: name, reads: { as: 'quantity', kind: PROPERTIES[name].kind } }
  return Object.hasOwn(FIELDS[table], name) ? FIELDS[table][name] : undefined
}

/** Names of all fields of a kind of table. */
export function fieldNames(table: TableKind): readonly string[] {
  const properties =
    table === 'analyses' || table === 'samples' ? Object.keys(PROPERTIES).filter(isReported) : []
  return [...Object.keys(FIELDS[table]), ...properties]
}

function isReported(name: string): name is PropertyKey {
  return isPropertyKey(name) && PROPERTIES[name].nature !== 'derived'
}
