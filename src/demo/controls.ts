/** Control batches: one for each laboratory, condition and casting day, shared by all lots cast that day. */
import { mean } from 'd3'
import { clock, dateOfDay } from './calendar.ts'
import type { Chance } from './chance.ts'
import { flowMapping } from './flow-mapping.ts'
import { CONTROL, type ConditionId, LABORATORY_BIAS } from './scenario.ts'
import {
  type Age,
  batchScatter,
  cubeFactors,
  cubeLoads,
  END_CONTACT_OHM,
  resistances,
  specimens,
} from './specimens.ts'

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

/** Days that one lot of cement lasts. */
const CEMENT_LOT_DAYS = 274
const CEMENT_STRENGTH_SD = 0.03

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
  /** Of the cement, from 0. */
  readonly lot: number
  readonly factor: number
  readonly lastDay: number
}

function makeBatch(plan: Plan, chance: Chance): ControlBatch {
  const { laboratory, condition, day, factor } = plan
  const usual = CONTROL[condition]
  const batch = batchScatter(chance)
  const strength7 = usual.strength7 * factor
  const strength28 = usual.strength28 * factor
  const flow = usual.flow + chance.whole(-2, 2)
  const resistivity = resistivityTest(plan, usual.resistivity28 * batch.resistivity, chance)
  const seven = strengthTest(plan, 7, strength7 * batch.strength, chance)
  const twentyEight = strengthTest(plan, 28, strength28 * batch.strength, chance)
  const lines = [
    `condition: ${condition}`,
    `laboratory: ${laboratory}`,
    `cement: ${cement(plan.lot)}`,
    `cast: ${dateOfDay(day)}T09:00`,
    `flow: ${flow} %`,
    ...(condition === 'c311' ? ['water: 242 g'] : []),
    'resistivity:',
    `  - ${resistivity}`,
    'strength:',
    `  - ${seven.text}`,
    `  - ${twentyEight.text}`,
  ]
  return {
    id: batchId(plan),
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

/** "NQ-2026-0311-23": laboratory, casting day, temperature of curing. */
function batchId({ laboratory, condition, day }: Plan): string {
  const [year, month, dayOfMonth] = dateOfDay(day).split('-')
  const prefix = LABORATORY_BIAS[laboratory]?.prefix ?? 'LB'
  return `${prefix}-${year}-${month}${dayOfMonth}-${condition === 'c311' ? '23' : '50'}`
}

/** Lots are lettered; from the second round on with their number. */
function cement(lot: number): string {
  return flowMapping({
    lot: `PC-${String.fromCharCode(65 + (lot % 26))}${lot < 26 ? '' : lot}`,
    type: 'portland',
    'Na2O-equivalent': `${(0.62 + 0.01 * (lot % 4)).toFixed(2)} %`,
  })
}

function strengthTest(
  { day, lastDay }: Plan,
  age: Age,
  strengthMPa: number,
  chance: Chance,
): { text: string; meanKilonewton: number | null } {
  if (lastDay < day + age) return { text: flowMapping({ age: `${age} d` }), meanKilonewton: null }
  const written = cubeLoads(strengthMPa, cubeFactors(chance)).map((load) => load.toFixed(1))
  const text = flowMapping({
    age: `${age} d`,
    tested: `${dateOfDay(day + age)}T${clock(575 + chance.whole(-10, 10))}`,
    specimens: specimens(
      age,
      written.map((load) => `${load} kN`),
    ),
  })
  return { text, meanKilonewton: mean(written, Number) ?? null }
}

function resistivityTest({ day, lastDay }: Plan, ohmMetre: number, chance: Chance): string {
  if (lastDay < day + 28) return flowMapping({ age: '28 d' })
  const cubes = specimens(28, resistances(ohmMetre, chance))
  return flowMapping({
    age: '28 d',
    tested: `${dateOfDay(day + 28)}T${clock(520 + chance.whole(-8, 8))}`,
    temperature: `${(23 + 0.2 * chance.normal()).toFixed(1)} degC`,
    'end-contact': `${END_CONTACT_OHM} ohm`,
    specimens: cubes,
  })
}
