/** What a study's page shows of the reference tests of its materials: figures, the working behind each, and the two as a map. */
import type { ReferenceMeasure } from '../../../../core/studies/reference/reference-tests.ts'
import { REFERENCE_MEASURES } from '../../../../core/studies/reference/reference-tests.ts'
import { written } from '../../../../words/as-written.ts'
import { MEASURES, referenceWorking, testTitle } from '../../../../words/reference-tests.ts'
import { sentence, unbroken } from '../../../../words/sentences.ts'
import { date } from '../../../../words/dates.ts'
import type { ReferenceResult } from '../../../shape/reference-result.ts'
import type { StudyEntry } from '../../../shape/study-entry.ts'
import { type ReactivityMapView, reactivityMapView } from './reactivity-map-view.ts'
import { referenceText } from './reference-text.ts'

export interface ReferenceTestsView {
  /** Titles of the tests, a column each. */
  readonly tests: readonly string[]
  readonly materials: readonly {
    readonly code: string
    readonly title: string
    readonly class: string
    readonly cells: readonly { readonly text: string; readonly from: string }[]
  }[]
  readonly hasReported: boolean
  readonly workings: readonly {
    readonly title: string
    readonly facts: string
    readonly lines: readonly string[]
  }[]
  readonly map: ReactivityMapView | null
  /** A study of another kind draws no dots before these. */
  readonly hasDots: boolean
}

/** @returns null where no material has a reference test */
export function referenceTestsView(study: StudyEntry): ReferenceTestsView | null {
  const { record, reference, readings } = study
  if (reference.length === 0) return null
  const columns = [...REFERENCE_MEASURES, 'pozzolanicity' as const].filter((measure) =>
    reference.some((result) => result.measure === measure),
  )
  const own = Map.groupBy(reference, ({ material }) => material)
  return {
    tests: columns.map(columnTitle),
    materials: [...own].map(([code, results]) => {
      const { title = code, class: known = '' } = record.materials[code] ?? {}
      return {
        code,
        title,
        class: known,
        cells: columns.map((measure) => cellOf(results.find((result) => result.measure === measure))),
      }
    }),
    hasReported: reference.some(({ from }) => from === 'reported'),
    workings: reference.flatMap((result) => workingOf(result, study)),
    map: reactivityMapView(study),
    hasDots: record.kind === 'screening' && 0 < readings,
  }
}

function columnTitle(measure: ReferenceMeasure | 'pozzolanicity'): string {
  return sentence(measure === 'pozzolanicity' ? 'pozzolanicity test' : MEASURES[measure].noun)
}

function cellOf(result: ReferenceResult | undefined): { text: string; from: string } {
  if (result === undefined) return { text: '–', from: '' }
  return {
    text: referenceText(result),
    from: result.from === 'readings' ? 'from readings' : 'as reported',
  }
}

function workingOf(result: ReferenceResult, { record }: StudyEntry): ReferenceTestsView['workings'] {
  if (result.from === 'reported') return []
  const { material, test, found } = result
  const paste =
    test.test === 'bound-water' ? record.materials[material]?.reference?.['bound-water'] : undefined
  const facts = [
    test.method,
    paste?.['dried-at'] !== undefined && `dried at ${written(paste['dried-at'])}`,
    paste?.['ignited-at'] !== undefined && `ignited at ${written(paste['ignited-at'])}`,
    test.tested !== null && `read ${date(test.tested)}`,
  ].filter(Boolean)
  return [
    {
      title: `${material}: ${testTitle(test)}`,
      facts: facts.join('; '),
      lines: referenceWorking(test, found).map(unbroken),
    },
  ]
}
