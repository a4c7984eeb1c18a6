/** A limit beside what a screening study shows at one condition and age. */
import type { Age } from '../../measure/age.ts'
import { type ErrorsAsked, type ErrorsAtThreshold, errorsAt } from './errors-at-threshold.ts'
import type { ScreenedRoute } from './screening.ts'

export interface LimitAtCondition {
  /** %; null where the study gives none there. */
  readonly threshold: number | null
  /** At the study's threshold; null without one. */
  readonly atThreshold: ErrorsAtThreshold | null
  /** At the limit; null where a class has no material there. */
  readonly atLimit: ErrorsAtThreshold | null
}

/**
 * What the study says at a condition, and what it says of the limit.
 * @param route of the property that the limit is on
 * @param condition,age by its code in the study
 * @param limit index, %, above zero
 * @param asked batches, and one-sided level of the bounds, from 0 to 1
 * @returns null where nothing was read at that condition and age
 */
export function limitAtCondition(
  route: ScreenedRoute,
  { condition, age, limit }: { readonly condition: string; readonly age: Age; readonly limit: number },
  asked: ErrorsAsked,
): LimitAtCondition | null {
  const found = route.conditions.find((one) => one.condition === condition && one.age.hours === age.hours)
  if (found === undefined) return null
  const isThere = (own: 'inert' | 'reactive') => found.means.means.some((one) => one.class === own)
  return {
    threshold: found.threshold,
    atThreshold: found.errors,
    atLimit: isThere('inert') && isThere('reactive') ? errorsAt(found.means, limit, asked) : null,
  }
}
