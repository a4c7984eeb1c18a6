/** Bench sheets of a programme: a sheet for each day of casting and laboratory, with what is weighed in and what is to be filled in. */
import { batchMasses } from '../../../core/studies/programme/batch-masses.ts'
import { type MortarGroup, mortarsOf } from '../../../core/studies/programme/planned-mortars.ts'
import { testsOf } from '../../../core/studies/programme/programme-totals.ts'
import { specimensPerMortar } from '../../../core/studies/programme/programme.ts'
import { specimenNumbers } from '../../../core/studies/programme/specimen-numbers.ts'
import { CONTROL } from '../../../core/studies/study-reading.ts'
import { laidOut, type LaidOut } from '../../../records/studies/programme-of.ts'
import { batchMassText, dayText, hoursText, rangeText, windowText } from '../../../words/programme.ts'
import { conditionName } from '../../../words/studies.ts'
import type { Edition } from '../../shape/edition.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { conditionDetails } from './condition-details.ts'

export interface BenchSheet {
  readonly id: string
  readonly heading: string
  readonly groups: readonly SheetGroup[]
}

/** A control batch and the test batches that are compared with it. */
export interface SheetGroup {
  readonly id: string
  readonly heading: string
  readonly details: string
  readonly specimens: string
  readonly mortars: readonly SheetMortar[]
  readonly ages: readonly SheetAge[]
}

export interface SheetMortar {
  /** What is written on its specimens, before their number. */
  readonly mark: string
  readonly title: string
  /** g; empty where it is filled in. */
  readonly cement: string
  readonly material: string
  readonly water: string
  readonly sand: string
}

export interface SheetAge {
  readonly caption: string
  readonly specimens: string
  /** Numbers of the specimens, a column each. */
  readonly read: readonly number[]
  readonly crushed: readonly number[]
}

/** Sheets in order of day and laboratory; none without a programme. */
export function benchSheets(edition: Pick<Edition, 'conditions'>, study: StudyEntry): BenchSheet[] {
  const laid = laidOut(study.record, edition.conditions)
  if (laid === null) return []
  const sheets = Map.groupBy(laid.groups, ({ day, laboratory }) => `${day} ${laboratory}`)
  return [...sheets.values()]
    .toSorted(([a], [b]) => (a?.day ?? 0) - (b?.day ?? 0))
    .flatMap((groups, place) => {
      const [first] = groups
      if (first === undefined) return []
      const laboratory = laid.programme.laboratories.length === 1 ? '' : `, laboratory ${first.laboratory}`
      const heading = `Sheet ${place + 1}: ${dayText(first.day)}${laboratory}`
      return [
        { id: `sheet-${place + 1}`, heading, groups: groups.map((group) => sheetGroup(study, laid, group)) },
      ]
    })
}

function sheetGroup({ record }: StudyEntry, laid: LaidOut, group: MortarGroup): SheetGroup {
  const { programme } = laid
  const { condition, batch } = group
  const words = conditionName(record.conditions, condition.code)
  return {
    id: `${condition.code}-${group.laboratory}-${batch}`,
    heading: `${condition.code}, batch ${batch}: ${words}`,
    details: sheetDetails(record, condition),
    specimens: String(specimensPerMortar(condition.ages, programme.resistivityOn, programme.spare)),
    mortars: mortarsOf([group]).map(({ material }) => sheetMortar(record, group, material)),
    ages: sheetAges(laid, group),
  }
}

/** What the condition says; of a run, the levels of its factors. */
function sheetDetails(record: StudyEntry['record'], condition: MortarGroup['condition']): string {
  const signs = record.runs?.[condition.code]
  if (record.kind === 'ruggedness' && signs !== undefined)
    return (record.factors ?? [])
      .map(({ title, low, high }, place) => `${title} ${signs[place] === '+' ? high : low}`)
      .join(', ')
  return conditionDetails(record.conditions?.[condition.code])
}

function sheetMortar(record: StudyEntry['record'], group: MortarGroup, material: string): SheetMortar {
  const masses = batchMasses(material, group.condition)
  return {
    mark: `${material}.${group.condition.code}.${group.batch}`,
    title: material === CONTROL ? 'control' : (record.materials[material]?.title ?? ''),
    cement: batchMassText(masses.cement),
    material: material === CONTROL ? '–' : batchMassText(masses.material),
    water: batchMassText(masses.water),
    sand: batchMassText(masses.sand),
  }
}

function sheetAges({ programme }: LaidOut, group: MortarGroup): SheetAge[] {
  const numbers = specimenNumbers(group.condition.ages, programme.resistivityOn)
  return testsOf(programme, group)
    .toSorted((a, b) => a.due.planned.age.hours - b.due.planned.age.hours)
    .map(({ due }, place) => {
      const { read = null, crushed = null } = numbers[place] ?? {}
      const { age, withinHours } = due.planned
      return {
        caption: `${age.text} ± ${hoursText(withinHours)}: ${windowText(due)}`,
        specimens: read === null ? rangeText(crushed) : rangeText(read),
        read: each(read),
        crushed: each(crushed),
      }
    })
}

function each(range: readonly [number, number] | null): number[] {
  return range === null ? [] : Array.from({ length: range[1] - range[0] + 1 }, (_, place) => range[0] + place)
}
