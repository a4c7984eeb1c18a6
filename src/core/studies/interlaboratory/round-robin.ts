/** A round robin: the figures of each material, and what they may be called. */
import type { Age } from '../../measure/age.ts'
import { compareAges } from '../../measure/age.ts'
import { compareTexts } from '../../measure/compare-texts.ts'
import type { BatchIndex } from '../batch-indices.ts'
import type { StudyIndexProperty } from '../study-reading.ts'
import { algorithmA, type Robust } from './algorithm-a.ts'
import { type Cell, type CellFigures, cellFigures } from './cells.ts'
import { type Consistency, consistency } from './consistency.ts'
import type { PrecisionLevel } from './level-dependence.ts'
import { cochran, grubbs, type OutlierTest } from './outliers.ts'
import { type NoPrecision, type Precision, precision } from './precision.ts'

/** One material at one condition and age. */
export interface RoundRobinMaterial {
  readonly material: string
  readonly condition: string
  readonly age: Age
  readonly property: StudyIndexProperty
  readonly cells: readonly CellFigures[]
  readonly precision: Precision | NoPrecision
  readonly consistency: readonly Consistency[] | null
  readonly outliers: readonly OutlierTest[]
  /** Over the means of the laboratories. */
  readonly robust: Robust | null
  /** z = (mean of the laboratory − robust mean) / robust deviation. */
  readonly scores: readonly { readonly laboratory: string; readonly z: number }[]
  /** Replicates share a control batch, so that the scatter of the control is not in s_r, which is too small. */
  readonly sharesControl: boolean
  /** Indices known only as above a bound are left out, and how many they are. */
  readonly censored: number
}

/** ASTM E691, 5.1 and E177: fewer laboratories make no statement of precision (from memory). */
export const FEWEST_LABORATORIES = 6

/**
 * Whether so many laboratories make a pilot and no statement of precision.
 * @param laboratories that have results
 */
export function isPilot(laboratories: number): boolean {
  return laboratories < FEWEST_LABORATORIES
}

/**
 * Level and precision of each material that has them.
 * @param materials at one condition and age, by one route
 */
export function precisionLevels(materials: readonly RoundRobinMaterial[]): {
  readonly repeatability: readonly PrecisionLevel[]
  readonly reproducibility: readonly PrecisionLevel[]
} {
  const found = materials.flatMap(({ precision: one }) => (typeof one === 'string' ? [] : [one]))
  return {
    repeatability: found.map((one) => ({ mean: one.mean, deviation: one.repeatability.value })),
    reproducibility: found.map((one) => ({ mean: one.mean, deviation: one.reproducibility.value })),
  }
}

/**
 * Figures of every material at every condition and age.
 * @param indices of the study, one a batch: a batch is a replicate
 * @param materials codes in the order to be printed
 * @param level of the intervals, between 0 and 1
 */
export function roundRobin(
  indices: readonly BatchIndex[],
  materials: readonly string[],
  level: number,
): RoundRobinMaterial[] {
  const groups = Map.groupBy(indices, ({ property, condition, age, material }) =>
    [property, condition, age.hours, material].join(' '),
  )
  return [...groups.values()]
    .flatMap((group) => materialFigures(group, level))
    .toSorted(
      (a, b) =>
        compareTexts(a.property, b.property) ||
        compareTexts(a.condition, b.condition) ||
        compareAges(a.age, b.age) ||
        materials.indexOf(a.material) - materials.indexOf(b.material),
    )
}

function materialFigures(group: readonly BatchIndex[], level: number): RoundRobinMaterial[] {
  const [first] = group
  if (first === undefined) return []
  const measured = group.filter(({ above }) => !above)
  const cells: Cell[] = [...Map.groupBy(measured, ({ laboratory }) => laboratory)]
    .map(([laboratory, own]) => ({ laboratory, values: own.map(({ value }) => value) }))
    .toSorted((a, b) => a.laboratory.localeCompare(b.laboratory, 'en', { numeric: true }))
  const figures = cellFigures(cells)
  const robust = algorithmA(figures.map(({ mean }) => mean))
  const scatter = cochran(cells)
  return [
    {
      material: first.material,
      condition: first.condition,
      age: first.age,
      property: first.property,
      cells: figures,
      precision: precision(cells, level),
      consistency: consistency(cells),
      outliers: [...(scatter === null ? [] : [scatter]), ...grubbs(cells)],
      robust,
      scores:
        robust === null
          ? []
          : figures.map(({ laboratory, mean }) => ({
              laboratory,
              z: (mean - robust.mean) / robust.deviation,
            })),
      sharesControl: measured.some(({ sharesControl }) => sharesControl),
      censored: group.length - measured.length,
    },
  ]
}
