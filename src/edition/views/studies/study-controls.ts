/** The control mortar of a study in absolute values: an index rises when its control falls. */
import { mean } from '../../../core/statistics/descriptive.ts'
import type { StudyIndexProperty } from '../../../core/studies/study-reading.ts'
import { written } from '../../../words/as-written.ts'
import type { UnitSystem } from '../../../words/unit-systems.ts'
import { quantity } from '../../../words/units.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface ControlLine {
  readonly condition: string
  readonly age: string
  readonly strength: string
  readonly resistivity: string
}

/** Of the means that each route's indices are made from. */
export const MEAN_UNITS: Readonly<Record<StudyIndexProperty, string>> = {
  'strength-activity-index': 'MPa',
  'resistivity-index': 'ohm m',
}

/** Means over the batches of each curing temperature and age. */
export function controlLines({ record, indices }: StudyEntry, units: UnitSystem): ControlLine[] {
  const groups = Map.groupBy(indices.controls, ({ condition, age }) => {
    const temperature = record.conditions?.[condition]?.temperature
    return `${temperature === undefined ? condition : written(temperature)}|${age.text}`
  })
  return [...groups].map(([key, batches]) => {
    const [condition = '', age = ''] = key.split('|')
    const meanOf = (property: StudyIndexProperty) => {
      const values = batches.filter((batch) => batch.property === property).map(({ value }) => value)
      return values.length === 0 ? '' : quantity(mean(values), 1, MEAN_UNITS[property], units)
    }
    return {
      condition,
      age,
      strength: meanOf('strength-activity-index'),
      resistivity: meanOf('resistivity-index'),
    }
  })
}
