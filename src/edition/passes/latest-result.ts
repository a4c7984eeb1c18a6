/** The latest that a lot's record knows. */
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { knownFrom } from '../../core/mortar/known-when.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'

/** Since when the latest result in a lot's record has been known; undefined without results. */
export function latestResult({ analyses = [], tests = [] }: Lot): Moment | undefined {
  const readings = tests.flatMap(({ strength = [], resistivity = [] }) => [...strength, ...resistivity])
  const moments = [...analyses, ...readings].flatMap(({ tested, ...rest }) =>
    tested === undefined ? [] : [knownFrom({ ...rest, tested })],
  )
  return moments.toSorted(compareMoments).at(-1)
}
