/** Test mortars beside their control, as strength and resistivity: a ratio can rise because the control falls. */
import { mean } from '../../../core/statistics/descriptive.ts'
import type { BatchIndex, BatchMean } from '../../../core/studies/batch-indices.ts'
import type { StudyIndexProperty } from '../../../core/studies/study-reading.ts'
import type { MaterialClass } from '../../../core/studies/screening/material-means.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { sentence } from '../../../words/sentences.ts'
import { STUDY_ROUTES } from '../../../words/studies.ts'
import type { UnitSystem } from '../../../words/unit-systems.ts'
import { quantity } from '../../../words/units.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'
import { MEAN_UNITS } from './study-controls.ts'
import { nameOf } from './screened-name.ts'

const CLASSES: readonly MaterialClass[] = ['inert', 'weak', 'reactive']

/** A table for each route whose indices were made from readings; each material counts once. */
export function absoluteTables(
  study: StudyEntry,
  routes: readonly ScreenedRoute[],
  units: UnitSystem,
): ChartTable[] {
  return routes.flatMap((route) => {
    const rows = route.conditions.flatMap((screen) => rowOf(study, route.property, screen, units))
    return rows.length === 0
      ? []
      : [
          {
            summary: `${sentence(STUDY_ROUTES[route.property])}: test mortars and control in absolute values`,
            heads: [textHead('Condition'), ...['Control', 'Inert', 'Weak', 'Reactive'].map(numberHead)],
            rows,
          },
        ]
  })
}

function rowOf(
  study: StudyEntry,
  property: StudyIndexProperty,
  screen: ConditionScreen,
  units: UnitSystem,
): ChartTable['rows'] {
  const own = study.indices.indices.filter(
    (index) =>
      index.property === property &&
      index.condition === screen.condition &&
      index.age.hours === screen.age.hours &&
      index.control !== null,
  )
  if (own.length === 0) return []
  const text = (means: readonly { readonly value: number; readonly above: boolean }[]) =>
    means.length === 0
      ? '–'
      : `${means.some(({ above }) => above) ? '> ' : ''}${quantity(mean(means.map(({ value }) => value)), 1, MEAN_UNITS[property], units)}`
  const controls = [...new Set(own.map(({ control }) => control))].filter((one) => one !== null)
  return [
    {
      lot: null,
      cells: [
        nameOf(study, screen),
        text(controls),
        ...CLASSES.map((known) =>
          text(
            materialMeans(own.filter(({ material }) => study.record.materials[material]?.class === known)),
          ),
        ),
      ],
    },
  ]
}

/** Mean of each material's batches, above a bound where one of them is. */
function materialMeans(indices: readonly BatchIndex[]): { value: number; above: boolean }[] {
  return [...Map.groupBy(indices, ({ material }) => material).values()].map((own) => {
    const tests = own.flatMap(({ test }): BatchMean[] => (test === null ? [] : [test]))
    return { value: mean(tests.map(({ value }) => value)), above: tests.some(({ above }) => above) }
  })
}
