/** Figures of a route of a screening study that are not of one condition's separation, as rows. */
import {
  type AgainstReference,
  againstReference,
  type Referenced,
} from '../../core/studies/screening/against-reference.ts'
import { REFERENCE_MEASURES, type ReferenceMeasure } from '../../core/studies/reference/reference-tests.ts'
import { roundThresholds } from '../../core/studies/screening/error-curve.ts'
import { type ClassErrors, errorsAt } from '../../core/studies/screening/errors-at-threshold.ts'
import { factorEffects, interactions } from '../../core/studies/screening/factor-effects.ts'
import type { LeftOut } from '../../core/studies/screening/left-out.ts'
import type { ConditionScreen, ScreenedRoute } from '../../core/studies/screening/screening.ts'
import { STUDY_LEVEL } from '../../records/studies/screening-asked.ts'
import { studyFactors } from '../../records/studies/study-factors.ts'
import { referenceValues } from '../shape/reference-result.ts'
import type { StudyEntry } from '../shape/study-entry.ts'
import type { StudyRow } from './study-data.ts'

/** Of the best condition, and of all conditions together. */
export function routeFigureRows(study: StudyEntry, route: ScreenedRoute): StudyRow[] {
  const [best] = route.conditions
  return [
    ...(best === undefined
      ? []
      : [...errorRows(study, route, best), ...referenceLineRows(study, route, best)]),
    ...leftOutRows(route),
    ...factorRows(study, route),
  ]
}

function errorRows(
  { record }: StudyEntry,
  { property, step }: ScreenedRoute,
  best: ConditionScreen,
): StudyRow[] {
  if (best.separation === null) return []
  const asked = { batches: record.plan.batches ?? 1, level: STUDY_LEVEL }
  return roundThresholds(best.means, best.threshold, step).flatMap((threshold) => {
    const errors = errorsAt(best.means, threshold, asked)
    return [
      ...classRows('inert-passing', errors.inert),
      ...classRows('reactive-failing', errors.reactive),
    ].map((row): StudyRow => ({ property, condition: best.condition, age: best.age.text, threshold, ...row }))
  })
}

type Figure = Pick<StudyRow, 'statistic' | 'value' | 'interval' | 'n'>

function classRows(
  statistic: string,
  { wrong, undecided, n, newMaterial, furtherBatches }: ClassErrors,
): Figure[] {
  const interval = { level: STUDY_LEVEL, low: 0, high: newMaterial }
  return [
    { statistic: `${statistic}-at`, value: wrong.length / n, interval, n },
    { statistic: `${statistic}-undecided-at`, value: undecided.length / n, interval: null, n },
    { statistic: `${statistic}-further-batches-at`, value: furtherBatches, interval: null, n },
  ]
}

/** Fewest materials of which an order says anything. */
const FEWEST = 3

function referenceLineRows(
  { reference }: StudyEntry,
  { property }: ScreenedRoute,
  best: ConditionScreen,
): StudyRow[] {
  return REFERENCE_MEASURES.flatMap((measure) => {
    const values = referenceValues(reference, measure)
    const all = best.means.means.flatMap((mean): Referenced[] => {
      const value = values.get(mean.material)
      return value === undefined ? [] : [{ mean, reference: value }]
    })
    return all.length < FEWEST
      ? []
      : referenceFigures(measure, againstReference(all, best.threshold)).map((row) => ({
          ...{ property, condition: best.condition, age: best.age.text },
          ...row,
        }))
  })
}

function referenceFigures(
  measure: ReferenceMeasure,
  { n, rankCorrelation, amongReactive, line, boundary }: AgainstReference,
): Figure[] {
  const figure = (statistic: string, value: number | null, of: number): Figure => ({
    ...{ statistic: `${measure}-${statistic}`, value, n: of },
    interval: null,
  })
  return [
    figure('rank-correlation', rankCorrelation, n),
    figure('rank-correlation-reactive', amongReactive.rankCorrelation, amongReactive.n),
    figure('line-slope', line?.slope ?? null, line?.n ?? 0),
    figure('line-intercept', line?.intercept ?? null, line?.n ?? 0),
    figure('boundary', boundary, n),
  ]
}

/** Where the condition chosen without it sets a threshold: the share of what was left out that is judged rightly. */
function leftOutRows({ property, conditions, leftOut, laboratoriesOut }: ScreenedRoute): StudyRow[] {
  const rowOf = (
    { left, condition, threshold, judged }: LeftOut,
    of: 'material' | 'laboratory',
  ): StudyRow[] => {
    const chosen = conditions.find(({ id }) => id === condition)
    if (chosen === undefined || threshold === null) return []
    const decided = judged.filter(({ right }) => right !== null)
    return [
      {
        ...{ property, condition: chosen.condition, age: chosen.age.text, threshold, [of]: left },
        statistic: `left-out-${of}-judged-rightly`,
        value:
          decided.length === 0 ? null : decided.filter(({ right }) => right === true).length / decided.length,
        ...{ interval: null, n: decided.length },
      },
    ]
  }
  return [
    ...leftOut.flatMap((one) => rowOf(one, 'material')),
    ...laboratoriesOut.flatMap((one) => rowOf(one, 'laboratory')),
  ]
}

/** Changes as ratios: 1 is none. */
function factorRows({ record }: StudyEntry, route: ScreenedRoute): StudyRow[] {
  const layout = studyFactors(record, route)
  const levelOf = (factor: number, place: number) => layout.factors[factor]?.levels[place]?.join(', ') ?? ''
  const nameOf = (factor: number) => layout.factors[factor]?.names.join(' and ') ?? ''
  const row = (
    statistic: string,
    change: number | null,
    interval: readonly [number, number] | null,
    n: number,
  ) => ({
    ...{ property: route.property, age: '', statistic, n },
    value: change === null ? null : Math.exp(change),
    interval:
      interval === null
        ? null
        : { level: STUDY_LEVEL, low: Math.exp(interval[0]), high: Math.exp(interval[1]) },
  })
  return [
    ...factorEffects(layout, STUDY_LEVEL).flatMap(({ factor, from, to, pairs, apart, gap }): StudyRow[] => {
      const step = `${nameOf(factor)} ${levelOf(factor, from)} to ${levelOf(factor, to)}`
      return [
        {
          ...row(`means-apart by ${step}`, apart?.change ?? null, apart?.interval ?? null, pairs),
          ...(pairs === 0 ? { reason: 'not-separable' } : {}),
        },
        row(`gap-ratio by ${step}`, gap?.change ?? null, null, gap?.pairs ?? 0),
      ]
    }),
    ...interactions(layout, STUDY_LEVEL).map(({ first, second, apart }) =>
      row(
        `interaction of ${nameOf(first)} and ${nameOf(second)}`,
        apart.change,
        apart.interval,
        apart.inert + apart.reactive,
      ),
    ),
  ]
}
