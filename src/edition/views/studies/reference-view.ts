/** A route's best condition against a reference reactivity: two pictures, and a line for each reference test. */
import { type ReferenceScatterModel, referenceScatter } from '../../../charts/reference-scatter.ts'
import {
  type AgainstReference,
  againstReference,
  REFERENCE_ERROR_RATIO,
  type Referenced,
} from '../../../core/studies/screening/against-reference.ts'
import type { ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { REFERENCE_MEASURES, type ReferenceMeasure } from '../../../core/studies/reference/reference-tests.ts'
import { number, plainNumber, shortNumber } from '../../../words/numbers.ts'
import { MEASURES, measureText } from '../../../words/reference-tests.ts'
import { listWords, sentence, unbroken } from '../../../words/sentences.ts'
import { indexText, STUDY_ROUTES } from '../../../words/studies.ts'
import { referenceValues } from '../../shape/reference-result.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'
import { dotShape } from './dot-shape.ts'
import { referenceText } from './reference/reference-text.ts'

export interface ReferenceView {
  readonly title: string
  readonly chart: ReferenceScatterModel
  readonly xTicks: readonly string[]
  readonly yTicks: readonly string[]
  readonly boundaryLabel: string
  readonly thresholdLabel: string
  readonly label: string
  readonly sentences: readonly string[]
  readonly table: ChartTable
}

/** One reference test and one route, as a row. */
export interface ReferenceLine {
  readonly reference: string
  readonly route: string
  readonly n: string
  readonly order: string
  readonly amongReactive: string
  readonly disagreements: string
}

export interface ReferenceViews {
  readonly pictures: readonly ReferenceView[]
  readonly lines: readonly ReferenceLine[]
}

/** Fewest materials of which an order says anything. */
const FEWEST = 3
/** More pictures say little that the rows do not. */
const PICTURED = 2

/** A reference with what it says of a route's best condition. */
interface Compared {
  readonly measure: ReferenceMeasure
  readonly all: readonly Referenced[]
  readonly found: AgainstReference
}

/**
 * @param name of the route's best condition
 * @returns pictures of the references that most materials have; rows of all that three materials or more have
 */
export function referenceViews(study: StudyEntry, route: ScreenedRoute, name: string): ReferenceViews {
  const [best] = route.conditions
  if (best === undefined) return { pictures: [], lines: [] }
  const compared = REFERENCE_MEASURES.map((measure): Compared => {
    const values = referenceValues(study.reference, measure)
    const all = best.means.means.flatMap((mean): Referenced[] => {
      const reference = values.get(mean.material)
      return reference === undefined ? [] : [{ mean, reference }]
    })
    return { measure, all, found: againstReference(all, best.threshold) }
  }).filter(({ all }) => FEWEST <= all.length)
  const title = `${sentence(STUDY_ROUTES[route.property])}, ${name}`
  return {
    pictures: compared
      .toSorted((a, b) => b.all.length - a.all.length)
      .slice(0, PICTURED)
      .flatMap((one) => pictureOf(study, best, one, title) ?? []),
    lines: compared.map((one) => lineOf(one, title)),
  }
}

function lineOf({ measure, found }: Compared, title: string): ReferenceLine {
  const { n, rankCorrelation, amongReactive, disagreements, undecided } = found
  const named = (['below', 'above'] as const).flatMap((side) => {
    const own = (disagreements ?? []).filter(({ index }) => index === side)
    return own.length === 0 ? [] : [`${side} by index: ${own.map(({ material }) => material).join(', ')}`]
  })
  const open = undecided.length === 0 ? [] : [`not decided: ${undecided.join(', ')}`]
  return {
    reference: sentence(MEASURES[measure].noun),
    route: title,
    n: String(n),
    order: correlationText(rankCorrelation),
    amongReactive: `${correlationText(amongReactive.rankCorrelation)} (${amongReactive.n})`,
    disagreements:
      disagreements === null
        ? 'no boundary or no threshold'
        : [...(named.length === 0 ? ['none'] : named), ...open].join('; '),
  }
}

function correlationText(value: number | null): string {
  return value === null ? '–' : plainNumber(value, 2)
}

function pictureOf(
  study: StudyEntry,
  best: ScreenedRoute['conditions'][number],
  compared: Compared,
  name: string,
): ReferenceView | null {
  const { measure, all, found } = compared
  const disagreeing = new Set(found.disagreements?.map(({ material }) => material))
  const thresholdLabel = best.threshold === null ? '' : `threshold ${number(best.threshold, 0)} %`
  const chart = referenceScatter(
    all
      .filter(({ reference }) => 0 < reference)
      .map(({ mean, reference }) => ({
        name: mean.material,
        reference,
        index: mean.value,
        shape: dotShape(mean),
        disagrees: disagreeing.has(mean.material),
      })),
    { line: found.line, boundary: found.boundary, threshold: best.threshold, thresholdLabel },
  )
  if (chart === null) return null
  const { noun, unit } = MEASURES[measure]
  const title = `${name}, against the ${noun} (${unit})`
  return {
    title,
    chart,
    xTicks: chart.xTicks.map(({ value }) => shortNumber(value, 2)),
    yTicks: chart.yTicks.map(({ value }) => number(value, 0)),
    boundaryLabel: found.boundary === null ? '' : `boundary ${measureText(found.boundary, measure)}`,
    thresholdLabel,
    label: `${title}: index of each material upward, both axes logarithmic. The table holds the figures.`,
    sentences: [
      orderSentence(found),
      ...lineSentences(compared),
      boundarySentence(compared),
      ...disagreementSentences(compared, best.threshold),
      ...leftOutSentences(
        study,
        best.means.means.map(({ material }) => material),
        compared,
      ),
    ].map(unbroken),
    table: tableOf(study, compared),
  }
}

function orderSentence({ n, rankCorrelation, amongReactive }: AgainstReference): string {
  if (rankCorrelation === null)
    return `Rank correlation: none, since all ${n} materials read alike in one of the two.`
  const among =
    amongReactive.rankCorrelation === null
      ? ''
      : `; among the ${amongReactive.n} reactive ones alone, without the step between the classes, ${plainNumber(amongReactive.rankCorrelation, 2)}`
  return `Rank correlation (Spearman) of ${n} materials: ${plainNumber(rankCorrelation, 2)}${among}.`
}

function lineSentences({ measure, found: { line, offLine } }: Compared): string[] {
  if (line === null) return []
  const [first, last] = line.slopes.toSorted((a, b) => a - b)
  const without = offLine.length === 0 ? '' : `, without ${listWords(offLine, 'and')}`
  return [
    `Line with errors in both, on the logarithms of ${line.n} materials${without}: the index goes with the ${MEASURES[measure].noun} to the power ${plainNumber(line.slope, 2)}. That takes the relative errors of both to be equally large (ratio of variances ${REFERENCE_ERROR_RATIO}); with all error in one of them the power would be ${plainNumber(first ?? line.slope, 2)} or ${plainNumber(last ?? line.slope, 2)}.`,
  ]
}

function boundarySentence({ measure, found: { boundary, highestInert, lowestReactive } }: Compared): string {
  const { noun } = MEASURES[measure]
  const text = (value: number) => measureText(value, measure)
  if (highestInert === null || lowestReactive === null)
    return `The ${noun} gives no boundary between the classes: one of them has no material with such a figure.`
  return boundary === null
    ? `The ${noun} gives no boundary between the classes: the highest inert material gives ${text(highestInert)}, the lowest reactive one ${text(lowestReactive)}.`
    : `Boundary of the ${noun}: ${text(boundary)}, halfway from the highest inert material (${text(highestInert)}) to the lowest reactive one (${text(lowestReactive)}). It takes the classes as given, so an inert or reactive material can only disagree by its index.`
}

function disagreementSentences(compared: Compared, threshold: number | null): string[] {
  const { measure, found } = compared
  const { boundary, disagreements, undecided } = found
  if (boundary === null || disagreements === null || threshold === null) return []
  const named = (['below', 'above'] as const).flatMap((side) => {
    const own = disagreements
      .filter(({ index }) => index === side)
      .map(({ material }) => figures(material, compared))
    const other = side === 'below' ? 'above' : 'below'
    return own.length === 0
      ? []
      : [
          `${sentence(other)} the boundary by ${MEASURES[measure].noun}, ${side} the threshold by index: ${own.join(', ')}.`,
        ]
  })
  return [
    ...(named.length === 0
      ? [`No material stands on one side by its ${MEASURES[measure].noun} and on the other by its index.`]
      : [...named, 'The readings do not say why the two disagree.']),
    ...(undecided.length === 0
      ? []
      : [`Not decided, since it reads above a ceiling below the threshold: ${undecided.join(', ')}.`]),
  ]
}

/** "K1 (reactive, 305 J/g, 75.6 %)". */
function figures(material: string, { measure, all }: Compared): string {
  const found = all.find(({ mean }) => mean.material === material)
  if (found === undefined) return material
  const { mean, reference } = found
  return `${material} (${mean.class}, ${measureText(reference, measure)}, ${indexText(mean.value, mean.above)} %)`
}

/** Materials of the condition that the picture or all of it leaves out. */
function leftOutSentences(
  { reference }: StudyEntry,
  materials: readonly string[],
  { measure, all }: Compared,
): string[] {
  const own = reference.filter((result) => result.measure === measure)
  const known = new Set(own.map(({ material }) => material))
  const computed = new Set(all.map(({ mean }) => mean.material))
  const unknown = materials.filter((material) => !known.has(material))
  const bounded = materials.filter((material) => known.has(material) && !computed.has(material))
  const off = all.filter(({ reference }) => reference <= 0).map(({ mean }) => mean.material)
  const { noun } = MEASURES[measure]
  return [
    ...(unknown.length === 0 ? [] : [`No ${noun} on record: ${unknown.join(', ')}.`]),
    ...(bounded.length === 0
      ? []
      : [`Left out, the ${noun} being known only as a bound: ${bounded.join(', ')}.`]),
    ...(off.length === 0 ? [] : [`Not drawn, since a logarithmic axis has no zero: ${off.join(', ')}.`]),
  ]
}

function tableOf({ reference }: StudyEntry, { measure, all, found }: Compared): ChartTable {
  const { disagreements, undecided } = found
  const others = new Set(disagreements?.map(({ material }) => material))
  return {
    summary: 'As a table',
    heads: [
      textHead('Material'),
      textHead('Class'),
      numberHead(sentence(MEASURES[measure].noun)),
      numberHead('Index, %'),
      textHead('Sides'),
    ],
    rows: all
      .toSorted((a, b) => b.reference - a.reference)
      .map(({ mean }) => {
        const { material } = mean
        const result = reference.find((one) => one.material === material && one.measure === measure)
        return {
          lot: null,
          cells: [
            material,
            mean.class,
            result === undefined ? '' : referenceText(result),
            indexText(mean.value, mean.above),
            disagreements === null
              ? '–'
              : undecided.includes(material)
                ? 'not decided'
                : others.has(material)
                  ? 'disagree'
                  : 'agree',
          ],
        }
      }),
  }
}
