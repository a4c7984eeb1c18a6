/** What makes a control unfit to be divided by, and what is worth a note. */
import { dateOf, daysBetween } from '../measure/moment.ts'
import type { ControlMortar, MortarCondition, TestMortar } from './mortar.ts'

/** Strengths of the control by age, MPa, valid ones. */
type StrengthAt = (age: string) => number | undefined

/**
 * Demands of the condition that the control breaks, and notes that hold whatever the condition asks.
 * @returns `faults` make the index not valid, `notes` are printed with it
 * Notes: 1. a demand on what is not on record is a note: nothing shows that it is broken; 2. a control of
 * another day is noted where
 * the condition says nothing of it.
 */
export function controlFaults(
  test: TestMortar,
  control: ControlMortar,
  condition: MortarCondition,
  strengthAt: StrengthAt,
): { faults: string[]; notes: string[] } {
  const demands = condition.control
  const apart = castApart(test, control)
  const foreign =
    control.laboratory === test.laboratory
      ? []
      : [`the control was made by another laboratory, ${control.laboratory}`]
  const stale =
    demands?.['cast-with-test'] === undefined ? apart.map((words) => `the control was ${words}`) : []
  if (demands === undefined) return { faults: [], notes: [...foreign, ...stale] }
  const together =
    demands['cast-with-test'] === 'yes'
      ? apart.map((words) => `${words}, where both are to be cast on one day`)
      : []
  const alkalis = alkaliFaults(control, demands['cement-alkalis'])
  const broken = [...together, ...alkalis.broken, ...strengthFaults(demands.strength, strengthAt)].map(
    (fault) => `control ${test.control}: ${fault}`,
  )
  const notes = [...foreign, ...stale, ...alkalis.open]
  return demands.broken === 'flag' ? { faults: [], notes: [...broken, ...notes] } : { faults: broken, notes }
}

type Demands = NonNullable<MortarCondition['control']>

/** How far apart the mortars were cast; empty for one day. */
function castApart(test: TestMortar, control: ControlMortar): string[] {
  if (dateOf(test.cast) === dateOf(control.cast)) return []
  return [
    `cast ${Math.abs(daysBetween(control.cast, test.cast))} d ${dateOf(control.cast) < dateOf(test.cast) ? 'before' : 'after'} the test mortar`,
  ]
}

function alkaliFaults(
  { cement }: ControlMortar,
  limits: Demands['cement-alkalis'],
): { broken: string[]; open: string[] } {
  if (limits === undefined) return { broken: [], open: [] }
  const alkalis = cement['Na2O-equivalent']
  if (alkalis === undefined)
    return { broken: [], open: ['the alkalis of the control’s cement are not on record'] }
  const [least, most] = [limits['at-least'], limits['at-most']]
  const low =
    least !== undefined && alkalis.value < least.value
      ? [`its cement has ${alkalis.written} alkalis, less than ${least.written}`]
      : []
  const high =
    most !== undefined && most.value < alkalis.value
      ? [`its cement has ${alkalis.written} alkalis, more than ${most.written}`]
      : []
  return { broken: [...low, ...high], open: [] }
}

function strengthFaults(demand: Demands['strength'], strengthAt: StrengthAt): string[] {
  const strength = demand === undefined ? undefined : strengthAt(demand.age)
  if (demand === undefined || strength === undefined || demand['at-least'].value <= strength) return []
  return [
    `its strength at ${demand.age} is ${strength.toFixed(1)} MPa, less than ${demand['at-least'].written}`,
  ]
}
