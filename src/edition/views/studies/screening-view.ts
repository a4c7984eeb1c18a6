/** What a screening study's page shows of each route. */
import { dotRows, type DotRowsModel } from '../../../charts/dot-rows.ts'
import type { ConditionScreen, ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { numberForShare } from '../../../core/statistics/share-bounds.ts'
import { number, plainNumber, plural } from '../../../words/numbers.ts'
import { boundText, indexText, ratioText, shareText, STUDY_ROUTES } from '../../../words/studies.ts'
import { sentence } from '../../../words/sentences.ts'
import type { UnitSystem } from '../../../words/unit-systems.ts'
import { STUDY_LEVEL } from '../../../records/studies/screening-asked.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import type { ChartTable } from '../chart-table.ts'
import { absoluteTables } from './absolute-view.ts'
import { dotRow } from './dot-row.ts'
import { batchWords, type ErrorCurvesView, errorCurvesView } from './error-curves-view.ts'
import { type FactorsView, factorsViews } from './factors-view.ts'
import { leftOutWords } from './left-out-view.ts'
import { type ReferenceViews, referenceViews } from './reference-view.ts'
import { nameOf } from './screened-name.ts'
import { type ControlLine, controlLines } from './study-controls.ts'
import { type TemperatureLinesView, temperatureLinesViews } from './temperature-lines-view.ts'
import { type UsualView, usualView } from './usual-index.ts'
import { type WhatVariesView, whatVariesView } from './what-varies-view.ts'

export interface RouteView {
  readonly route: string
  readonly id: string
  /** What the best condition shows, and the doubt about it. */
  readonly lead: readonly string[]
  readonly chart: DotRowsModel | null
  readonly tickLabels: readonly string[]
  /** Beside each row of the chart. */
  readonly rows: readonly { readonly name: string; readonly threshold: string; readonly wrong: string }[]
  readonly table: readonly ConditionLine[]
  readonly firstPlaces: string
  /** Materials with some batches above the ceiling, and how their mean is taken; empty without one. */
  readonly partlyAbove: string
  readonly varies: WhatVariesView | null
  /** Each material left out in turn, and each laboratory. */
  readonly leftOut: string
  readonly laboratoriesOut: readonly string[]
  readonly usual: UsualView | null
}

export interface ConditionLine {
  readonly name: string
  readonly wrong: string
  readonly highestInert: string
  readonly lowestReactive: string
  readonly ratio: string
  readonly area: string
  readonly threshold: string
  readonly inert: string
  readonly reactive: string
  readonly zPrime: string
}

export interface ScreeningView {
  readonly routes: readonly RouteView[]
  readonly controls: readonly ControlLine[]
  readonly absolute: readonly ChartTable[]
  readonly numbersAllow: string
  readonly errorCurves: readonly ErrorCurvesView[]
  /** What the chance for further batches speaks of. */
  readonly batches: string
  readonly temperatureLines: readonly TemperatureLinesView[]
  readonly factors: readonly FactorsView[]
  /** By route. */
  readonly reference: readonly ReferenceViews[]
}

export function screeningView(
  study: StudyEntry,
  routes: readonly ScreenedRoute[],
  units: UnitSystem,
): ScreeningView {
  return {
    routes: routes.map((route) => routeView(study, route, routes)),
    controls: controlLines(study, units),
    absolute: absoluteTables(study, routes, units),
    numbersAllow: numbersAllow(routes),
    errorCurves: routes.flatMap((route) => errorCurvesView(study, route, bestName(study, route)) ?? []),
    batches: batchWords(study, routes),
    temperatureLines: temperatureLinesViews(study, routes),
    factors: factorsViews(study, routes),
    reference: routes
      .map((route) => referenceViews(study, route, bestName(study, route)))
      .filter(({ lines }) => 0 < lines.length),
  }
}

function bestName(study: StudyEntry, { conditions: [best] }: ScreenedRoute): string {
  return best === undefined ? '' : nameOf(study, best)
}

function routeView(study: StudyEntry, route: ScreenedRoute, all: readonly ScreenedRoute[]): RouteView {
  const chart = dotRows(
    route.conditions.map((screen) =>
      dotRow(screen, { mark: screen.threshold, named: screen.separation?.wrongSide ?? [] }),
    ),
  )
  return {
    route: sentence(STUDY_ROUTES[route.property]),
    id: route.property,
    lead: leadSentences(study, route),
    chart,
    tickLabels: chart?.ticks.map(({ value }) => number(value, 0)) ?? [],
    rows: route.conditions.map((screen) => ({
      name: nameOf(study, screen),
      threshold: screen.threshold === null ? '' : `${number(screen.threshold, 0)} %`,
      wrong: wrongText(screen),
    })),
    table: route.conditions.map((screen) => conditionLine(study, screen)),
    firstPlaces: firstPlaces(study, route),
    partlyAbove: partlyAboveSentence(study, route),
    varies: whatVariesView(study, route, bestName(study, route)),
    ...leftOutWords(study, route),
    usual: usualView(study, route, all),
  }
}

function wrongText({ separation }: ConditionScreen): string {
  if (separation === null) return 'a class has no material'
  return separation.wrongSide.length === 0 ? 'none' : separation.wrongSide.join(', ')
}

function conditionLine(study: StudyEntry, screen: ConditionScreen): ConditionLine {
  const { separation, areaInterval, errors, threshold, zPrime } = screen
  const placed = (one: { value: number; above: boolean; material: string } | undefined) =>
    one === undefined ? '' : `${indexText(one.value, one.above)} ${one.material}`
  const z = [zPrime.linear, zPrime.logarithmic].map((value) => (value === null ? '–' : plainNumber(value, 2)))
  return {
    name: nameOf(study, screen),
    wrong: wrongText(screen),
    highestInert: placed(separation?.highestInert),
    lowestReactive: placed(separation?.lowestReactive),
    ratio:
      separation === null || separation.ratio === null || separation.ratio <= 1
        ? '–'
        : ratioText(separation.ratio),
    area:
      separation === null || areaInterval === null
        ? '–'
        : `${plainNumber(separation.area, 2)}, ${areaInterval.map((end) => plainNumber(end, 2)).join(' to ')}`,
    threshold: threshold === null ? 'none' : `${number(threshold, 0)} %`,
    inert:
      errors === null ? '–' : boundText(errors.inert.wrong.length, errors.inert.n, errors.inert.newMaterial),
    reactive:
      errors === null
        ? '–'
        : boundText(errors.reactive.wrong.length, errors.reactive.n, errors.reactive.newMaterial),
    zPrime: z.join(' / '),
  }
}

function leadSentences(study: StudyEntry, route: ScreenedRoute): string[] {
  const [best] = route.conditions
  if (best === undefined || best.separation === null) return ['No condition has materials of both classes.']
  const { separation, threshold, errors } = best
  const { inert, reactive, wrongSide, highestInert, lowestReactive } = separation
  const at = `${sentence(STUDY_ROUTES[route.property])} at ${nameOf(study, best)}`
  const values = `the lowest reactive material reads ${indexText(lowestReactive.value, lowestReactive.above)} %, the highest inert one ${indexText(highestInert.value)} %`
  const lone = [inert === 1 ? 'inert' : '', reactive === 1 ? 'reactive' : ''].filter((own) => own !== '')
  const first =
    0 < lone.length
      ? `${at}: ${values}. ${lone.map(loneClassSentence).join(' ')}`
      : wrongSide.length === 0
        ? `${at} sets ${plural(reactive, 'reactive material', 'reactive materials')} wholly apart from ${plural(inert, 'inert one', 'inert ones')}: ${values}.`
        : wrongSide.length === 1
          ? `${at} sets all materials but one apart: without ${wrongSide[0]}, ${values}.`
          : `No condition sets the classes apart by ${STUDY_ROUTES[route.property]}; ${nameOf(study, best)} comes closest, with ${wrongSide.join(', ')} on the wrong side.`
  if (threshold === null || errors === null) return [first]
  return [
    first,
    `At a threshold of ${number(threshold, 0)} %, ${errors.inert.wrong.length} of ${errors.inert.n} inert materials pass and ${errors.reactive.wrong.length} of ${errors.reactive.n} reactive ones fail. That still allows ${shareText(errors.inert.newMaterial)} of new inert materials to pass and ${shareText(errors.reactive.newMaterial)} of new reactive ones to fail (one-sided ${shareText(STUDY_LEVEL)} bounds). Condition and threshold were chosen on these materials, which the bounds do not allow for: only new ones can confirm them.`,
    ...undecidedSentence(errors.reactive.undecided, threshold),
  ]
}

/** One material is apart from the other class or not; of its class that says nothing. */
function loneClassSentence(own: string): string {
  return `The ${own} class has one material, so nothing can be said of the class.`
}

function undecidedSentence(undecided: readonly string[], threshold: number): string[] {
  return undecided.length === 0
    ? []
    : [
        `${undecided.join(', ')}: read above the meter’s ceiling, which lies below ${number(threshold, 0)} %, so the threshold does not decide about them; the bound counts them as failing.`,
      ]
}

function partlyAboveSentence(study: StudyEntry, { conditions }: ScreenedRoute): string {
  const named = conditions.flatMap((screen) => {
    const own = screen.means.means.filter(({ censored }) => 0 < censored)
    return own.length === 0
      ? []
      : [`${own.map(({ material }) => material).join(', ')} (${nameOf(study, screen)})`]
  })
  return named.length === 0
    ? ''
    : `Some batches above the meter’s ceiling: ${named.join('; ')}. Their mean is the likeliest one given the bounds and the scatter between batches pooled over the other materials.`
}

function firstPlaces(study: StudyEntry, { conditions, firstPlaces: places }: ScreenedRoute): string {
  const named = places.slice(0, 3).map(({ id, share }, place) => {
    const screen = conditions.find((one) => one.id === id)
    return `${screen === undefined ? id : nameOf(study, screen)}${place === 0 ? ' comes first' : ''} in ${shareText(share)}`
  })
  return `Of 2,000 resamples of the materials, ${named.join('; ')}.`
}

function numbersAllow(routes: readonly ScreenedRoute[]): string {
  const best = routes[0]?.conditions[0]?.errors
  const ten = numberForShare(0.1, STUDY_LEVEL)
  const five = numberForShare(0.05, STUDY_LEVEL)
  const start =
    best === null || best === undefined
      ? ''
      : `${best.inert.n} inert and ${best.reactive.n} reactive materials are what this study has. `
  return `${start}A claim of under 10 % needs ${ten} materials of a class without an error, under 5 % needs ${five}.`
}
