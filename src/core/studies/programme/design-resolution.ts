/** What a programme can resolve, from the scatter that it assumes and from how much it casts. */
import { largestShare } from '../../statistics/share-bounds.ts'
import type { MaterialClass } from '../screening/material-means.ts'
import type { StudyIndexProperty } from '../study-reading.ts'
import { castIn } from './planned-mortars.ts'
import type { Programme } from './programme.ts'
import {
  deviationFactors,
  effectHalfWidth,
  logDeviation,
  meanHalfWidth,
  smallestShift,
} from './resolution.ts'

export interface ResolutionAsked {
  /** Class by code of the material. */
  readonly classes: ReadonlyMap<string, MaterialClass>
  /** Coefficient of variation of an index between batches, as a share, by property. */
  readonly assumed: ReadonlyMap<StudyIndexProperty, number>
  /** Between 0 and 1, power above 1 − level. */
  readonly level: number
  readonly power: number
  /** All conditions are those of a design with factors of two levels, each balanced. */
  readonly hasTwoLevels: boolean
}

/** Ratios above 1: what an index is multiplied or divided by. */
export interface RouteResolution {
  readonly property: StudyIndexProperty
  readonly share: number
  /** Smallest true ratio of two materials' means under one condition that is seen so often as asked. */
  readonly smallestRatio: number
  /** Half width of the interval of a material's mean under one condition. */
  readonly meanRatio: number
  /** Half width of the interval of the effect of a factor of two levels, for a material cast under all conditions. */
  readonly effectRatio: number | null
}

export interface DesignResolution {
  readonly level: number
  readonly power: number
  readonly batches: number
  /** Degrees of freedom of the scatter pooled over the materials of a condition; of the condition with fewest. */
  readonly df: number
  /** Batches that an effect rests on, and the degrees of freedom of its error; null where none is asked for. */
  readonly effect: { readonly results: number; readonly df: number } | null
  /** None where one batch leaves no scatter to pool, or none is assumed. */
  readonly routes: readonly RouteResolution[]
  /** What a class without an error still allows, one-sided. */
  readonly noErrors: readonly { readonly class: MaterialClass; readonly n: number; readonly share: number }[]
  /** Factors of the interval of a standard deviation between laboratories; null for fewer than two. */
  readonly laboratories: {
    readonly n: number
    readonly df: number
    readonly factors: readonly [number, number]
  } | null
}

/**
 * What a programme can resolve.
 * @param programme with a mortar at least; a condition without one stands aside
 * @param asked scatter, level and power
 * Note: a coefficient of variation is taken as that of a log-normal index, its control batch included.
 */
export function designResolution(programme: Programme, asked: ResolutionAsked): DesignResolution {
  const { batches, conditions, laboratories, materials } = programme
  const { level, power, classes } = asked
  const cast = conditions.map(({ code }) => castIn(programme, code)).filter(({ length }) => 0 < length)
  const replicates = batches - 1
  const df = Math.min(...cast.map(({ length }) => length)) * replicates
  const cells = cast.reduce((sum, { length }) => sum + length, 0) * laboratories.length
  const effect = asked.hasTwoLevels
    ? { results: conditions.length * laboratories.length * batches, df: cells * replicates }
    : null
  const ofClass = (own: MaterialClass) => materials.filter((code) => classes.get(code) === own).length
  return {
    ...{ level, power, batches, df, effect },
    routes:
      df === 0
        ? []
        : [...asked.assumed].map(([property, share]) => {
            const deviation = logDeviation(share)
            const ratio = (shift: number) => Math.exp(shift * deviation)
            return {
              ...{ property, share },
              smallestRatio: ratio(smallestShift({ batches, df, level, power })),
              meanRatio: ratio(meanHalfWidth(batches, df, level)),
              effectRatio: effect && ratio(effectHalfWidth(effect.results, effect.df, level)),
            }
          }),
    noErrors: (['inert', 'reactive'] as const).flatMap((own) => {
      const n = ofClass(own)
      return n === 0 ? [] : [{ class: own, n, share: largestShare(0, n, level) }]
    }),
    laboratories:
      laboratories.length < 2
        ? null
        : {
            n: laboratories.length,
            df: laboratories.length - 1,
            factors: deviationFactors(laboratories.length - 1, level),
          },
  }
}
