/** A site's own lots as a screening: what their indices say of each condition, by source and not by lot. */
import { type Age, compareAges } from '../../measure/age.ts'
import { compareTexts } from '../../measure/compare-texts.ts'
import type { StudyIndexProperty } from '../study-reading.ts'
import { areaInterval } from './area-interval.ts'
import { placed } from './choice.ts'
import { type ConditionMeans, conditionMeans } from './material-means.ts'
import type { ScreenedMaterial } from './screening.ts'
import { area, type Separation, separation } from './separation.ts'

/** The index that stands for a lot at one condition and age. */
export interface LotIndex {
  /** Code of the source among the materials. */
  readonly source: string
  readonly property: StudyIndexProperty
  readonly condition: string
  readonly age: Age
  /** %, above zero. */
  readonly value: number
}

export interface LotsAtCondition {
  readonly property: StudyIndexProperty
  readonly condition: string
  readonly age: Age
  /** Of the lots of each source. */
  readonly means: ConditionMeans
  /** Values of the lots, %, by class. */
  readonly lots: { readonly inert: readonly number[]; readonly reactive: readonly number[] }
  /** Of the sources; null where a class has none. */
  readonly separation: Separation | null
  readonly areaInterval: readonly [number, number] | null
  /** The area that counts every lot as a material, which it is not; null where a class has none. */
  readonly areaOfLots: number | null
}

/**
 * Each condition and age that has lots of classed sources.
 * @param indices one a lot, condition and age; those of sources that are not among the materials are left out
 * @param materials the sources that say what they are
 * @param level of the intervals, between 0 and 1
 * @returns strength before resistivity, then by condition and age
 */
export function lotsByCondition(
  indices: readonly LotIndex[],
  materials: readonly ScreenedMaterial[],
  level: number,
): LotsAtCondition[] {
  const classOf = new Map(materials.map(({ code, class: own }) => [code, own]))
  const known = indices.filter(({ source }) => classOf.has(source))
  return [
    ...Map.groupBy(known, ({ property, condition, age }) => `${property} ${condition} ${age.hours}`).values(),
  ]
    .flatMap((group) => {
      const [first] = group
      return first === undefined ? [] : [atCondition(first, group, { materials, classOf, level })]
    })
    .toSorted(
      (a, b) =>
        compareTexts(b.property, a.property) ||
        compareTexts(a.condition, b.condition) ||
        compareAges(a.age, b.age),
    )
}

function atCondition(
  { property, condition, age }: LotIndex,
  group: readonly LotIndex[],
  {
    materials,
    classOf,
    level,
  }: {
    readonly materials: readonly ScreenedMaterial[]
    readonly classOf: ReadonlyMap<string, ScreenedMaterial['class']>
    readonly level: number
  },
): LotsAtCondition {
  const bySource = Map.groupBy(group, ({ source }) => source)
  const means = conditionMeans(
    materials.flatMap(({ code, class: own }) => {
      const lots = bySource.get(code)
      return lots === undefined
        ? []
        : [{ material: code, class: own, batches: lots.map(({ value }) => ({ value, above: false })) }]
    }),
    level,
  )
  const valuesOf = (own: 'inert' | 'reactive') =>
    group.flatMap(({ source, value }) => (classOf.get(source) === own ? [value] : []))
  const lots = { inert: valuesOf('inert'), reactive: valuesOf('reactive') }
  const [inert, reactive] = [placed(means, 'inert'), placed(means, 'reactive')]
  const found = inert.length === 0 || reactive.length === 0 ? null : separation(inert, reactive)
  const asMaterials = (values: readonly number[]) =>
    values.map((value) => ({ material: '', value, above: false }))
  return {
    ...{ property, condition, age, means, lots, separation: found },
    areaInterval:
      found === null ? null : areaInterval(found.area * found.inert * found.reactive, found, level),
    areaOfLots: found === null ? null : area(asMaterials(lots.inert), asMaterials(lots.reactive)),
  }
}
