/** What a study found, as rows of one form: material, condition, age, statistic, value, interval, n. */
import type { RoundRobinMaterial } from '../../core/studies/interlaboratory/round-robin.ts'
import type { Deviation, Precision } from '../../core/studies/interlaboratory/precision.ts'
import { scoreRating } from '../../core/studies/interlaboratory/score-rating.ts'
import type { RuggednessOf } from '../../core/studies/ruggedness/ruggedness-study.ts'
import type { ConditionScreen, ScreenedRoute } from '../../core/studies/screening/screening.ts'
import { levelRows } from './level-rows.ts'
import { routeFigureRows } from './screening-rows.ts'
import { variationRows } from './study-variation-rows.ts'
import type { StudyEntry } from '../shape/study-entry.ts'
import { referenceRows } from './reference-data.ts'

/** A row of `studies[].results` of schemas/check.json. */
export interface StudyRow {
  readonly property: string
  readonly material?: string
  readonly laboratory?: string
  readonly condition?: string
  readonly age: string
  readonly statistic: string
  /** null where there is none, with the reason under `reason`. */
  readonly value: number | null
  readonly interval: { readonly level: number; readonly low: number; readonly high: number } | null
  readonly n: number
  readonly reason?: string
  /** The value is a bound that the figure lies above. */
  readonly above?: true
  readonly degreesOfFreedom?: number
  /** That the figure is at, or that was set: an index in %. */
  readonly threshold?: number
  /** Of a reference test: its unit, and whether its readings gave the figure or its laboratory. */
  readonly unit?: string
  readonly from?: 'readings' | 'reported'
}

/**
 * @param study computed
 * @returns as schemas/check.json has it; values unrounded, indices in %
 */
export function studyData(study: StudyEntry): Record<string, unknown> {
  const { id, kind, title, readings, found, indices } = study
  const results =
    found.kind === 'screening'
      ? found.routes.flatMap((route) => [...routeRows(route), ...routeFigureRows(study, route)])
      : found.kind === 'interlaboratory'
        ? [...found.materials.flatMap(materialRows), ...levelRows(found.materials)]
        : found.effects.flatMap((effects) => effectRows(effects, study))
  const unmade = indices.unmade.map(({ test, why }) => ({
    material: test.material,
    condition: test.condition,
    laboratory: test.laboratory,
    batch: test.batch,
    age: test.age.text,
    property: test.property,
    why,
  }))
  return { id, kind, title, readings, results: [...results, ...referenceRows(study)], unmade }
}

function routeRows({ property, conditions }: ScreenedRoute): StudyRow[] {
  return conditions.flatMap((screen) => [
    ...meanRows(property, screen),
    ...separationRows(property, screen),
    ...variationRows(property, screen),
  ])
}

function meanRows(property: string, { condition, age, means }: ConditionScreen): StudyRow[] {
  return means.means.map(({ material, value, above, interval, n }) => ({
    ...{ property, material, condition, age: age.text, statistic: 'mean', value, n },
    interval: interval === null ? null : { level: means.level, low: interval[0], high: interval[1] },
    ...(above ? { above } : {}),
  }))
}

function separationRows(property: string, screen: ConditionScreen): StudyRow[] {
  const { condition, age, means, separation, areaInterval, threshold, errors, zPrime } = screen
  if (separation === null) return []
  const n = separation.inert + separation.reactive
  const row = (statistic: string, value: number | null, interval: StudyRow['interval'] = null): StudyRow => ({
    ...{ property, condition, age: age.text, statistic, value, interval, n },
  })
  const bound = (statistic: string, own: NonNullable<typeof errors>['inert']): StudyRow => ({
    ...row(statistic, own.wrong.length / own.n, { level: means.level, low: 0, high: own.newMaterial }),
    n: own.n,
  })
  return [
    row('wrong-side', separation.wrongSide.length),
    row('highest-inert', separation.highestInert.value),
    row('lowest-reactive', separation.lowestReactive.value),
    row('gap-ratio', separation.ratio),
    row(
      'area',
      separation.area,
      areaInterval === null ? null : { level: means.level, low: areaInterval[0], high: areaInterval[1] },
    ),
    row('z-prime', zPrime.linear),
    row('z-prime-logarithmic', zPrime.logarithmic),
    row('threshold', threshold),
    ...(errors === null
      ? []
      : [bound('inert-passing', errors.inert), bound('reactive-failing', errors.reactive)]),
  ]
}

function materialRows(material: RoundRobinMaterial): StudyRow[] {
  const { property, condition, age, cells } = material
  const of = { property, material: material.material, condition, age: age.text }
  const plain = (statistic: string, value: number | null, n: number): StudyRow => ({
    ...of,
    ...{ statistic, value, interval: null, n },
  })
  const laboratories = cells.flatMap(({ laboratory, mean, deviation, values }): StudyRow[] => {
    const own = material.consistency?.find((one) => one.laboratory === laboratory)
    const z = material.scores.find((one) => one.laboratory === laboratory)?.z ?? null
    const rating = z === null ? null : scoreRating(z)
    const rows = { mean, deviation, h: own?.h ?? null, k: own?.k ?? null, z, rating }
    return Object.entries(rows).map(([statistic, value]) => ({
      ...plain(`cell-${statistic}`, value, values.length),
      laboratory,
    }))
  })
  return [
    ...precisionRows(material.precision, plain),
    plain('robust-mean', material.robust?.mean ?? null, cells.length),
    plain('robust-deviation', material.robust?.deviation ?? null, cells.length),
    ...material.outliers.map(({ test, statistic, laboratories: asked }) => ({
      ...plain(test, statistic, cells.length),
      laboratory: asked.join(' '),
    })),
    ...laboratories,
  ]
}

function precisionRows(
  found: RoundRobinMaterial['precision'],
  plain: (statistic: string, value: number | null, n: number) => StudyRow,
): StudyRow[] {
  if (typeof found === 'string') return [{ ...plain('precision', null, 0), reason: found }]
  const { laboratories: n, level } = found
  const spread = (statistic: string, { value, low, high }: Deviation): StudyRow => ({
    ...plain(statistic, value, n),
    interval: { level, low, high },
  })
  return [
    plain('mean', found.mean, n),
    plain('deviation-of-means', found.deviationOfMeans, n),
    spread('repeatability-deviation', found.repeatability),
    spread('reproducibility-deviation', found.reproducibility),
    plain('between-laboratory-variance', found.betweenVariance, n),
    ...limits(found).map(([statistic, value]) => plain(statistic, value, n)),
  ]
}

function limits({ repeatabilityLimit, reproducibilityLimit }: Precision): [string, number][] {
  return [
    ['repeatability-limit', repeatabilityLimit],
    ['reproducibility-limit', reproducibilityLimit],
  ]
}

function effectRows(
  { property, material, age, found, missing }: RuggednessOf,
  { record }: StudyEntry,
): StudyRow[] {
  const of = { property, material, age: age.text }
  if (found === null)
    return [
      {
        ...of,
        statistic: 'effects',
        value: null,
        interval: null,
        n: 0,
        reason: `no-result-in ${missing.join(' ')}`,
      },
    ]
  const n = Object.keys(record.runs ?? {}).length
  return found.effects.map(({ factor, effect, half }) => ({
    ...of,
    statistic: `effect of ${record.factors?.[factor]?.title ?? factor + 1}`,
    value: effect,
    interval: half === null ? null : { level: found.level, low: effect - half, high: effect + half },
    n,
  }))
}
