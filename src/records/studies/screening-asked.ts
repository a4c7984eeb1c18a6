/** What a screening study asks of its indices, and the shape of what a study's readings were taken on. */
import { defined } from '../../core/measure/defined.ts'
import type { StudySpecimens } from '../../core/studies/batch-indices.ts'
import type { ScreeningAsked } from '../../core/studies/screening/screening.ts'
import type { Study } from '../schema/loaded-records.ts'

/** Level of the intervals of a study, and of its one-sided bounds. */
export const STUDY_LEVEL = 0.95

/**
 * Classes, steps of thresholds and batches as the plan has them.
 * @param study a screening study
 * @param draws of the materials that say how firm the order of conditions is, with their chance
 */
export function screeningAsked(
  { materials, plan }: Study,
  draws: Pick<ScreeningAsked, 'resamples' | 'chance'>,
): ScreeningAsked {
  const { threshold = {} } = plan
  return {
    materials: Object.entries(materials).flatMap(([code, { class: known }]) =>
      known === undefined ? [] : [{ code, class: known }],
    ),
    steps: defined({
      'strength-activity-index': threshold['strength-activity-index']?.value,
      'resistivity-index': threshold['resistivity-index']?.value,
    }),
    batches: plan.batches ?? 1,
    level: STUDY_LEVEL,
    ...draws,
  }
}

/** What strength and resistivity are computed with; undefined where the study reports them finished. */
export function specimensOf({ specimens }: Study): StudySpecimens | undefined {
  return specimens === undefined
    ? undefined
    : { cubeMm: specimens.cube.value, endContactOhm: specimens['end-contact']?.value ?? 0 }
}
