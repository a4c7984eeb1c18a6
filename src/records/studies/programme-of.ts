/** The programme of a study as computing needs it: what a condition's record states stands in where the study says nothing. */
import { type MortarGroup, mortarGroups } from '../../core/studies/programme/planned-mortars.ts'
import type { PlannedAge, PlannedCondition, Programme } from '../../core/studies/programme/programme.ts'
import {
  type ProgrammeDay,
  programmeDays,
  type ProgrammeTotals,
  programmeTotals,
} from '../../core/studies/programme/programme-totals.ts'
import { isSameAge } from '../../core/measure/age.ts'
import type { Condition, Study } from '../schema/loaded-records.ts'

type Written = NonNullable<Study['programme']>

/** Conditions in content/conditions/ by id. */
export type ConditionRecords = ReadonlyMap<string, Condition>

/** A programme with everything that follows from it. */
export interface LaidOut {
  readonly programme: Programme
  readonly groups: readonly MortarGroup[]
  readonly days: readonly ProgrammeDay[]
  readonly totals: ProgrammeTotals
}

export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const

/** Where a study lists no laboratories: the code that its readings have. */
const ONE = '1'
const IN_MOULD_HOURS = 24

/** Hours either way of an age: as the programme states them, else as the condition's record does; null without either. */
export function toleranceHours(
  { age, within }: Written['ages'][number],
  record: Condition | undefined,
): number | null {
  const found = within ?? record?.ages?.find((one) => isSameAge(one.age, age))?.within
  return found?.value ?? null
}

/** @param code of the condition or run */
export function recordOfCondition(
  study: Study,
  code: string,
  records: ConditionRecords,
): Condition | undefined {
  return records.get(study.conditions?.[code]?.record ?? '')
}

/** Codes of the conditions, or of the runs, that a programme casts. */
export function castConditions({ kind, conditions = {}, runs = {}, programme }: Study): string[] {
  return programme?.conditions ?? Object.keys(kind === 'ruggedness' ? runs : conditions)
}

/**
 * @param study without a fault
 * @returns null without a programme
 */
export function programmeOf(study: Study, records: ConditionRecords): Programme | null {
  const { programme } = study
  if (programme === undefined) return null
  const inMould = programme['in-mould']
  return {
    materials: programme.materials ?? Object.keys(study.materials),
    conditions: castConditions(study).map((code) => plannedCondition(study, programme, code, records)),
    laboratories: programme.laboratories ?? Object.keys(study.laboratories ?? { [ONE]: {} }),
    batches: study.plan.batches ?? 1,
    leftOut: programme['left-out'] ?? [],
    control: programme.control ?? 'shared',
    days: castingDays(programme.casting, study.plan.batches ?? 1),
    castMinute: minuteOf(programme.casting.at),
    resistivityOn: programme['resistivity-on'] ?? 'crushed',
    spare: programme.spare ?? 0,
    inMouldHours: inMould?.value ?? IN_MOULD_HOURS,
  }
}

/** The programme with its mortars, days and totals; null without one. @param study without a fault */
export function laidOut(study: Study, records: ConditionRecords): LaidOut | null {
  const programme = programmeOf(study, records)
  if (programme === null) return null
  const groups = mortarGroups(programme)
  const days = programmeDays(programme, groups)
  return { programme, groups, days, totals: programmeTotals(programme, groups, days) }
}

function plannedCondition(
  study: Study,
  programme: Written,
  code: string,
  records: ConditionRecords,
): PlannedCondition {
  const own = study.conditions?.[code] ?? programme.every ?? {}
  const record = recordOfCondition(study, code, records)
  const batch = programme.batch ?? record?.batch
  const cements = Object.keys(study.cements ?? {})
  const byVolume = record?.replacement?.by === 'volume'
  const replacement = own.replacement ?? record?.replacement?.amount
  return {
    code,
    cement: own.cement ?? (cements.length === 1 ? (cements[0] ?? null) : null),
    replacementPercent: byVolume ? null : (replacement?.value ?? null),
    waterRatio: own['w/cm'] ?? record?.water?.['w/cm'] ?? null,
    controlWaterG: record?.water?.['control-water']?.value ?? null,
    flow: own.flow ?? (record?.water?.['flow-within'] === undefined ? 'constant-w/cm' : 'constant-flow'),
    cementitiousG: batch?.cementitious.value ?? null,
    sandG: batch?.sand.value ?? null,
    ages: programme.ages.map((age) => plannedAge(age, record)),
  }
}

function plannedAge(written: Written['ages'][number], record: Condition | undefined): PlannedAge {
  return {
    age: written.age,
    withinHours: toleranceHours(written, record) ?? 0,
    strength: written.strength ?? 0,
    resistivity: written.resistivity ?? 0,
  }
}

function castingDays(casting: Written['casting'], batches: number): Programme['days'] {
  if (casting.dates !== undefined)
    return {
      by: 'batch',
      days: Array.from({ length: batches }, (_, place) => casting.dates?.[place + 1]?.day ?? 0),
    }
  return {
    by: 'capacity',
    first: casting.first?.day ?? 0,
    on: new Set((casting.on ?? WEEKDAYS.slice(0, 5)).map((day) => WEEKDAYS.indexOf(day))),
    except: new Set((casting.except ?? []).map(({ day }) => day)),
    mortarsADay: casting['mortars-a-day'] ?? 2,
  }
}

function minuteOf(at: string | undefined): number | null {
  if (at === undefined) return null
  const [hours = 0, minutes = 0] = at.split(':').map(Number)
  return 60 * hours + minutes
}
