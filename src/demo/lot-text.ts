/** A lot's record as a laboratory clerk would write it. */
import { clock, dateOfDay } from './calendar.ts'
import type { Chance } from './chance.ts'
import { BATCH_CV, type ControlBatch, END_CONTACT_OHM, SPECIMEN_CV } from './controls.ts'
import type { LotModel } from './lot-model.ts'
import { BUNCHED } from './planted.ts'
import type { DemoSource } from './scenario.ts'

/** What is planted in one lot; everything else is as usual. */
export interface Planted {
  /** Specimen factors of the c311 28 d strength cubes in place of scatter. */
  readonly cubes28?: readonly number[]
  readonly daysLate28?: number
  readonly hotReading?: true
  readonly missing28?: true
  /** The 7 d loads at the standard condition gather just above the limit. */
  readonly bunched?: true
  readonly oversizeShipment?: true
  readonly oxidesOf?: LotModel
  readonly lossOnIgnition?: number
  readonly CaO?: number
  readonly verification?: true
  readonly note?: string
}

export interface LotPlan {
  readonly source: DemoSource
  readonly id: string
  readonly laboratory: string
  /** Last day of production, when the composite is complete. */
  readonly day: number
  readonly castDay: number
  readonly lastDay: number
  readonly model: LotModel
  readonly controls: readonly ControlBatch[]
  readonly biasPoints: number
  readonly biasRatio: number
  readonly billNumber: () => string
  readonly planted: Planted
}

/** Newtons of one pound-force, exact: NIST SP 811, B.8. */
const NEWTON_A_POUND = 4.4482216152605
const TONNES_A_SHORT_TON = 0.90718474

export function lotText(plan: LotPlan, chance: Chance): string {
  const { source, planted } = plan
  const quantityT = source.quantityT[0] + chance.uniform() * (source.quantityT[1] - source.quantityT[0])
  const from = dateOfDay(plan.day - 6)
  const to = dateOfDay(plan.day)
  const split = planted.verification === true
  return [
    `produced: { from: ${from}, to: ${to} }`,
    `quantity: ${mass(quantityT, source, 0, 50)}`,
    `silo: ${source.silos[chance.whole(0, source.silos.length - 1)] ?? ''}`,
    ...(source.id === 'skarnmere-reclaimed'
      ? [
          `feed: { cell: ${to < '2024-07-15' ? 'B' : 'C'}${chance.whole(1, 6)}, moisture: ${(24 + 3 * chance.normal()).toFixed(0)} % }`,
        ]
      : []),
    '',
    'samples:',
    `  - { id: C, kind: composite, taken: { from: ${from}T06:00, to: ${to}T14:30 }, place: ${source.place}, by: ${source.sampler}, increments: ${chance.whole(22, 34)}, represents: ${mass(quantityT, source, 0, 50)}, retained: { place: sample store, until: ${Number(to.slice(0, 4)) + 1}${to.slice(4)} } }`.replace(
      /-02-29 \}/,
      '-02-28 }',
    ),
    ...(split ? ['  - { id: S, kind: split, of: C, to: roads-authority }'] : []),
    '',
    'analyses:',
    ...analysis(plan),
    '',
    'tests:',
    ...plan.controls.flatMap((control) => mortar(plan, control, chance)),
    ...shipmentList(plan, quantityT, chance),
    ...(split ? ['', 'verification:', ...verification(plan, chance)] : []),
    ...(planted.note === undefined ? [] : ['', `note: ${planted.note}`]),
    '',
  ].join('\n')
}

function mass(tonnes: number, { units }: DemoSource, decimals: number, step: number): string {
  const value = units === 'US' ? tonnes / TONNES_A_SHORT_TON : tonnes
  const rounded = step === 0 ? value : Math.round(value / step) * step
  return `${rounded.toFixed(decimals)} ${units === 'US' ? 'short ton' : 't'}`
}

function analysis({ laboratory, castDay, model, planted }: LotPlan): string[] {
  const oxides = Object.entries({
    ...(planted.oxidesOf ?? model).oxides,
    ...(planted.CaO === undefined ? {} : { CaO: planted.CaO }),
  })
  const lines = [
    ...oxides.map(([key, value]) => `${key}: ${value < 0.01 ? '< 0.01' : value.toFixed(2)} %`),
    `moisture: ${model.moisture.toFixed(2)} %`,
    `loss-on-ignition: ${(planted.lossOnIgnition ?? model.lossOnIgnition).toFixed(2)} %`,
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

/** Minutes after midnight at which the test mortar is cast, 20 minutes after its control. */
const CAST_MINUTES = 560

function mortar(plan: LotPlan, control: ControlBatch, chance: Chance): string[] {
  const { model, castDay, biasPoints, biasRatio, source } = plan
  const standard = control.condition === 'c311'
  const [index7, index28, ratio] = standard
    ? [model.activity7, model.activity28, model.ratio23]
    : [model.modified7, model.modified28, model.ratio50]
  const batch = {
    strength: 1 + BATCH_CV.strength * chance.normal(),
    resistivity: 1 + BATCH_CV.resistivity * chance.normal(),
  }
  const strength = (index: number, of: number) => ((of * (index + biasPoints)) / 100) * batch.strength
  const temperature = plan.planted.hotReading === true && !standard ? 49.6 : 23 + 0.2 * chance.normal()
  const hot = plan.planted.hotReading === true && !standard ? 0.52 : 1
  return [
    '  - sample: C',
    `    condition: ${control.condition}`,
    `    control: ${control.id}`,
    `    laboratory: ${plan.laboratory}`,
    `    cast: ${dateOfDay(castDay)}T${clock(CAST_MINUTES)}`,
    `    flow: ${standard ? control.flow + chance.whole(-3, 3) : control.flow + chance.whole(-6, 8)} %`,
    ...(standard ? [`    water: ${(2.42 * model.waterRequirement).toFixed(0)} g`] : []),
    '    resistivity:',
    `      - ${resistances(plan, control.resistivity28 * ratio * biasRatio * batch.resistivity * hot, temperature, chance)}`,
    '    strength:',
    `      - ${loads(plan, { age: 7, strengthMPa: strength(index7, control.strength7), control, units: source.units }, chance)}`,
    `      - ${loads(plan, { age: 28, strengthMPa: strength(index28, control.strength28), control, units: source.units }, chance)}`,
  ]
}

function loads(
  plan: LotPlan,
  {
    age,
    strengthMPa,
    control,
    units,
  }: { age: 7 | 28; strengthMPa: number; control: ControlBatch; units: 'SI' | 'US' },
  chance: Chance,
): string {
  const { castDay, lastDay, planted } = plan
  const standard = control.condition === 'c311'
  const late = age === 28 && standard ? (planted.daysLate28 ?? 0) : 0
  if (lastDay < castDay + age + late || (age === 28 && standard && planted.missing28 === true))
    return `{ age: ${age} d }`
  const factors =
    (age === 28 && standard ? planted.cubes28 : undefined) ??
    [0, 1, 2].map(() => 1 + SPECIMEN_CV.strength * chance.normal())
  const marks = age === 7 ? 'def' : 'abc'
  const usual = factors.map((factor) => strengthMPa * 2.5 * factor)
  const kilonewtons =
    age === 7 && standard && planted.bunched === true ? bunched(usual, control.meanLoad7) : usual
  const cubes = kilonewtons.map((kilonewton, index) => `${marks[index]}: ${load(kilonewton, units)}`)
  return `{ age: ${age} d, tested: ${dateOfDay(castDay + age + late)}T${clock(CAST_MINUTES + 30 + chance.whole(-15, 20))}, specimens: { ${cubes.join(', ')} } }`
}

/**
 * Loads scaled together, so that an index just under the limit comes out just over it; others are left as
 * they are.
 */
function bunched(kilonewtons: readonly number[], control: number | null): readonly number[] {
  if (control === null) return kilonewtons
  const index = (100 * kilonewtons.reduce((sum, each) => sum + each, 0)) / kilonewtons.length / control
  if (index < BUNCHED.from || BUNCHED.limit <= index) return kilonewtons
  const share = (index - BUNCHED.from) / (BUNCHED.limit - BUNCHED.from)
  const wanted = BUNCHED.to[0] + share * (BUNCHED.to[1] - BUNCHED.to[0])
  return kilonewtons.map((each) => (each * wanted) / index)
}

function load(kilonewton: number, units: 'SI' | 'US'): string {
  return units === 'SI'
    ? `${kilonewton.toFixed(1)} kN`
    : `${(Math.round((kilonewton * 1000) / NEWTON_A_POUND / 10) * 10).toFixed(0)} lbf`
}

function resistances(
  { castDay, lastDay, source }: LotPlan,
  ohmMetre: number,
  temperature: number,
  chance: Chance,
): string {
  if (lastDay < castDay + 28) return '{ age: 28 d }'
  const cubes = ['a', 'b', 'c'].map(
    (mark) =>
      `${mark}: ${Math.round((ohmMetre / 0.05) * (1 + SPECIMEN_CV.resistivity * chance.normal()) + END_CONTACT_OHM)} ohm`,
  )
  const degrees =
    source.units === 'US'
      ? `${((temperature * 9) / 5 + 32).toFixed(1)} degF`
      : `${temperature.toFixed(1)} degC`
  return `{ age: 28 d, tested: ${dateOfDay(castDay + 28)}T${clock(528 + chance.whole(-8, 8))}, temperature: ${degrees}, end-contact: ${END_CONTACT_OHM} ohm, specimens: { ${cubes.join(', ')} } }`
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
    const tonnes =
      planted.oversizeShipment === true && lines.length === 0 ? quantityT * 1.2 : 23 + 4 * chance.uniform()
    lines.push(
      `  - { bill: ${billNumber()}, date: ${dateOfDay(day)}, mass: ${mass(tonnes, source, 1, 0)}, to: ${source.consignees[chance.whole(0, source.consignees.length - 1)] ?? ''}, project: ${source.projects[chance.whole(0, source.projects.length - 1)] ?? ''}, seal: "${chance.whole(400_000, 999_999)}" }`,
    )
    day += chance.whole(1, 4)
  }
  return lines
}

/**
 * The agency's results on its half of the split: loss on ignition always a little higher, the planted bias.
 */
function verification({ castDay, model, planted }: LotPlan, chance: Chance): string[] {
  const loss = (planted.lossOnIgnition ?? model.lossOnIgnition) + 0.55 + 0.08 * chance.normal()
  return [
    `  - { kind: split, laboratory: roads-authority, sample: S, tested: ${dateOfDay(castDay + 8)}, results: { residue-45um: ${(model.residue45 + 0.6 * chance.normal()).toFixed(1)} %, loss-on-ignition: ${loss.toFixed(2)} %, density: ${(model.densityGCm3 + 0.01 * chance.normal()).toFixed(2)} g/cm3 } }`,
  ]
}
