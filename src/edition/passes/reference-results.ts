/** What is known of the reference tests of a study's materials on a day. */
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { isReferenceFault } from '../../core/studies/reference/reference-fault.ts'
import { referenceFound, type ReferenceTest } from '../../core/studies/reference/reference-tests.ts'
import type { StudyRecord } from '../../records/records.ts'
import type { ReferenceResult } from '../shape/reference-result.ts'

/**
 * @param asOf readings made after it are left out; without it none is
 * @returns figures from readings before those that are only stated, which readings of the same replace
 */
export function referenceResults(
  { record, reference }: StudyRecord,
  asOf: Moment | undefined,
): ReferenceResult[] {
  const known = reference.filter(({ tested }) => tested === null || asOf === undefined || isBy(tested, asOf))
  return Object.entries(record.materials).flatMap(([material, { heat, 'calcium-hydroxide': consumed }]) => {
    const own = known.filter((test) => test.material === material).flatMap(computed)
    const reported = [
      { measure: 'heat', stated: heat },
      { measure: 'calcium-hydroxide-consumed', stated: consumed },
    ] as const
    return [
      ...own,
      ...reported.flatMap(({ measure, stated }): ReferenceResult[] =>
        stated === undefined || own.some((one) => one.measure === measure)
          ? []
          : [{ from: 'reported', material, measure, stated }],
      ),
    ]
  })
}

/** A test whose readings give nothing was refused when it was loaded. */
function computed(test: ReferenceTest): ReferenceResult[] {
  const found = referenceFound(test)
  return isReferenceFault(found)
    ? []
    : [{ from: 'readings', material: test.material, measure: test.test, test, found }]
}
