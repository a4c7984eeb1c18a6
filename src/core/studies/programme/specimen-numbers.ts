/** Which specimens of a mortar are tested at which age. */
import type { PlannedAge, Programme } from './programme.ts'

/** First and last number, from 1; null for none. */
export type NumberRange = readonly [number, number] | null

export interface AgeSpecimens {
  readonly planned: PlannedAge
  readonly crushed: NumberRange
  readonly read: NumberRange
}

/**
 * Numbers of the specimens by age, the youngest first; spare ones come last and are not among them.
 * @param resistivityOn as of `Programme`: read on what is then crushed, or on the ones that are kept, which come after all others
 */
export function specimenNumbers(
  ages: readonly PlannedAge[],
  resistivityOn: Programme['resistivityOn'],
): AgeSpecimens[] {
  const inOrder = ages.toSorted((a, b) => a.age.hours - b.age.hours)
  const crushed = inOrder.reduce((sum, { strength }) => sum + strength, 0)
  let next = 1
  return inOrder.map((planned) => {
    const { strength, resistivity } = planned
    const first = next
    next += resistivityOn === 'crushed' ? Math.max(strength, resistivity) : strength
    return {
      planned,
      crushed: range(first, strength),
      read: range(resistivityOn === 'crushed' ? first : crushed + 1, resistivity),
    }
  })
}

function range(first: number, count: number): NumberRange {
  return count === 0 ? null : [first, first + count - 1]
}
