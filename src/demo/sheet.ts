/** A lot's record of the sources that came later to the scenario, as its clerk writes it. */
import { dateOfDay, yearAfter } from './calendar.ts'
import type { Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import { mass } from './written-units.ts'

/** What is the same for every lot of one source. */
export interface Sheets {
  readonly units: 'SI' | 'US'
  readonly quantityT: readonly [least: number, most: number]
  readonly silos: readonly string[]
  readonly place: string
  readonly sampler: string
  readonly laboratory: string
  readonly consignees: readonly string[]
  readonly projects: readonly string[]
  /** Mass of a shipment in tonnes: least, and by how much it may be more. */
  readonly shipmentT: readonly [least: number, more: number]
}

export interface SheetOfLot {
  /** Last day of production, when the composite is complete. */
  readonly day: number
  readonly castDay: number
  readonly lastDay: number
  /** Further samples, one line each, beside the composite C. */
  readonly samples?: readonly string[]
  /** Analyses in order, each its laboratory's results of one sample. */
  readonly analyses: readonly SheetAnalysis[]
  readonly tests: readonly string[]
  /** Days after casting at which the first truck leaves. */
  readonly shipsAfter: number
  readonly billNumber: () => string
  readonly note?: string
}

export interface SheetAnalysis {
  readonly sample: string
  readonly day: number
  readonly results: Readonly<Record<string, string>>
}

/** A week's production up to the sampling day. */
const PRODUCTION_DAYS = 6

export function sheetText(sheets: Sheets, lot: SheetOfLot, chance: Chance): string {
  const [least, most] = sheets.quantityT
  const quantity = mass(least + chance.uniform() * (most - least), sheets.units, { decimals: 0, step: 10 })
  const produced = { from: dateOfDay(lot.day - PRODUCTION_DAYS), to: dateOfDay(lot.day) }
  const shipments = shipmentLines(sheets, lot, chance)
  return [
    `produced: ${flowMapping(produced)}`,
    `quantity: ${quantity}`,
    `silo: ${one(sheets.silos, chance)}`,
    '',
    'samples:',
    `  - ${composite(sheets, lot, quantity, chance)}`,
    ...(lot.samples ?? []).map((sample) => `  - ${sample}`),
    '',
    'analyses:',
    ...lot.analyses.flatMap((analysis) => analysisLines(sheets.laboratory, analysis)),
    ...(lot.tests.length === 0 ? [] : ['', 'tests:', ...lot.tests]),
    ...(shipments.length === 0 ? [] : ['', 'shipments:', ...shipments]),
    ...(lot.note === undefined ? [] : ['', `note: ${lot.note}`]),
    '',
  ].join('\n')
}

function one(texts: readonly string[], chance: Chance): string {
  return texts[chance.whole(0, texts.length - 1)] ?? ''
}

function composite(
  { place, sampler }: Sheets,
  { day }: SheetOfLot,
  quantity: string,
  chance: Chance,
): string {
  const [from, to] = [dateOfDay(day - PRODUCTION_DAYS), dateOfDay(day)]
  return flowMapping({
    id: 'C',
    kind: 'composite',
    taken: flowMapping({ from: `${from}T06:00`, to: `${to}T14:30` }),
    place,
    by: sampler,
    increments: chance.whole(14, 21),
    represents: quantity,
    retained: flowMapping({ place: 'sample store', until: yearAfter(to) }),
  })
}

function analysisLines(laboratory: string, { sample, day, results }: SheetAnalysis): string[] {
  return [
    `  - laboratory: ${laboratory}`,
    `    sample: ${sample}`,
    `    tested: ${dateOfDay(day)}`,
    '    results:',
    ...Object.entries(results).map(([key, written]) => `      ${key}: ${written}`),
  ]
}

function shipmentLines(
  sheets: Sheets,
  { castDay, lastDay, shipsAfter, billNumber }: SheetOfLot,
  chance: Chance,
) {
  const lines: string[] = []
  let day = castDay + shipsAfter
  for (let count = chance.whole(3, 4); 0 < count && day <= lastDay; count -= 1) {
    const [least, more] = sheets.shipmentT
    const shipment = flowMapping({
      bill: billNumber(),
      date: dateOfDay(day),
      mass: mass(least + more * chance.uniform(), sheets.units, { decimals: 1, step: 0 }),
      to: one(sheets.consignees, chance),
      project: one(sheets.projects, chance),
      seal: `"${chance.whole(400_000, 999_999)}"`,
    })
    lines.push(`  - ${shipment}`)
    day += chance.whole(1, 3)
  }
  return lines
}
