/** How often each threshold of a route's best condition would judge a material wrongly. */
import { type ErrorCurvesModel, type ErrorReading, errorCurves } from '../../../charts/error-curves.ts'
import { errorCurve, roundThresholds, thresholdRange } from '../../../core/studies/screening/error-curve.ts'
import {
  type ClassErrors,
  type ErrorsAsked,
  type ErrorsAtThreshold,
  errorsAt,
} from '../../../core/studies/screening/errors-at-threshold.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { number, plural } from '../../../words/numbers.ts'
import { sentence } from '../../../words/sentences.ts'
import { chanceText, shareText, STUDY_ROUTES } from '../../../words/studies.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead } from '../chart-table.ts'

export interface ErrorCurvesView {
  readonly title: string
  readonly chart: ErrorCurvesModel
  /** Name of each panel, with what its margin reads at the threshold. */
  readonly panels: readonly {
    readonly title: string
    readonly readings: readonly { readonly value: string; readonly words: string }[]
  }[]
  readonly thresholdLabel: string
  readonly ticks: readonly string[]
  readonly label: string
  readonly hasFurther: boolean
  readonly hasUndecided: boolean
  readonly table: ChartTable
}

/** Thresholds at equal ratios, beside those at which a count changes. */
const POINTS = 60

/**
 * @param name of the route's best condition
 * @returns null where a class has no material there
 */
export function errorCurvesView(
  { record }: StudyEntry,
  route: ScreenedRoute,
  name: string,
): ErrorCurvesView | null {
  const [best] = route.conditions
  if (best === undefined || best.separation === null) return null
  const asked = { batches: record.plan.batches ?? 1, level: STUDY_LEVEL }
  const [from, to] = thresholdRange(best.means, best.threshold)
  const curve = errorCurve(best.means, asked, { from, to, points: POINTS })
  const chart = errorCurves(curve, best.errors)
  if (chart === null) return null
  const threshold = best.threshold === null ? '' : `threshold ${number(best.threshold, 0)} %`
  const title = `${sentence(STUDY_ROUTES[route.property])}, ${name}`
  return {
    title,
    chart,
    panels: (['inert', 'reactive'] as const).map((own, place) => ({
      title: own === 'inert' ? 'inert that pass' : 'reactive that fail',
      readings: (chart.panels[place]?.readings ?? []).map(({ reading }) =>
        readingOf(best.errors?.[own], reading),
      ),
    })),
    thresholdLabel: threshold,
    ticks: chart.xTicks.map(({ value }) => number(value, 0)),
    label: `${title}: share of inert materials that pass and of reactive ones that fail, against the threshold${threshold === '' ? '' : `; ${threshold}`}. The table holds the figures.`,
    hasFurther: chart.panels.some(({ further }) => further !== null),
    hasUndecided: chart.panels.some(({ withUndecided }) => withUndecided !== null),
    table: tableOf(best, asked, route.step),
  }
}

function readingOf(
  errors: ClassErrors | undefined,
  reading: ErrorReading,
): { readonly value: string; readonly words: string } {
  if (errors === undefined) return { value: '', words: '' }
  switch (reading) {
    case 'new':
      return { value: `≤ ${shareText(errors.newMaterial)}`, words: 'a new one' }
    case 'further':
      return { value: chanceText(errors.furtherBatches ?? 0), words: 'further batches' }
    case 'seen':
      return { value: `${errors.wrong.length} of ${errors.n}`, words: 'seen' }
  }
}

/** At the step of thresholds or a multiple of it, and at the threshold itself. */
function tableOf(best: ConditionScreen, asked: ErrorsAsked, step: number): ChartTable {
  return {
    summary: 'As a table',
    heads: [
      'Threshold, %',
      'Inert passing',
      'a new one, at most',
      'by further batches',
      'Reactive failing',
      'a new one, at most',
      'by further batches',
    ].map(numberHead),
    rows: roundThresholds(best.means, best.threshold, step)
      .map((threshold) => errorsAt(best.means, threshold, asked))
      .map((errors) => ({ lot: null, cells: cellsOf(errors, best.threshold) })),
  }
}

function cellsOf({ threshold, inert, reactive }: ErrorsAtThreshold, chosen: number | null): string[] {
  return [
    `${number(threshold, 0)}${threshold === chosen ? ' (set)' : ''}`,
    ...[inert, reactive].flatMap((errors) => [
      `${errors.wrong.length} of ${errors.n}${errors.undecided.length === 0 ? '' : `, ${errors.undecided.length} not decided`}`,
      shareText(errors.newMaterial),
      errors.furtherBatches === null ? '–' : chanceText(errors.furtherBatches),
    ]),
  ]
}

/** What the dashed line speaks of. */
export function batchWords({ record }: StudyEntry, routes: readonly ScreenedRoute[]): string {
  const batches = plural(record.plan.batches ?? 1, 'further batch', 'further batches')
  const isCut = routes.some(({ conditions: [best] }) => best?.means.means.some(({ above }) => above))
  return `mean chance for the mean of ${batches} of these materials${isCut ? ', those above the meter’s ceiling taken as sure to pass a threshold up to it; it ends where they are not decided' : ''}`
}
