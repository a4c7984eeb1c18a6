/** Control batches: one for each laboratory, condition and casting day, shared by all lots cast that day. */
import { clock, dateOfDay } from './calendar.ts'
import type { Chance } from './chance.ts'
import { CONTROL, type ConditionId, LABORATORY_BIAS } from './scenario.ts'

export interface ControlBatch {
  readonly id: string
  readonly laboratory: string
  readonly condition: ConditionId
  readonly day: number
  /**
   * True values that the day's test mortars are compared with: cement lot and laboratory, not this batch's
   * own scatter.
   */
  readonly strength7: number
  readonly strength28: number
  readonly resistivity28: number
  readonly flow: number
  /** Mean of the 7 d loads as written, kN; null while they are not yet taken. */
  readonly meanLoad7: number | null
  readonly text: string
}

/** Months that one lot of cement lasts. */
const CEMENT_LOT_DAYS = 274
const CEMENT_STRENGTH_SD = 0.03
/** Coefficients of variation of a batch and of one specimen within it (invented, of usual size). */
export const BATCH_CV = { strength: 0.018, resistivity: 0.03 }
export const SPECIMEN_CV = { strength: 0.02, resistivity: 0.02 }
export const END_CONTACT_OHM = 4.1

export interface ControlStore {
  batch(laboratory: string, condition: ConditionId, day: number): ControlBatch
  readonly made: ReadonlyMap<string, ControlBatch>
}

/**
 * @param chance of the scenario
 * @param lastDay readings later than this day are not yet taken
 */
export function controlStore(chance: Chance, firstDay: number, lastDay: number): ControlStore {
  const made = new Map<string, ControlBatch>()
  const cement = new Map<number, number>()
  const cementFactor = (lot: number) => {
    const factor = cement.get(lot) ?? 1 + CEMENT_STRENGTH_SD * chance.normal()
    cement.set(lot, factor)
    return factor
  }
  return {
    made,
    batch: (laboratory, condition, day) => {
      const key = `${laboratory}|${condition}|${day}`
      const known = made.get(key)
      if (known !== undefined) return known
      const lot = Math.floor((day - firstDay) / CEMENT_LOT_DAYS)
      const batch = makeBatch(
        {
          laboratory,
          condition,
          day,
          lot,
          factor: cementFactor(lot) * drift(laboratory, day, lastDay),
          lastDay,
        },
        chance,
      )
      made.set(key, batch)
      return batch
    },
  }
}

/**
 * One laboratory's control lost 5 % over eight months before the scenario's last winter, then was put right.
 */
function drift(laboratory: string, day: number, lastDay: number): number {
  if (laboratory !== 'skarnmere-works') return 1
  const since = day - (lastDay - 500)
  return since < 0 || 240 < since ? 1 : 1 - (0.05 * since) / 240
}

interface Plan {
  readonly laboratory: string
  readonly condition: ConditionId
  readonly day: number
  readonly lot: number
  readonly factor: number
  readonly lastDay: number
}

function makeBatch({ laboratory, condition, day, lot, factor, lastDay }: Plan, chance: Chance): ControlBatch {
  const usual = CONTROL[condition]
  const date = dateOfDay(day)
  const id = `${LABORATORY_BIAS[laboratory]?.prefix ?? 'LB'}-${date.slice(0, 4)}-${date.slice(5, 7)}${date.slice(8, 10)}-${condition === 'c311' ? '23' : '50'}`
  const batch = {
    strength: 1 + BATCH_CV.strength * chance.normal(),
    resistivity: 1 + BATCH_CV.resistivity * chance.normal(),
  }
  const strength7 = usual.strength7 * factor
  const strength28 = usual.strength28 * factor
  const flow = usual.flow + chance.whole(-2, 2)
  const resistivity = resistances(usual.resistivity28 * batch.resistivity, 28, day, lastDay, chance)
  const seven = loads(strength7 * batch.strength, 7, day, lastDay, chance)
  const twentyEight = loads(strength28 * batch.strength, 28, day, lastDay, chance)
  const lines = [
    `condition: ${condition}`,
    `laboratory: ${laboratory}`,
    `cement: { lot: PC-${String.fromCharCode(65 + (lot % 26))}${lot < 26 ? '' : lot}, type: portland, Na2O-equivalent: ${(0.62 + 0.01 * (lot % 4)).toFixed(2)} % }`,
    `cast: ${date}T09:00`,
    `flow: ${flow} %`,
    ...(condition === 'c311' ? ['water: 242 g'] : []),
    'resistivity:',
    `  - ${resistivity}`,
    'strength:',
    `  - ${seven.text}`,
    `  - ${twentyEight.text}`,
  ]
  return {
    id,
    laboratory,
    condition,
    day,
    strength7,
    strength28,
    resistivity28: usual.resistivity28,
    flow,
    meanLoad7: seven.meanKilonewton,
    text: `${lines.join('\n')}\n`,
  }
}

const MARKS: Readonly<Record<number, string>> = { 7: 'def', 28: 'abc' }

function loads(
  strengthMPa: number,
  age: number,
  day: number,
  lastDay: number,
  chance: Chance,
): { text: string; meanKilonewton: number | null } {
  if (lastDay < day + age) return { text: `{ age: ${age} d }`, meanKilonewton: null }
  const marks = [...(MARKS[age] ?? '')]
  const written = marks.map(() =>
    (strengthMPa * 2.5 * (1 + SPECIMEN_CV.strength * chance.normal())).toFixed(1),
  )
  const cubes = marks.map((mark, index) => `${mark}: ${written[index]} kN`)
  return {
    text: `{ age: ${age} d, tested: ${dateOfDay(day + age)}T${clock(575 + chance.whole(-10, 10))}, specimens: { ${cubes.join(', ')} } }`,
    meanKilonewton: written.reduce((sum, load) => sum + Number(load), 0) / written.length,
  }
}

function resistances(ohmMetre: number, age: number, day: number, lastDay: number, chance: Chance): string {
  if (lastDay < day + age) return `{ age: ${age} d }`
  const cubes = [...(MARKS[age] ?? '')].map(
    (mark) =>
      `${mark}: ${Math.round((ohmMetre / 0.05) * (1 + SPECIMEN_CV.resistivity * chance.normal()) + END_CONTACT_OHM)} ohm`,
  )
  return `{ age: ${age} d, tested: ${dateOfDay(day + age)}T${clock(520 + chance.whole(-8, 8))}, temperature: ${(23 + 0.2 * chance.normal()).toFixed(1)} degC, end-contact: ${END_CONTACT_OHM} ohm, specimens: { ${cubes.join(', ')} } }`
}
