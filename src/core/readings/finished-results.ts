/**
 * Figures that a laboratory reports finished beside the readings of the same test: the readings stand, since what
 * they give can be recomputed.
 */
import { defined } from '../measure/defined.ts'
import { isSameAge } from '../measure/age.ts'
import { INDEX_OF } from '../measure/ratio-indices.ts'
import { isMade, type PlannedTest, type Result, type UnmadeResult } from '../result/result.ts'

/** One test as both its figure and its readings name it. */
type Test = Pick<Result, 'property' | 'condition' | 'age' | 'laboratory' | 'sample'> & {
  readonly method?: string
}

/**
 * A reported result as it counts beside what the lot's own mortars give.
 * @param reported result of an analysis
 * @param mortars what the lot's tests gave, results without a value among them
 * @returns the result itself, or not valid where readings of the same property, condition, age, method, laboratory
 * and sample stand in its place
 * Note: readings that broke their method's conditions stand all the same: a figure does not undo their fault.
 */
export function besideReadings(reported: Result, mortars: readonly (Result | UnmadeResult)[]): Result {
  if (reported.finished === undefined) return reported
  const same = mortars.filter((other) => isSameTest(reported, other))
  if (same.length === 0) return reported
  const recomputed = same.filter(isMade).findLast(({ valid }) => valid)
  const { unit, decimals } = recomputed ?? reported
  return {
    ...reported,
    valid: false,
    reasons: [
      ...reported.reasons,
      {
        code: 'readings-stand',
        params: {
          recomputed: recomputed?.value ?? null,
          ...defined({ bounds: recomputed?.bounds }),
          unit,
          decimals,
        },
      },
    ],
  }
}

/**
 * Whether a test that is listed without a reading has been reported as a finished figure, of its own property or of
 * the index that follows from it.
 * @param reported results of the lot's analyses
 */
export function isReportedFinished(planned: PlannedTest, reported: readonly Result[]): boolean {
  const properties = [planned.property, INDEX_OF[planned.property]]
  return reported.some(
    (result) =>
      result.finished === true &&
      result.valid &&
      properties.includes(result.property) &&
      isSameTest({ ...result, property: planned.property }, planned),
  )
}

function isSameTest(one: Test, other: Test): boolean {
  return (
    one.property === other.property &&
    one.condition === other.condition &&
    isSameAge(one.age, other.age) &&
    one.laboratory === other.laboratory &&
    one.sample === other.sample &&
    (one.method === undefined || other.method === undefined || one.method === other.method)
  )
}
