/** Ruggedness runs: the effects on every index that was read. */
import { type Age, compareAges } from '../../measure/age.ts'
import { compareTexts } from '../../measure/compare-texts.ts'
import type { BatchIndex } from '../batch-indices.ts'
import type { StudyIndexProperty } from '../study-reading.ts'
import type { Level } from './design.ts'
import { halfNormal, ruggedness, type Ruggedness } from './effects.ts'

/** One material at one age. */
export interface RuggednessOf {
  readonly material: string
  readonly age: Age
  readonly property: StudyIndexProperty
  /** null where a run has no index that counts. */
  readonly found: Ruggedness | null
  readonly halfNormal: ReturnType<typeof halfNormal>
  readonly missing: readonly string[]
}

export interface DesignedRun {
  readonly code: string
  readonly levels: readonly Level[]
}

export interface RuggednessDesign {
  /** Of a design without a fault. */
  readonly runs: readonly DesignedRun[]
  /** Places of columns that stand for no factor. */
  readonly dummies: readonly number[]
}

/**
 * Effects of each factor on each index.
 * @param indices whose condition is the code of their run; a batch is a replicate
 * @param design of the study
 * @param level of the intervals, between 0 and 1
 * Note: an index known only as above a bound does not count: an effect cannot be computed with it.
 */
export function ruggednessStudy(
  indices: readonly BatchIndex[],
  design: RuggednessDesign,
  level: number,
): RuggednessOf[] {
  const groups = Map.groupBy(indices, ({ property, material, age }) =>
    [property, material, age.hours].join(' '),
  )
  return [...groups.values()]
    .flatMap((group) => ofMaterial(group, design, level))
    .toSorted(
      (a, b) =>
        compareTexts(b.property, a.property) ||
        compareTexts(a.material, b.material) ||
        compareAges(a.age, b.age),
    )
}

function ofMaterial(
  group: readonly BatchIndex[],
  { runs, dummies }: RuggednessDesign,
  level: number,
): RuggednessOf[] {
  const [first] = group
  if (first === undefined) return []
  const results = runs.map(({ code, levels }) => ({
    code,
    levels,
    values: group.filter(({ condition, above }) => condition === code && !above).map(({ value }) => value),
  }))
  const missing = results.filter(({ values }) => values.length === 0).map(({ code }) => code)
  const found = missing.length === 0 ? ruggedness(results, level, dummies) : null
  return [
    {
      material: first.material,
      age: first.age,
      property: first.property,
      found,
      halfNormal: halfNormal(found?.effects.map(({ effect }) => effect) ?? []),
      missing,
    },
  ]
}
