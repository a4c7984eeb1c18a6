/** Reference tests of a study's materials, as rows of the check report. */
import { CURVE_RANGE, type Pozzolanicity } from '../../core/studies/reference/pozzolanicity.ts'
import type { ReferenceFound, ReferenceMeasure } from '../../core/studies/reference/reference-tests.ts'
import { MEASURES } from '../../words/reference-tests.ts'
import type { ReferenceResult } from '../shape/reference-result.ts'
import type { StudyEntry } from '../shape/study-entry.ts'
import type { StudyRow } from './study-data.ts'

/** A row for each figure, the content beside the consumption of hydroxide; three for a point of the pozzolanicity test. */
export function referenceRows({ reference }: StudyEntry): StudyRow[] {
  return reference.flatMap((result): StudyRow[] => {
    if (result.from === 'reported') return [reportedRow(result)]
    const { found, test } = result
    const of = {
      ...{ property: 'reference-reactivity', material: result.material, age: test.age?.text ?? '' },
      ...{ interval: null, n: determinations(found), from: 'readings' as const },
    }
    if (found.test === 'pozzolanicity') return pointRows(found.found).map((row) => ({ ...of, ...row }))
    const { unit } = MEASURES[found.test]
    const figure = { ...of, statistic: found.test, value: found.found.value, unit }
    if (found.test !== 'calcium-hydroxide-consumed') return [figure]
    return [figure, { ...figure, statistic: 'calcium-hydroxide-content', value: found.found.content.value }]
  })
}

function reportedRow({
  material,
  measure,
  stated,
}: Extract<ReferenceResult, { readonly from: 'reported' }>): StudyRow {
  const unit = MEASURES[measure satisfies ReferenceMeasure].unit
  const of = { property: 'reference-reactivity', material, age: '', statistic: measure, interval: null, unit }
  return stated.censored === undefined
    ? { ...of, value: stated.value, n: 1, from: 'reported' }
    : { ...of, value: null, n: 1, from: 'reported', reason: `known only as ${stated.written}` }
}

function determinations(found: ReferenceFound): number {
  return found.test === 'bound-water' || found.test === 'lime-strength' ? found.found.each.length : 1
}

/** Positive above the curve; no distance outside of what it holds for. */
function pointRows({
  hydroxide,
  lime,
  saturated,
}: Pozzolanicity): Pick<StudyRow, 'statistic' | 'value' | 'unit' | 'reason'>[] {
  const distance = { statistic: 'pozzolanicity-lime-above-curve', unit: 'mmol/L' }
  return [
    { statistic: 'pozzolanicity-hydroxide', value: hydroxide, unit: 'mmol/L' },
    { statistic: 'pozzolanicity-lime', value: lime, unit: 'mmol/L' },
    saturated === null
      ? {
          ...distance,
          value: null,
          reason: `hydroxide outside ${CURVE_RANGE.from} to ${CURVE_RANGE.to} mmol/L`,
        }
      : { ...distance, value: lime - saturated },
  ]
}
