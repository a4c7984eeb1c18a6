/** The pages of both routes: what stands beside each picture of strength against resistivity. */
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { number, plural } from '../../words/numbers.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import {
  type PairedGroup,
  pairedGroups,
  type PairedLot,
  pairedOfLot,
  pairedOfSource,
  patternSentence,
  type SourceCounts,
} from './paired.ts'
import { type PairedChartView, pairedChartView } from './paired-chart.ts'
import { QUADRANT_WORDS } from './route-limits.ts'

/** One condition and age of all sources. */
export interface RouteGroup {
  readonly heading: string
  readonly chart: PairedChartView
  /** Lots counted by two limits, or why they are not. */
  readonly counted: CountedRoutes | { readonly missing: string }
}

export interface CountedRoutes {
  /** "at least 75 %". */
  readonly strength: string
  readonly resistivity: string
  /** Sets that ask for both. */
  readonly sets: readonly { readonly id: string; readonly name: string }[]
  readonly counts: readonly (SourceCounts & { readonly kind: MaterialKind | '' })[]
  readonly patterns: readonly string[]
  /** Names of sources that the limits are drawn over and not set for; empty where there is none. */
  readonly notJudged: string
}

export function routeGroups(edition: Edition): RouteGroup[] {
  return pairedGroups(edition).map((group) => ({
    heading: unbroken(`${conditionTitle(edition, group.condition)}, ${group.age}`),
    chart: pairedChartView(group, {
      title: `Resistivity index against strength activity index, ${lotsOf(group)}`,
      room: 'page',
    }),
    counted: countedRoutes(edition, group),
  }))
}

function lotsOf({ counts }: PairedGroup): string {
  return plural(
    counts.reduce((sum, { lots }) => sum + lots, 0),
    'lot',
    'lots',
  )
}

function countedRoutes({ sources }: Edition, group: PairedGroup): RouteGroup['counted'] {
  const { pair, counts } = group
  if (pair === undefined) return { missing: missingLimits(group) }
  const { strength, resistivity } = pair
  const judged = (source: string) => strength.sources.includes(source) && resistivity.sources.includes(source)
  return {
    strength: strength.words,
    resistivity: resistivity.words,
    sets: strength.sets.filter(({ id }) => resistivity.sets.some((other) => other.id === id)),
    counts: counts.map((count) => ({ ...count, kind: sources.get(count.source)?.kind ?? '' })),
    patterns: patternsOf(group),
    notJudged: sentence(
      counts
        .filter(({ source }) => !judged(source))
        .map(({ name }) => name)
        .join(', '),
    ),
  }
}

function patternsOf({ counts }: PairedGroup): string[] {
  return counts.map(patternSentence).filter((text) => text !== null)
}

function missingLimits({ limits: { strength, resistivity } }: PairedGroup): string {
  if (strength.length === 0 && resistivity.length === 0)
    return 'No specification in force has a limit for either index here, so nothing is counted.'
  if (resistivity.length === 0)
    return 'No specification in force has a limit for the resistivity index here, so nothing is counted.'
  if (strength.length === 0)
    return 'No specification in force has a limit for the strength activity index here, so nothing is counted.'
  return 'The specifications in force have several limits here, and none has one for each index, so nothing is counted.'
}

/** Both routes of one source: each picture with what its counts show. */
export type RoutesOfSourceView = readonly {
  readonly patterns: readonly string[]
  readonly chart: PairedChartView
}[]

export function routesOfSource(edition: Edition, source: string): RoutesOfSourceView {
  return pairedOfSource(edition, source).map((group) => ({
    patterns: patternsOf(group),
    chart: pairedChartView(group, {
      title: unbroken(
        `Resistivity index against strength activity index, ${conditionTitle(edition, group.condition)}, ${group.age}`,
      ),
      room: 'page',
    }),
  }))
}

/** Both routes of one lot: each picture with the lot's own values and where they lie. */
export type RoutesOfLotView = readonly { readonly sentence: string; readonly chart: PairedChartView }[]

export function routesOfLot(edition: Edition, lot: LotEntry): RoutesOfLotView {
  return pairedOfLot(edition, lot).map((view) => ({
    sentence: unbroken(fullSentence(ownRoutes(view))),
    chart: pairedChartView(view, {
      title: unbroken(`${conditionTitle(edition, view.condition)}, ${view.age}`),
      room: 'lot',
    }),
  }))
}

function ownRoutes({ own, pair, quadrant }: PairedLot): string {
  const values = `strength ${number(own.strength, 1)} %, resistivity ${number(own.resistivity, 0)} % of the control`
  return pair === undefined || quadrant === undefined
    ? values
    : `${values}: ${QUADRANT_WORDS[quadrant]} (${pair.strength.words}, ${pair.resistivity.words})`
}
