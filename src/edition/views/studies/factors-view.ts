/** What each factor of the test does to the separation, and how two of them depend on each other. */
import {
  type InteractionLinesModel,
  type InteractionSeries,
  interactionLines,
} from '../../../charts/interaction-lines.ts'
import {
  type FactorEffect,
  factorEffects,
  type Interaction,
  interactions,
} from '../../../core/studies/screening/factor-effects.ts'
import type { Factor, FactorLayout } from '../../../core/studies/screening/factors.ts'
import type { ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import { studyFactors } from '../../../records/studies/study-factors.ts'
import { plainNumber, plural, shortNumber } from '../../../words/numbers.ts'
import { sentence, unbroken } from '../../../words/sentences.ts'
import { STUDY_ROUTES } from '../../../words/studies.ts'
import {
  changeText,
  factorName,
  inseparableText,
  interactionSentence,
  stepText,
  togetherSentence,
} from '../../../words/study-factors.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'

export interface FactorsView {
  readonly route: string
  readonly rows: readonly FactorRow[]
  readonly sentences: readonly string[]
  readonly pictures: readonly InteractionPicture[]
}

export interface FactorRow {
  readonly factor: string
  readonly step: string
  readonly apart: string
  readonly gap: string
  readonly pairs: string
  readonly leftOut: string
}

export interface InteractionPicture {
  readonly title: string
  readonly chart: InteractionLinesModel
  readonly yTicks: readonly string[]
  readonly label: string
  readonly words: string
  readonly table: ChartTable
}

/** Pictures of a page, over all its routes. */
const MOST_PICTURES = 6
/** Room about the outermost points, as a ratio. */
const ROOM = 1.08

/** One for each route whose conditions differ in a stated factor. */
export function factorsViews(study: StudyEntry, routes: readonly ScreenedRoute[]): FactorsView[] {
  const each = Math.floor(MOST_PICTURES / Math.max(1, routes.length))
  return routes.flatMap((route) => {
    const layout = studyFactors(study.record, route)
    if (layout.factors.length === 0) return []
    const all = interactions(layout, STUDY_LEVEL)
    const shown = all.slice(0, each)
    const ratios = shown.flatMap(({ points }) => points.map(({ apart }) => Math.exp(apart)))
    const range = [Math.min(...ratios) / ROOM, Math.max(...ratios) * ROOM] as const
    return [
      {
        route: sentence(STUDY_ROUTES[route.property]),
        rows: factorEffects(layout, STUDY_LEVEL).map((effect) => rowOf(effect, layout.factors)),
        sentences: routeSentences(layout, all.length - shown.length),
        pictures: shown.map((one) => pictureOf(one, layout.factors, range)),
      },
    ]
  })
}

function rowOf(
  { factor, from, to, pairs, with: others, apart, gap }: FactorEffect,
  factors: readonly Factor[],
): FactorRow {
  const own = factors[factor]
  const none = pairs === 0 ? inseparableText(others.map((place) => factors[place]?.names ?? [])) : '–'
  return {
    factor: factorName(own?.names ?? []),
    step: stepText(own?.levels[from] ?? [], own?.levels[to] ?? []),
    apart: apart === null ? none : changeText(apart.change, apart.interval),
    gap:
      gap === null
        ? '–'
        : `${changeText(gap.change)}${gap.pairs === pairs ? '' : `, ${plural(gap.pairs, 'pair', 'pairs')}`}`,
    pairs: String(pairs),
    leftOut: apart?.leftOut.join(', ') ?? '',
  }
}

function routeSentences({ factors, leftOut }: FactorLayout, unshown: number): string[] {
  return [
    ...factors.filter(({ names }) => 1 < names.length).map(({ names }) => togetherSentence(names)),
    ...(leftOut === 0
      ? []
      : [
          `${plural(leftOut, 'condition', 'conditions')} left out: what sets them apart from others is not stated.`,
        ]),
    ...(unshown === 0
      ? []
      : [
          `${plural(unshown, 'further pair', 'further pairs')} of factors with smaller interactions not drawn.`,
        ]),
  ]
}

function pictureOf(
  found: Interaction,
  factors: readonly Factor[],
  range: readonly [number, number],
): InteractionPicture {
  const [first, second] = [factors[found.first], factors[found.second]]
  const [firstOf, secondOf] = [first, second].map(
    (one) => (place: number) => one?.levels[place]?.join(', ') ?? '',
  )
  const at = (f: number, s: number) =>
    found.points.find((one) => one.first === f && one.second === s)?.apart ?? null
  const used = (which: 'first' | 'second') =>
    [...new Set(found.points.map((one) => one[which]))].toSorted((a, b) => a - b)
  const [across, lines] = [used('first'), used('second')]
  const names = across.map((place) => firstOf?.(place) ?? '')
  const series = lines.map(
    (line): InteractionSeries => ({
      name: secondOf?.(line) ?? '',
      values: across.map((place) => {
        const value = at(place, line)
        return value === null ? null : Math.exp(value)
      }),
    }),
  )
  const title = `${factorName(first?.names ?? [])}, by ${factorName(second?.names ?? []).toLowerCase()}`
  const chart = interactionLines(names, series, range)
  const [from, to] = found.firstLevels
  const changeAt = (line: number) => ({
    level: secondOf?.(line) ?? '',
    change: (at(to, line) ?? 0) - (at(from, line) ?? 0),
  })
  return {
    title,
    chart,
    yTicks: chart.yTicks.map(({ value }) => `× ${shortNumber(value, 2)}`),
    label: `${title}: reactive mean over inert mean at ${names.join(', ')}, a line for each of ${series.map(({ name }) => name).join(', ')}. The table holds the figures.`,
    words: unbroken(
      interactionSentence({
        from: firstOf?.(from) ?? '',
        to: firstOf?.(to) ?? '',
        lower: changeAt(found.secondLevels[0]),
        upper: changeAt(found.secondLevels[1]),
        settings: found.settings,
        ...found.apart,
      }),
    ),
    table: {
      summary: 'As a table',
      heads: [textHead(factorName(second?.names ?? [])), ...names.map(numberHead)],
      rows: series.map(({ name, values }) => ({
        lot: null,
        cells: [name, ...values.map((value) => (value === null ? 'no condition' : plainNumber(value, 2)))],
      })),
    },
  }
}
