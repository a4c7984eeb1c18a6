/** Each material over the curing temperature, where conditions differ in nothing else. */
import {
  type MaterialLinesModel,
  type MaterialSeries,
  materialLines,
} from '../../../charts/material-lines.ts'
import type { MaterialClass } from '../../../core/studies/screening/material-means.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { written } from '../../../words/as-written.ts'
import { number } from '../../../words/numbers.ts'
import { sentence, unbroken } from '../../../words/sentences.ts'
import { indexText, STUDY_ROUTES, type StudyCondition } from '../../../words/studies.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'
import { dotShape } from './dot-shape.ts'

export interface TemperatureLinesView {
  readonly title: string
  readonly chart: MaterialLinesModel<MaterialClass>
  readonly xTicks: readonly string[]
  readonly yTicks: readonly string[]
  readonly label: string
  readonly table: ChartTable
}

/** The age that plots show where a study has it at two temperatures. */
const USUAL_HOURS = 28 * 24
/** Room about the outermost values, as a ratio. */
const ROOM = 1.06

/** A condition at an age whose temperature and replacement are stated. */
interface Cured {
  readonly screen: ConditionScreen
  readonly temperature: number
  readonly temperatureText: string
  /** All else that the study states of the condition. */
  readonly rest: string
  readonly words: string
}

/** One plot for each route and set of conditions that differ in temperature alone; none where no two do. */
export function temperatureLinesViews(
  study: StudyEntry,
  routes: readonly ScreenedRoute[],
): TemperatureLinesView[] {
  return routes.flatMap((route) => {
    const groups = [
      ...Map.groupBy(
        route.conditions.flatMap((screen) => curedAt(study, screen)),
        restOf,
      ).values(),
    ]
      .map(atOneAge)
      .filter((group) => 1 < group.length && isOneEach(group))
      .toSorted((a, b) => ((a[0]?.rest ?? '') < (b[0]?.rest ?? '') ? -1 : 1))
    const values = groups.flat().flatMap(({ screen }) => screen.means.means.map(({ value }) => value))
    const range = [Math.min(...values) / ROOM, Math.max(...values) * ROOM] as const
    return groups.flatMap((group) => plotOf(route, group, range) ?? [])
  })
}

function curedAt({ record }: StudyEntry, screen: ConditionScreen): Cured[] {
  const condition = record.conditions?.[screen.condition]
  if (condition?.temperature === undefined || condition.replacement === undefined) return []
  // Which record of the register it is, says nothing of how it was cured.
  const { temperature, title: _, record: __, ...rest } = condition
  return [
    {
      screen,
      temperature: temperature.value,
      temperatureText: unbroken(written(temperature)),
      rest: JSON.stringify({ ...rest, replacement: condition.replacement.value }),
      words: groupWords(condition),
    },
  ]
}

function restOf({ rest }: Cured): string {
  return rest
}

function groupWords(condition: StudyCondition & { readonly 'w/cm'?: number }): string {
  const wcm = condition['w/cm']
  return [
    condition.replacement !== undefined && `${written(condition.replacement)} replaced`,
    wcm !== undefined && `w/cm ${wcm}`,
    condition.flow === 'constant-flow' && 'constant flow',
  ]
    .filter((part) => typeof part === 'string')
    .join(', ')
}

/** At 28 d where two temperatures have it, else at the latest age that two have; coolest first. */
function atOneAge(group: readonly Cured[]): Cured[] {
  const ages = [...Map.groupBy(group, ({ screen }) => screen.age.hours)]
    .filter(([, own]) => 1 < own.length)
    .toSorted(([a], [b]) => Number(b === USUAL_HOURS) - Number(a === USUAL_HOURS) || b - a)
  return (ages[0]?.[1] ?? []).toSorted((a, b) => a.temperature - b.temperature)
}

/** Two conditions alike in all that is stated cannot be told apart, so no line is drawn through them. */
function isOneEach(group: readonly Cured[]): boolean {
  return new Set(group.map(({ temperature }) => temperature)).size === group.length
}

function plotOf(
  route: ScreenedRoute,
  group: readonly Cured[],
  range: readonly [number, number],
): TemperatureLinesView | null {
  const [first] = group
  const series = seriesOf(group)
  const chart = materialLines(series, range)
  if (first === undefined || chart === null) return null
  const title = unbroken(
    `${sentence(STUDY_ROUTES[route.property])}, ${first.words}, ${first.screen.age.text}`,
  )
  return {
    title,
    chart,
    xTicks: chart.xTicks.map(
      ({ value }) => group.find(({ temperature }) => temperature === value)?.temperatureText ?? '',
    ),
    yTicks: chart.yTicks.map(({ value }) => number(value, 0)),
    label: `${title}: index of each material at ${group.map(({ temperatureText }) => temperatureText).join(', ')}. The table holds the figures.`,
    table: tableOf(group, series),
  }
}

/** Materials as the study lists them, those of all conditions of the plot. */
function seriesOf(group: readonly Cured[]): MaterialSeries<MaterialClass>[] {
  const known = new Map(
    group.flatMap(({ screen }) => screen.means.means.map((one) => [one.material, one.class] as const)),
  )
  return [...known].map(([material, own]) => ({
    name: material,
    class: own,
    points: group.map(({ screen, temperature }) => {
      const found = screen.means.means.find((one) => one.material === material)
      return {
        temperature,
        value: found?.value ?? null,
        shape: dotShape(found ?? { above: false, class: own }),
      }
    }),
  }))
}

function tableOf(group: readonly Cured[], series: readonly MaterialSeries<MaterialClass>[]): ChartTable {
  return {
    summary: 'As a table',
    heads: [
      textHead('Material'),
      textHead('Class'),
      ...group.map(({ temperatureText }) => numberHead(`${temperatureText}, %`)),
    ],
    rows: series.map(({ name, class: own, points }) => ({
      lot: null,
      cells: [
        name,
        own,
        ...points.map(({ value, shape }) => (value === null ? '–' : indexText(value, shape === 'up'))),
      ],
    })),
  }
}
