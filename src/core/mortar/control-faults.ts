/** What makes a control unfit to be divided by, and what is worth a note. */
import type { Age } from '../measure/age.ts'
import { daysBetween } from '../measure/moment.ts'
import type { ResultReason } from '../result/reason.ts'
import type { ControlMortar, MortarCondition, TestMortar } from './mortar.ts'
import { STATED_CONTROL } from './stated-control.ts'

/** Strength of the control at an age, MPa; undefined where no valid one is on record. */
type StrengthAt = (age: Age) => number | undefined

/**
 * Demands of the condition that the control breaks, and notes that hold whatever the condition asks.
 * @returns `faults` make the index not valid, `notes` are printed with it
 * Notes: 1. a demand on what is not on record is a note: nothing shows that it is broken; 2. a control of
 * another day is noted where the condition says nothing of it.
 */
export function controlFaults(
  test: TestMortar,
  control: ControlMortar,
  condition: MortarCondition,
  strengthAt: StrengthAt,
): { faults: ResultReason[]; notes: ResultReason[] } {
  const demands = condition.control
  const foreign = madeElsewhere(test, control)
  if (demands === undefined) return { faults: [], notes: [...foreign, ...castApart(test, control)] }
  const apart = demands['cast-with-test'] === undefined ? castApart(test, control) : []
  const alkalis = alkaliFaults(control, demands['cement-alkalis'])
  const broken = [
    ...notCastTogether(test, control, demands),
    ...alkalis.broken,
    ...strengthFaults(demands.strength, strengthAt),
  ].map(
    (reason): ResultReason => ({
      code: 'control-fault',
      params: { control: test.control ?? STATED_CONTROL, reason },
    }),
  )
  const notes = [...foreign, ...apart, ...alkalis.open]
  return demands.broken === 'flag' ? { faults: [], notes: [...broken, ...notes] } : { faults: broken, notes }
}

/**
 * Of a control that is known by its strength alone: whether that is what the condition asks for. What else it asks
 * for cannot be held against anything.
 */
export function statedControlFaults(
  { control: demands }: MortarCondition,
  strengthAt: StrengthAt,
): { faults: ResultReason[]; notes: ResultReason[] } {
  const broken = strengthFaults(demands?.strength, strengthAt).map(
    (reason): ResultReason => ({ code: 'control-fault', params: { control: STATED_CONTROL, reason } }),
  )
  return demands?.broken === 'flag' ? { faults: [], notes: broken } : { faults: broken, notes: [] }
}

type Demands = NonNullable<MortarCondition['control']>

function madeElsewhere(test: TestMortar, { laboratory }: ControlMortar): ResultReason[] {
  return laboratory === test.laboratory
    ? []
    : [{ code: 'control-of-another-laboratory', params: { laboratory } }]
}

/** Empty where both were cast on one day. */
function castApart(test: TestMortar, control: ControlMortar): ResultReason[] {
  const daysBefore = daysBetween(control.cast, test.cast)
  return daysBefore === 0 ? [] : [{ code: 'control-cast-apart', params: { daysBefore } }]
}

function notCastTogether(test: TestMortar, control: ControlMortar, demands: Demands): ResultReason[] {
  const daysBefore = daysBetween(control.cast, test.cast)
  return demands['cast-with-test'] !== 'yes' || daysBefore === 0
    ? []
    : [{ code: 'not-cast-together', params: { daysBefore } }]
}

function alkaliFaults(
  { cement }: ControlMortar,
  limits: Demands['cement-alkalis'],
): { broken: ResultReason[]; open: ResultReason[] } {
  if (limits === undefined) return { broken: [], open: [] }
  const alkalis = cement?.['Na2O-equivalent']
  if (alkalis === undefined)
    return { broken: [], open: [{ code: 'cement-alkalis-not-on-record', params: {} }] }
  const [least, most] = [limits['at-least'], limits['at-most']]
  const { written } = alkalis
  const broken: ResultReason[] = []
  if (least !== undefined && alkalis.value < least.value)
    broken.push({ code: 'cement-alkalis-low', params: { written, writtenLimit: least.written } })
  if (most !== undefined && most.value < alkalis.value)
    broken.push({ code: 'cement-alkalis-high', params: { written, writtenLimit: most.written } })
  return { broken, open: [] }
}

function strengthFaults(demand: Demands['strength'], strengthAt: StrengthAt): ResultReason[] {
  const strengthMPa = demand === undefined ? undefined : strengthAt(demand.age)
  if (demand === undefined || strengthMPa === undefined || demand['at-least'].value <= strengthMPa) return []
  const { age, 'at-least': least } = demand
  return [
    { code: 'control-strength-low', params: { age: age.text, strengthMPa, writtenLimit: least.written } },
  ]
}
