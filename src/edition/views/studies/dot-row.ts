/** Materials of a condition as dots by class, and the ground between the classes. */
import type { DotRow } from '../../../charts/dot-rows.ts'
import type { MaterialClass } from '../../../core/studies/screening/material-means.ts'
import type { ConditionScreen } from '../../../core/studies/screening/screening.ts'
import { dotShape } from './dot-shape.ts'

/**
 * A condition as a row of dots: reactive above, weak between, inert below.
 * @param mark value that a line stands at; null for none
 * @param named materials whose code stands beside their dot
 */
export function dotRow(
  { means, separation }: Pick<ConditionScreen, 'means' | 'separation'>,
  { mark, named }: { readonly mark: number | null; readonly named: readonly string[] },
): DotRow {
  const lane = (own: MaterialClass) =>
    means.means
      .filter((one) => one.class === own)
      .map((one) => ({
        value: one.value,
        low: one.interval?.[0] ?? null,
        high: one.interval?.[1] ?? null,
        shape: dotShape(one),
        name: named.includes(one.material) ? one.material : null,
      }))
  return {
    lanes: [lane('reactive'), lane('weak'), lane('inert')],
    ground: groundOf(separation),
    mark,
  }
}

/** Ground between the classes: a gap, or what they share. */
function groundOf(separation: ConditionScreen['separation']): DotRow['ground'] {
  if (separation === null) return null
  const [inert, reactive] = [separation.highestInert.value, separation.lowestReactive.value]
  return inert < reactive
    ? { from: inert, to: reactive, is: 'gap' }
    : { from: reactive, to: inert, is: 'overlap' }
}
