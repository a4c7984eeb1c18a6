/** The test mortars of a lot as a laboratory clerk would write them. */
import { sum } from 'd3'
import { clock, dateOfDay } from './calendar.ts'
import type { Chance } from './chance.ts'
import type { ControlBatch } from './controls.ts'
import { flowMapping } from './flow-mapping.ts'
import type { LotPlan } from './lot-plan.ts'
import { BUNCHED } from './planted.ts'
import {
  type Age,
  batchScatter,
  cubeFactors,
  cubeLoads,
  END_CONTACT_OHM,
  resistances,
  specimens,
} from './specimens.ts'
import { load, temperature } from './written-units.ts'

/** Minutes after midnight at which the test mortar is cast, 20 minutes after its control. */
const CAST_MINUTES = 560
/** How warm planted cubes were read, and their resistivity for it as a share of that at 23 °C. */
const HOT = { celsius: 49.6, share: 0.52 }
/** Water of the control mortar in grams, a hundredth of it: a water requirement is in per cent. */
const WATER_GRAM = 2.42

/** The lines of one test: the mortar of a lot beside one control batch. */
export function mortarLines(plan: LotPlan, control: ControlBatch, chance: Chance): string[] {
  const { model, castDay, biasPoints, biasRatio } = plan
  const standard = control.condition === 'c311'
  const [index7, index28, ratio] = standard
    ? [model.activity7, model.activity28, model.ratio23]
    : [model.modified7, model.modified28, model.ratio50]
  const batch = batchScatter(chance)
  const strengthAt = (age: Age, index: number, of: number) =>
    strengthTest(
      plan,
      { age, strengthMPa: ((of * (index + biasPoints)) / 100) * batch.strength, control },
      chance,
    )
  const hot = plan.planted.hotReading === true && !standard
  const celsius = hot ? HOT.celsius : 23 + 0.2 * chance.normal()
  const ohmMetre = control.resistivity28 * ratio * biasRatio * batch.resistivity * (hot ? HOT.share : 1)
  const flow = control.flow + (standard ? chance.whole(-3, 3) : chance.whole(-6, 8))
  return [
    '  - sample: C',
    `    condition: ${control.condition}`,
    `    control: ${control.id}`,
    `    laboratory: ${plan.laboratory}`,
    `    cast: ${dateOfDay(castDay)}T${clock(CAST_MINUTES)}`,
    `    flow: ${flow} %`,
    ...(standard ? [`    water: ${(WATER_GRAM * model.waterRequirement).toFixed(0)} g`] : []),
    '    resistivity:',
    `      - ${resistivityTest(plan, { ohmMetre, celsius }, chance)}`,
    '    strength:',
    `      - ${strengthAt(7, index7, control.strength7)}`,
    `      - ${strengthAt(28, index28, control.strength28)}`,
  ]
}

interface TrueStrength {
  readonly age: Age
  readonly strengthMPa: number
  readonly control: ControlBatch
}

function strengthTest(plan: LotPlan, { age, strengthMPa, control }: TrueStrength, chance: Chance): string {
  const { castDay, lastDay, planted, source } = plan
  const standard = control.condition === 'c311'
  const standard28 = age === 28 && standard
  const testDay = castDay + age + (standard28 ? (planted.daysLate28 ?? 0) : 0)
  if (lastDay < testDay || (standard28 && planted.missing28 === true)) return flowMapping({ age: `${age} d` })
  const usual = cubeLoads(strengthMPa, (standard28 ? planted.cubes28 : undefined) ?? cubeFactors(chance))
  const kilonewtons =
    age === 7 && standard && planted.bunched === true ? bunched(usual, control.meanLoad7) : usual
  return flowMapping({
    age: `${age} d`,
    tested: `${dateOfDay(testDay)}T${clock(CAST_MINUTES + 30 + chance.whole(-15, 20))}`,
    specimens: specimens(
      age,
      kilonewtons.map((kilonewton) => load(kilonewton, source.units)),
    ),
  })
}

/**
 * Loads scaled together, so that an index just under the limit comes out just over it; others are left as
 * they are.
 */
function bunched(kilonewtons: readonly number[], control: number | null): readonly number[] {
  if (control === null) return kilonewtons
  const index = (100 * sum(kilonewtons)) / kilonewtons.length / control
  if (index < BUNCHED.from || BUNCHED.limit <= index) return kilonewtons
  const share = (index - BUNCHED.from) / (BUNCHED.limit - BUNCHED.from)
  const wanted = BUNCHED.to[0] + share * (BUNCHED.to[1] - BUNCHED.to[0])
  return kilonewtons.map((each) => (each * wanted) / index)
}

function resistivityTest(
  { castDay, lastDay, source }: LotPlan,
  { ohmMetre, celsius }: { ohmMetre: number; celsius: number },
  chance: Chance,
): string {
  if (lastDay < castDay + 28) return flowMapping({ age: '28 d' })
  const cubes = specimens(28, resistances(ohmMetre, chance))
  return flowMapping({
    age: '28 d',
    tested: `${dateOfDay(castDay + 28)}T${clock(528 + chance.whole(-8, 8))}`,
    temperature: temperature(celsius, source.units),
    'end-contact': `${END_CONTACT_OHM} ohm`,
    specimens: cubes,
  })
}
