/** A lot's record as a laboratory clerk would write it. */
import { defined } from '../core/measure/defined.ts'
import { agencyResultLines, agencySampleLines } from './agency-samples.ts'
import { dateOfDay, dayOf, yearAfter } from './calendar.ts'
import type { Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import type { LotPlan } from './lot-plan.ts'
import { mortarLines } from './mortar-text.ts'
import { mass } from './written-units.ts'

/** Cell C of the reclaimed source's storage area is dug from this day. */
const CELL_C_FROM = dayOf('2024-07-15')

export function lotText(plan: LotPlan, chance: Chance): string {
  const { source, planted } = plan
  const quantityT = source.quantityT[0] + chance.uniform() * (source.quantityT[1] - source.quantityT[0])
  const quantity = mass(quantityT, source.units, { decimals: 0, step: 50 })
  const from = dateOfDay(plan.day - 6)
  const to = dateOfDay(plan.day)
  const split = planted.verification === true
  const further = agencyResultLines(plan)
  return [
    `produced: ${flowMapping({ from, to })}`,
    `quantity: ${quantity}`,
    `silo: ${one(source.silos, chance)}`,
    ...((source.copyOf ?? source.id) === 'skarnmere-reclaimed' ? [`feed: ${feed(plan.day, chance)}`] : []),
    '',
    'samples:',
    `  - ${composite(plan, quantity, chance)}`,
    ...(split ? [`  - ${flowMapping({ id: 'S', kind: 'split', of: 'C', to: 'roads-authority' })}`] : []),
    ...agencySampleLines(plan),
    '',
    'analyses:',
    ...analysis(plan),
    '',
    'tests:',
    ...plan.controls.flatMap((control) => mortarLines(plan, control, chance)),
    ...shipmentList(plan, quantityT, chance),
    ...(split || 0 < further.length ? ['', 'verification:'] : []),
    ...(split ? [`  - ${verification(plan, chance)}`] : []),
    ...further,
    ...(planted.note === undefined ? [] : ['', `note: ${planted.note}`]),
    '',
  ].join('\n')
}

/** One of several by chance. */
function one(texts: readonly string[], chance: Chance): string {
  return texts[chance.whole(0, texts.length - 1)] ?? ''
}

function feed(day: number, chance: Chance): string {
  return flowMapping({
    cell: `${day < CELL_C_FROM ? 'B' : 'C'}${chance.whole(1, 6)}`,
    moisture: `${(24 + 3 * chance.normal()).toFixed(0)} %`,
  })
}

function composite({ source, day }: LotPlan, represents: string, chance: Chance): string {
  const [from, to] = [dateOfDay(day - 6), dateOfDay(day)]
  return flowMapping({
    id: 'C',
    kind: 'composite',
    taken: flowMapping({ from: `${from}T06:00`, to: `${to}T14:30` }),
    place: source.place,
    by: source.sampler,
    increments: chance.whole(22, 34),
    represents,
    retained: flowMapping({ place: 'sample store', until: yearAfter(to) }),
  })
}

function analysis({ laboratory, castDay, model, planted }: LotPlan): string[] {
  const loss = planted.lossOnIgnition ?? model.lossOnIgnition
  const drawn = (planted.oxidesOf ?? model).oxides
  // A planted loss takes the place of silica, so that the whole stays a whole.
  const SiO2 = (drawn['SiO2'] ?? 0) - (loss - model.lossOnIgnition)
  const oxides = { ...drawn, SiO2, ...defined({ CaO: planted.CaO }) }
  const lines = [
    ...Object.entries(oxides).map(
      ([key, value]) => `${key}: ${value < 0.01 ? '< 0.01' : value.toFixed(2)} %`,
    ),
    `moisture: ${model.moisture.toFixed(2)} %`,
    `loss-on-ignition: ${loss.toFixed(2)} %`,
    `residue-45um: ${model.residue45.toFixed(1)} %`,
    `density: ${model.densityGCm3.toFixed(2)} g/cm3`,
    `autoclave-expansion: ${model.autoclave.toFixed(2).replace('-0.00', '0.00')} %`,
  ]
  return [
    `  - laboratory: ${laboratory}`,
    '    sample: C',
    `    tested: ${dateOfDay(castDay - 1)}`,
    '    results:',
    ...lines.map((line) => `      ${line}`),
  ]
}

/** The list with its heading; a lot from which nothing was shipped has none. */
function shipmentList(plan: LotPlan, quantityT: number, chance: Chance): string[] {
  const lines = shipments(plan, quantityT, chance)
  return lines.length === 0 ? [] : ['', 'shipments:', ...lines]
}

function shipments(
  { source, castDay, lastDay, billNumber, planted }: LotPlan,
  quantityT: number,
  chance: Chance,
): string[] {
  const lines: string[] = []
  let day = castDay + 10
  for (let count = chance.whole(4, 5); 0 < count && day <= lastDay; count -= 1) {
    const oversize = planted.oversizeShipment === true && lines.length === 0
    const tonnes = oversize ? quantityT * 1.2 : 23 + 4 * chance.uniform()
    const shipment = flowMapping({
      bill: billNumber(),
      date: dateOfDay(day),
      mass: mass(tonnes, source.units, { decimals: 1, step: 0 }),
      to: one(source.consignees, chance),
      project: one(source.projects, chance),
      seal: `"${chance.whole(400_000, 999_999)}"`,
    })
    lines.push(`  - ${shipment}`)
    day += chance.whole(1, 4)
  }
  return lines
}

/**
 * The agency's results on its half of the split: loss on ignition always a little higher, the planted bias.
 */
function verification({ castDay, model, planted }: LotPlan, chance: Chance): string {
  const loss = (planted.lossOnIgnition ?? model.lossOnIgnition) + 0.55 + 0.08 * chance.normal()
  return flowMapping({
    kind: 'split',
    laboratory: 'roads-authority',
    sample: 'S',
    tested: dateOfDay(castDay + 8),
    results: flowMapping({
      'residue-45um': `${(model.residue45 + 0.6 * chance.normal()).toFixed(1)} %`,
      'loss-on-ignition': `${loss.toFixed(2)} %`,
      density: `${(model.densityGCm3 + 0.01 * chance.normal()).toFixed(2)} g/cm3`,
    }),
  })
}
