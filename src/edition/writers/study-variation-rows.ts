/** What an index varies with, and what is predicted of a new material, as rows of a study. */
import type { ConditionScreen } from '../../core/studies/screening/screening.ts'
import { predictedShare } from '../../core/studies/screening/new-material.ts'
import type { VaryingFigure } from '../../core/studies/screening/what-varies.ts'
import type { StudyRow } from './study-data.ts'

/** Rows of one condition; none where no batch is a repeat of another. Deviations are those of the natural logarithm. */
export function variationRows(
  property: string,
  { condition, age, varies, errors, means }: ConditionScreen,
): StudyRow[] {
  if (varies === null) return []
  const of = { property, condition, age: age.text }
  const components = varies.figures.map(
    ({ part, deviation, why, df }: VaryingFigure): StudyRow => ({
      ...{ ...of, statistic: `deviation-${part}`, value: deviation, interval: null },
      n: means.means.length - varies.aboveCeiling.length,
      ...(why === null ? {} : { reason: why }),
      ...(df === null ? {} : { degreesOfFreedom: df }),
    }),
  )
  const predicted = (['inert', 'reactive'] as const).flatMap((own): StudyRow[] => {
    const found = varies[own]
    if (typeof found === 'string')
      return [{ ...of, statistic: `new-${own}-material`, value: null, interval: null, n: 0, reason: found }]
    const { value, interval, n, df } = found
    const row = { ...of, n, degreesOfFreedom: df }
    const share =
      errors === null ? [] : [predictedShare(found, errors.threshold, own === 'inert' ? 'above' : 'below')]
    return [
      {
        ...{ ...row, statistic: `new-${own}-material`, value },
        interval: { level: varies.level, low: interval[0], high: interval[1] },
      },
      ...share.map((one) => ({
        ...{ ...row, statistic: own === 'inert' ? 'inert-passing-predicted' : 'reactive-failing-predicted' },
        ...{ value: one, interval: null },
      })),
    ]
  })
  return [...components, ...predicted]
}
