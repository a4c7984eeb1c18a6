/** A screening study: every condition of a route, the best first, with what its threshold would let through. */
import { type Age, compareAges } from '../../measure/age.ts'
import { compareTexts } from '../../measure/compare-texts.ts'
import type { BatchIndex } from '../batch-indices.ts'
import type { StudyIndexProperty } from '../study-reading.ts'
import { areaInterval, areaWithoutModel } from './area-interval.ts'
import { type JudgedCondition, orderedConditions, placed, type ScreenedCondition } from './choice.ts'
import { type LeavingOut, type LeftOut, leaveOneOut, withoutEachMaterial } from './left-out.ts'
import { firstPlaces } from './first-places.ts'
import { type ErrorsAtThreshold, errorsAt } from './errors-at-threshold.ts'
import { type ConditionMeans, conditionMeans, type MaterialClass } from './material-means.ts'
import { type WhatVaries, whatVaries } from './what-varies.ts'
import { zPrime } from './z-prime.ts'

export interface ScreenedMaterial {
  readonly code: string
  readonly class: MaterialClass
}

/** One condition at one age. */
export interface ConditionScreen extends JudgedCondition {
  readonly condition: string
  readonly age: Age
  readonly means: ConditionMeans
  /** Of the area under the curve, at the study's level; null where a class has no material. */
  readonly areaInterval: readonly [number, number] | null
  /** What full separation shows of the area with no model assumed; null without full separation. */
  readonly areaWithoutModel: number | null
  readonly errors: ErrorsAtThreshold | null
  /** null where no batch is a repeat of another. */
  readonly varies: WhatVaries | null
  /** Z′ on the scale as it is, and on the logarithmic one; null where something is above a bound. */
  readonly zPrime: { readonly linear: number | null; readonly logarithmic: number | null }
}

export interface ScreenedRoute {
  readonly property: StudyIndexProperty
  /** % that thresholds are rounded to. */
  readonly step: number
  /** Best first. */
  readonly conditions: readonly ConditionScreen[]
  /** Each material left out in turn. */
  readonly leftOut: readonly LeftOut[]
  /** Each laboratory left out in turn; none where there is but one. */
  readonly laboratoriesOut: readonly LeftOut[]
  /** How often each condition comes first when materials are drawn anew. */
  readonly firstPlaces: readonly { readonly id: string; readonly share: number }[]
}

export interface ScreeningAsked {
  readonly materials: readonly ScreenedMaterial[]
  /** % by route. */
  readonly steps: Readonly<Partial<Record<StudyIndexProperty, number>>>
  /** Batches whose mean is to be judged at a threshold. */
  readonly batches: number
  /** Of intervals, and one-sided of bounds. */
  readonly level: number
  readonly resamples: number
  readonly chance: () => number
}

/**
 * Each route of a screening study.
 * @param indices of the study, one a batch, all materials listed
 * @returns routes that have a step, in the order of their properties
 * @throws RangeError where its own parts disagree, which nothing that is read can bring about
 */
export function screening(indices: readonly BatchIndex[], asked: ScreeningAsked): ScreenedRoute[] {
  return (['strength-activity-index', 'resistivity-index'] as const).flatMap((property): ScreenedRoute[] => {
    const step = asked.steps[property]
    const own = indices.filter((index) => index.property === property)
    if (step === undefined || own.length === 0) return []
    const screened = screenedConditions(own, asked)
    const conditions = orderedConditions(screened, step).map((judged) =>
      conditionScreen(judged, screened, asked),
    )
    return [
      {
        property,
        step,
        conditions,
        leftOut: leaveOneOut(withoutEachMaterial(screened), step),
        laboratoriesOut: leaveOneOut(withoutEachLaboratory(own, asked), step),
        firstPlaces: firstPlaces(screened, asked.resamples, asked.chance),
      },
    ]
  })
}

interface Screened extends ScreenedCondition {
  readonly condition: string
  readonly age: Age
  readonly indices: readonly BatchIndex[]
}

function screenedConditions(own: readonly BatchIndex[], { materials, level }: ScreeningAsked): Screened[] {
  return [...Map.groupBy(own, ({ condition, age }) => `${condition} ${age.hours}`).values()]
    .flatMap((group): Screened[] => {
      const [first] = group
      if (first === undefined) return []
      const batches = Map.groupBy(group, ({ material }) => material)
      const means = conditionMeans(
        materials.flatMap(({ code, class: known }) => {
          const all = batches.get(code)
          return all === undefined ? [] : [{ material: code, class: known, batches: all }]
        }),
        level,
      )
      return [{ id: conditionId(first), condition: first.condition, age: first.age, means, indices: group }]
    })
    .toSorted((a, b) =>
      a.condition < b.condition ? -1 : a.condition > b.condition ? 1 : compareAges(a.age, b.age),
    )
}

/** A laboratory's own results judge its materials; without it the others choose. */
function withoutEachLaboratory(own: readonly BatchIndex[], asked: ScreeningAsked): LeavingOut[] {
  const codes = [...new Set(own.map(({ laboratory }) => laboratory))]
  if (codes.length < 2) return []
  return codes.toSorted(compareTexts).map((left) => ({
    left,
    rest: screenedConditions(
      own.filter(({ laboratory }) => laboratory !== left),
      asked,
    ),
    itself: screenedConditions(
      own.filter(({ laboratory }) => laboratory === left),
      asked,
    ),
  }))
}

/**
 * A condition at an age, as the order of conditions names it.
 * @param condition code of the study, and the age
 */
export function conditionId({ condition, age }: { readonly condition: string; readonly age: Age }): string {
  return `${condition} ${age.text}`
}

function conditionScreen(
  judged: JudgedCondition,
  screened: readonly Screened[],
  { materials, level, batches }: ScreeningAsked,
): ConditionScreen {
  const found = screened.find(({ id }) => id === judged.id)
  if (found === undefined) throw new RangeError(`screening needs to know its conditions, got ${judged.id}`)
  const { condition, age, means, indices } = found
  const { separation, threshold } = judged
  const won = separation === null ? 0 : separation.area * separation.inert * separation.reactive
  return {
    ...judged,
    condition,
    age,
    means,
    areaInterval: separation === null ? null : areaInterval(won, separation, level),
    areaWithoutModel:
      separation?.area === 1 ? areaWithoutModel(separation.inert, separation.reactive, level) : null,
    errors: threshold === null ? null : errorsAt(means, threshold, { batches, level }),
    varies: whatVaries(indices, {
      classes: new Map(materials.map(({ code, class: known }) => [code, known])),
      batches,
      level,
    }),
    zPrime: zPrimes(means),
  }
}

function zPrimes(means: ConditionMeans): ConditionScreen['zPrime'] {
  const [inert, reactive] = [placed(means, 'inert'), placed(means, 'reactive')]
  if ([...inert, ...reactive].some(({ above }) => above)) return { linear: null, logarithmic: null }
  const values = [inert, reactive].map((all) => all.map(({ value }) => value)) as [number[], number[]]
  const logs = values.map((all) => all.map(Math.log)) as [number[], number[]]
  return { linear: zPrime(...values), logarithmic: zPrime(...logs) }
}
