/** Which mortars are cast on which day: test batches with the control batch that belongs to each. */
import { CONTROL } from '../study-reading.ts'
import type { PlannedCondition, Programme } from './programme.ts'

export interface PlannedMortar {
  /** Code of the material, or `control`. */
  readonly material: string
  readonly condition: PlannedCondition
  readonly laboratory: string
  /** Number of the batch, from 1. */
  readonly number: number
  /** Code of the batch as its readings will say it: a test batch and its control have the same. */
  readonly batch: string
  /** Days since 1970-01-01. */
  readonly day: number
}

/** Mortars that are cast together: a control batch and the test batches that are compared with it. */
export interface MortarGroup {
  readonly condition: PlannedCondition
  readonly laboratory: string
  readonly number: number
  readonly batch: string
  readonly day: number
  /** Codes, in the order of casting; the control goes first and is not among them. */
  readonly materials: readonly string[]
}

/**
 * How many test mortars a programme has.
 * @returns whole number; control batches come on top
 */
export function testMortarCount(
  programme: Pick<Programme, 'materials' | 'conditions' | 'laboratories' | 'batches' | 'leftOut'>,
): number {
  const { conditions, laboratories, batches } = programme
  const cells = conditions.reduce((count, { code }) => count + castIn(programme, code).length, 0)
  return cells * laboratories.length * batches
}

/**
 * Materials that are cast under a condition.
 * @param condition its code
 */
export function castIn(
  { materials, leftOut }: Pick<Programme, 'materials' | 'leftOut'>,
  condition: string,
): string[] {
  return materials.filter(
    (material) =>
      !leftOut.some((out) => out.materials.includes(material) && out.conditions.includes(condition)),
  )
}

/**
 * Groups of mortars in the order of casting.
 * @param programme with days for all its batches
 * @returns by laboratory, then by day
 * Notes: 1. first one batch of all conditions, then the next, so that batches of a material lie apart in time; 2. a condition
 * begins on a new day where the rest of the day would not hold it and a whole day would; 3. what a day does not hold goes on
 * with a control batch of its own, and the code of the batch then has a letter.
 */
export function mortarGroups(programme: Programme): MortarGroup[] {
  return programme.laboratories.flatMap((laboratory) => {
    const place = placing(programme.days)
    return Array.from({ length: programme.batches }, (_, batch) => batch + 1).flatMap((number) =>
      programme.conditions.flatMap((condition) => {
        const materials = castIn(programme, condition.code)
        const parts = place(number, inPairs(materials, programme.control))
        return parts.map(({ day, materials: own }, part) => ({
          ...{ condition, laboratory, number, day, materials: own },
          batch: `${number}${parts.length === 1 ? '' : letters(part)}`,
        }))
      }),
    )
  })
}

/** Every mortar of groups, the control of a group first. */
export function mortarsOf(groups: readonly MortarGroup[]): PlannedMortar[] {
  return groups.flatMap(({ materials, ...group }) =>
    [CONTROL, ...materials].map((material) => ({ ...group, material })),
  )
}

/** What has a control batch of its own whatever the day: all materials of a condition, or each of them. */
function inPairs(materials: readonly string[], control: Programme['control']): (readonly string[])[] {
  return control === 'each' ? materials.map((one) => [one]) : materials.length === 0 ? [] : [materials]
}

interface Part {
  readonly day: number
  readonly materials: readonly string[]
}

/** Gives groups their days, one after the other. */
function placing(days: Programme['days']): (number: number, groups: (readonly string[])[]) => Part[] {
  if (days.by === 'batch')
    return (number, groups) => groups.map((materials) => ({ day: days.days[number - 1] ?? 0, materials }))
  const { mortarsADay } = days
  let day = castingDay(days.first, days)
  let used = 0
  const next = () => {
    day = castingDay(day + 1, days)
    used = 0
  }
  return (_, groups) => {
    const size = groups.reduce((sum, { length }) => sum + length + 1, 0)
    if (0 < used && mortarsADay < used + size && size <= mortarsADay) next()
    return groups.flatMap((materials) => {
      const parts: Part[] = []
      for (let from = 0; from < materials.length; ) {
        if (mortarsADay < used + 2) next()
        const own = materials.slice(from, from + mortarsADay - used - 1)
        parts.push({ day, materials: own })
        used += own.length + 1
        from += own.length
      }
      return parts
    })
  }
}

function castingDay(from: number, { on, except }: Extract<Programme['days'], { by: 'capacity' }>): number {
  let day = from
  while (!on.has(weekdayOf(day)) || except.has(day)) day += 1
  return day
}

/**
 * Day of the week.
 * @param day days since 1970-01-01, which was a Thursday
 * @returns 0 for Monday to 6 for Sunday
 */
export function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7
}

/** a to z, then aa, ab and so on. */
function letters(place: number): string {
  const last = String.fromCharCode(97 + (place % 26))
  return place < 26 ? last : letters(Math.floor(place / 26) - 1) + last
}
