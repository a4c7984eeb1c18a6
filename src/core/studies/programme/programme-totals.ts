/** What a programme adds up to, and what falls on each day. */
import { CONTROL } from '../study-reading.ts'
import { batchMasses } from './batch-masses.ts'
import { type MortarGroup, mortarsOf, weekdayOf } from './planned-mortars.ts'
import { type PlannedAge, type Programme, specimensPerMortar } from './programme.ts'
import { type TestWindow, testWindow } from './test-windows.ts'

export interface PlannedTests {
  readonly group: MortarGroup
  readonly due: TestWindow
  /** Mortars of the group, its control counted. */
  readonly mortars: number
}

/** What happens on one day, in all laboratories. */
export interface ProgrammeDay {
  /** Days since 1970-01-01. */
  readonly day: number
  readonly cast: readonly MortarGroup[]
  readonly tests: readonly PlannedTests[]
  readonly mortars: number
  /** Specimens crushed, and specimens read. */
  readonly strength: number
  readonly resistivity: number
}

/** A greatest number, and the first day that has it. */
export interface Peak {
  readonly count: number
  readonly day: number
}

export interface ProgrammeTotals {
  readonly testMortars: number
  readonly controlMortars: number
  readonly specimens: number
  readonly strengthTests: number
  readonly resistivityReadings: number
  readonly castingDays: number
  readonly firstCast: number
  readonly lastCast: number
  readonly lastTest: number
  /** g by code; null where a batch of it has no mass on record. */
  readonly cementG: ReadonlyMap<string, number | null>
  readonly materialG: ReadonlyMap<string, number | null>
  readonly sandG: number | null
  /** Specimens in moulds at once, in one laboratory; the laboratory with most. */
  readonly moulds: Peak
  /** Specimens crushed or read on a day, in one laboratory; one that is read and then crushed counts twice. */
  readonly tests: Peak
  readonly weekendTests: number
}

/** Where a condition names no cement. */
export const NO_CEMENT = ''

/**
 * Days on which mortar is cast or tested, in order.
 * @param groups of `mortarGroups`
 */
export function programmeDays(programme: Programme, groups: readonly MortarGroup[]): ProgrammeDay[] {
  const tests = groups.flatMap((group) => testsOf(programme, group))
  const cast = Map.groupBy(groups, ({ day }) => day)
  const tested = Map.groupBy(tests, ({ due }) => due.day)
  return [...new Set([...cast.keys(), ...tested.keys()])]
    .toSorted((a, b) => a - b)
    .map((day) => {
      const [own, ofDay] = [cast.get(day) ?? [], tested.get(day) ?? []]
      return {
        ...{ day, cast: own, tests: ofDay },
        mortars: own.reduce((sum, group) => sum + mortarCount(group), 0),
        strength: testCount(ofDay, ({ strength }) => strength),
        resistivity: testCount(ofDay, ({ resistivity }) => resistivity),
      }
    })
}

/** Tests of a group at each of its ages. */
export function testsOf({ castMinute }: Pick<Programme, 'castMinute'>, group: MortarGroup): PlannedTests[] {
  return group.condition.ages.map((planned) => ({
    ...{ group, mortars: mortarCount(group) },
    due: testWindow(group.day, castMinute, planned),
  }))
}

/**
 * Totals of a programme.
 * @param groups of `mortarGroups`; one at least
 * @param days of `programmeDays`
 * @throws RangeError without a group
 */
export function programmeTotals(
  programme: Programme,
  groups: readonly MortarGroup[],
  days: readonly ProgrammeDay[],
): ProgrammeTotals {
  const castDays = [...new Set(groups.map(({ day }) => day))].toSorted((a, b) => a - b)
  const [firstCast] = castDays
  const [lastCast, lastDay] = [castDays.at(-1), days.at(-1)]
  if (firstCast === undefined || lastCast === undefined || lastDay === undefined)
    throw new RangeError('programmeTotals needs a mortar, got none')
  const perMortar = ({ condition }: MortarGroup) =>
    specimensPerMortar(condition.ages, programme.resistivityOn, programme.spare)
  const testMortars = sumOf(groups, ({ materials }) => materials.length)
  return {
    testMortars,
    controlMortars: groups.length,
    specimens: sumOf(groups, (group) => mortarCount(group) * perMortar(group)),
    strengthTests: sumOf(days, ({ strength }) => strength),
    resistivityReadings: sumOf(days, ({ resistivity }) => resistivity),
    castingDays: castDays.length,
    ...{ firstCast, lastCast, lastTest: lastDay.day },
    ...massTotals(groups),
    moulds: mouldPeak(programme, groups, perMortar),
    tests: testPeak(days),
    weekendTests: sumOf(
      days.filter(({ day }) => 5 <= weekdayOf(day)),
      ({ strength, resistivity }) => strength + resistivity,
    ),
  }
}

function mortarCount({ materials }: MortarGroup): number {
  return materials.length + 1
}

function testCount(tests: readonly PlannedTests[], specimens: (age: PlannedAge) => number): number {
  return sumOf(tests, ({ due, mortars }) => mortars * specimens(due.planned))
}

function sumOf<T>(items: readonly T[], count: (item: T) => number): number {
  return items.reduce((sum, one) => sum + count(one), 0)
}

function massTotals(
  groups: readonly MortarGroup[],
): Pick<ProgrammeTotals, 'cementG' | 'materialG' | 'sandG'> {
  const mortars = mortarsOf(groups).map((mortar) => ({
    ...mortar,
    masses: batchMasses(mortar.material, mortar.condition),
  }))
  const tests = mortars.filter(({ material }) => material !== CONTROL)
  return {
    cementG: totalsBy(mortars, ({ condition, masses }) => [condition.cement ?? NO_CEMENT, masses.cement]),
    materialG: totalsBy(tests, ({ material, masses }) => [material, masses.material]),
    sandG: mortars.reduce<number | null>((sum, { masses }) => added(sum, masses.sand), 0),
  }
}

function totalsBy<T>(
  items: readonly T[],
  of: (item: T) => readonly [string, number | null],
): Map<string, number | null> {
  const totals = new Map<string, number | null>()
  for (const [key, mass] of items.map(of)) {
    const before = totals.get(key)
    totals.set(key, added(before === undefined ? 0 : before, mass))
  }
  return totals
}

function added(sum: number | null, mass: number | null): number | null {
  return sum === null || mass === null ? null : sum + mass
}

/** Moulds of a day stay filled for as many days as begin while the specimens are in them. */
function mouldPeak(
  { inMouldHours }: Programme,
  groups: readonly MortarGroup[],
  perMortar: (group: MortarGroup) => number,
): Peak {
  const days = Math.max(1, Math.ceil(inMouldHours / 24))
  const filled = new Map<string, Peak>()
  for (const group of groups)
    for (let day = group.day; day < group.day + days; day += 1) {
      const key = `${group.laboratory} ${day}`
      const count = (filled.get(key)?.count ?? 0) + mortarCount(group) * perMortar(group)
      filled.set(key, { count, day })
    }
  return greatest(filled.values())
}

function testPeak(days: readonly ProgrammeDay[]): Peak {
  const peaks = days.flatMap(({ day, tests }) =>
    [...Map.groupBy(tests, ({ group }) => group.laboratory).values()].map((own) => ({
      count: testCount(own, ({ strength, resistivity }) => strength + resistivity),
      day,
    })),
  )
  return greatest(peaks)
}

function greatest(peaks: Iterable<Peak>): Peak {
  return [...peaks].reduce(
    (most, one) => (most.count < one.count || (most.count === one.count && one.day < most.day) ? one : most),
    { count: 0, day: Number.POSITIVE_INFINITY },
  )
}
