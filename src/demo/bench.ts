/**
 * Mortars of the sources that came later to the scenario: one control batch for each casting, and the test
 * mortars beside it, as the laboratory's clerk writes them.
 */
import { mean } from 'd3'
import { clock, dateOfDay } from './calendar.ts'
import type { Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import { type Age, batchScatter, cubeFactors, END_CONTACT_OHM, SPECIMEN_CV, specimens } from './specimens.ts'
import { load, temperature } from './written-units.ts'

/** What is the same for all mortars that a laboratory makes for one source at one condition. */
export interface Bench {
  readonly laboratory: string
  readonly condition: string
  /** Letters of a control's id before and behind its casting day. */
  readonly mark: readonly [before: string, behind: string]
  readonly units: 'SI' | 'US'
  /** True strength of the control by age, MPa; a test is made at these ages and no other. */
  readonly strengthMPa: Readonly<Partial<Record<Age, number>>>
  /** True resistivity of the control at 28 d, ohm m; null where none is read. */
  readonly ohmMetre: number | null
  readonly flow: number
  readonly controlWater: number | null
  readonly cement: Readonly<Record<string, string>>
}

/** A control batch as written, and the means that test mortars beside it can be set against. */
export interface CastControl {
  readonly id: string
  readonly castDay: number
  readonly meanKilonewton: Readonly<Partial<Record<Age, number>>>
  readonly text: string
}

export interface TestMortar {
  readonly control: CastControl
  /** True index by age, per cent of the control's true strength. */
  readonly index: Readonly<Partial<Record<Age, number>>>
  /** Indices that the written loads come to whatever the scatter: planted. */
  readonly planted?: Readonly<Partial<Record<Age, number>>>
  /** True ratio of the resistivities. */
  readonly ratio?: number
  readonly water?: number
  /** Minutes by which the mortar was cast later than the first one of the day. */
  readonly minutesLater?: number
}

/** Side of a cube, mm: the mould of 50 mm, or of 2 in, which is 50.8 mm. */
const SIDE_MM = { SI: 50, US: 50.8 } as const
/** Minutes after midnight at which a control is cast and tested. */
const CONTROL_MINUTES = 540
const TEST_MINUTES = 560

/** @param lastDay readings later than this day are not yet taken */
export function castControl(bench: Bench, castDay: number, lastDay: number, chance: Chance): CastControl {
  const batch = batchScatter(chance)
  const meanKilonewton: Partial<Record<Age, number>> = {}
  const strength = agesOf(bench).map((age) => {
    const loads = cubeFactors(chance).map(
      (factor) => (bench.strengthMPa[age] ?? 0) * batch.strength * factor * kilonewtonAMPa(bench),
    )
    meanKilonewton[age] = mean(loads) ?? 0
    return strengthLine(bench, { age, castDay, minutes: CONTROL_MINUTES, lastDay }, loads, chance)
  })
  const ohmMetre = bench.ohmMetre === null ? null : bench.ohmMetre * batch.resistivity
  const lines = [
    `condition: ${bench.condition}`,
    `laboratory: ${bench.laboratory}`,
    `cement: ${flowMapping(bench.cement)}`,
    `cast: ${dateOfDay(castDay)}T${clock(CONTROL_MINUTES)}`,
    `flow: ${bench.flow + chance.whole(-2, 2)} %`,
    ...(bench.controlWater === null ? [] : [`water: ${bench.controlWater} g`]),
    ...resistivityLines(bench, ohmMetre, { castDay, minutes: CONTROL_MINUTES, lastDay }, chance),
    'strength:',
    ...strength,
  ]
  return { id: controlId(bench, castDay), castDay, meanKilonewton, text: `${lines.join('\n')}\n` }
}

/** The lines of one mortar of a lot, under `tests:` of its record. */
export function testMortarLines(
  bench: Bench,
  { control, index, planted, ratio, water, minutesLater = 0 }: TestMortar,
  lastDay: number,
  chance: Chance,
): string[] {
  const { castDay } = control
  const minutes = TEST_MINUTES + minutesLater
  const batch = batchScatter(chance)
  const strength = agesOf(bench).map((age) => {
    const trueMPa = ((bench.strengthMPa[age] ?? 0) * (index[age] ?? 0)) / 100
    const usual = cubeFactors(chance).map(
      (factor) => trueMPa * batch.strength * factor * kilonewtonAMPa(bench),
    )
    const loads = atIndex(usual, control.meanKilonewton[age] ?? null, planted?.[age])
    return strengthLine(bench, { age, castDay, minutes, lastDay }, loads, chance)
  })
  const ohmMetre =
    bench.ohmMetre === null || ratio === undefined ? null : bench.ohmMetre * ratio * batch.resistivity
  const lines = [
    `condition: ${bench.condition}`,
    `control: ${control.id}`,
    `laboratory: ${bench.laboratory}`,
    `cast: ${dateOfDay(castDay)}T${clock(minutes)}`,
    `flow: ${bench.flow + chance.whole(-3, 3)} %`,
    ...(water === undefined ? [] : [`water: ${water.toFixed(0)} g`]),
    ...resistivityLines(bench, ohmMetre, { castDay, minutes, lastDay }, chance),
    'strength:',
    ...strength,
  ]
  return ['  - sample: C', ...lines.map((line) => `    ${line}`)]
}

function agesOf({ strengthMPa }: Bench): Age[] {
  return ([7, 28] as const).filter((age) => strengthMPa[age] !== undefined)
}

function kilonewtonAMPa({ units }: Bench): number {
  return SIDE_MM[units] ** 2 / 1000
}

function controlId({ mark: [before, behind] }: Bench, castDay: number): string {
  const [year, month, dayOfMonth] = dateOfDay(castDay).split('-')
  return `${before}-${year}-${month}${dayOfMonth}-${behind}`
}

/** Loads scaled together, so that their mean comes to a planted index; as they are without one. */
function atIndex(usual: readonly number[], control: number | null, index?: number): readonly number[] {
  if (control === null || index === undefined) return usual
  const wanted = (control * index) / 100 / (mean(usual) ?? 1)
  return usual.map((each) => each * wanted)
}

interface Taken {
  readonly castDay: number
  readonly minutes: number
  readonly lastDay: number
}

function strengthLine(
  { units }: Bench,
  { age, castDay, minutes, lastDay }: Taken & { age: Age },
  kilonewtons: readonly number[],
  chance: Chance,
): string {
  if (lastDay < castDay + age) return `  - ${flowMapping({ age: `${age} d` })}`
  const tested = `${dateOfDay(castDay + age)}T${clock(minutes + 30 + chance.whole(-15, 20))}`
  const readings = kilonewtons.map((each) => cube('load', load(each, units), units))
  return `  - ${flowMapping({ age: `${age} d`, tested, specimens: specimens(age, readings) })}`
}

/** A reading by itself, or with the size of a cube of 2 in, which the condition does not give. */
function cube(key: string, reading: string, units: Bench['units']): string {
  if (units === 'SI') return reading
  const length = key === 'resistance' ? { length: '2.00 in' } : {}
  return flowMapping({ [key]: reading, side: '2.00 in', ...length })
}

function resistivityLines(
  { units }: Bench,
  ohmMetre: number | null,
  { castDay, minutes, lastDay }: Taken,
  chance: Chance,
): string[] {
  if (ohmMetre === null) return []
  if (lastDay < castDay + 28) return ['resistivity:', `  - ${flowMapping({ age: '28 d' })}`]
  const readings = [0, 1, 2].map(() => {
    const ohm = (1000 * ohmMetre) / SIDE_MM[units]
    const read = ohm * (1 + SPECIMEN_CV.resistivity * chance.normal()) + END_CONTACT_OHM
    return cube('resistance', `${Math.round(read)} ohm`, units)
  })
  const line = flowMapping({
    age: '28 d',
    tested: `${dateOfDay(castDay + 28)}T${clock(minutes - 25 + chance.whole(-8, 8))}`,
    temperature: temperature(23 + 0.2 * chance.normal(), units),
    'end-contact': `${END_CONTACT_OHM} ohm`,
    specimens: specimens(28, readings),
  })
  return ['resistivity:', `  - ${line}`]
}
