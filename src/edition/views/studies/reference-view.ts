/** A route's best condition against a reference reactivity: heat per gram. */
import { type ReferenceScatterModel, referenceScatter } from '../../../charts/reference-scatter.ts'
import {
  type AgainstReference,
  againstReference,
  REFERENCE_ERROR_RATIO,
  type Referenced,
} from '../../../core/studies/screening/against-reference.ts'
import type { ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { written } from '../../../words/as-written.ts'
import { number, plainNumber } from '../../../words/numbers.ts'
import { listWords, sentence, unbroken } from '../../../words/sentences.ts'
import { indexText, STUDY_ROUTES } from '../../../words/studies.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'
import { dotShape } from './dot-shape.ts'

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

/** Fewest materials of which an order says anything. */
const FEWEST = 3

/**
 * @param name of the route's best condition
 * @returns null where fewer than three materials have both an index there and a heat
 */
export function referenceView(study: StudyEntry, route: ScreenedRoute, name: string): ReferenceView | null {
  const [best] = route.conditions
  if (best === undefined) return null
  const { materials } = study.record
  const all = best.means.means.flatMap((mean): Referenced[] => {
    const heat = materials[mean.material]?.heat
    return heat === undefined || heat.censored !== undefined ? [] : [{ mean, reference: heat.value }]
  })
  if (all.length < FEWEST) return null
  const found = againstReference(all, best.threshold)
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
  const title = `${sentence(STUDY_ROUTES[route.property])}, ${name}`
  return {
    title,
    chart,
    xTicks: chart.xTicks.map(({ value }) => number(value, 0)),
    yTicks: chart.yTicks.map(({ value }) => number(value, 0)),
    boundaryLabel: found.boundary === null ? '' : `boundary ${heatText(found.boundary)}`,
    thresholdLabel,
    label: `${title}: index of each material against its heat, both logarithmic. The table holds the figures.`,
    sentences: [
      orderSentence(found),
      ...lineSentences(found),
      boundarySentence(found),
      ...disagreementSentences(found, all, best.threshold),
      ...leftOutSentences(
        study,
        best.means.means.map(({ material }) => material),
        all,
      ),
    ].map(unbroken),
    table: tableOf(study, all, found),
  }
}

function heatText(value: number): string {
  return `${plainNumber(value, 0)} J/g`
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

function lineSentences({ line, offLine }: AgainstReference): string[] {
  if (line === null) return []
  const [first, last] = line.slopes.toSorted((a, b) => a - b)
  const without = offLine.length === 0 ? '' : `, without ${listWords(offLine, 'and')}`
  return [
    `Line with errors in both, on the logarithms of ${line.n} materials${without}: the index goes with the heat to the power ${plainNumber(line.slope, 2)}. That takes the relative errors of both to be equally large (ratio of variances ${REFERENCE_ERROR_RATIO}); with all error in one of them the power would be ${plainNumber(first ?? line.slope, 2)} or ${plainNumber(last ?? line.slope, 2)}.`,
  ]
}

function boundarySentence({ boundary, highestInert, lowestReactive }: AgainstReference): string {
  if (highestInert === null || lowestReactive === null)
    return 'The heat gives no boundary between the classes: one of them has no material with a heat.'
  return boundary === null
    ? `The heat gives no boundary between the classes: the highest inert material gives ${heatText(highestInert)}, the lowest reactive one ${heatText(lowestReactive)}.`
    : `Boundary of the heat: ${heatText(boundary)}, halfway from the highest inert material (${heatText(highestInert)}) to the lowest reactive one (${heatText(lowestReactive)}). It takes the classes as given, so an inert or reactive material can only disagree by its index.`
}

function disagreementSentences(
  { boundary, disagreements, undecided }: AgainstReference,
  all: readonly Referenced[],
  threshold: number | null,
): string[] {
  if (boundary === null || disagreements === null || threshold === null) return []
  const named = (['below', 'above'] as const).flatMap((side) => {
    const own = disagreements
      .filter(({ index }) => index === side)
      .map(({ material }) => figures(material, all))
    const heat = side === 'below' ? 'above' : 'below'
    return own.length === 0
      ? []
      : [`${sentence(heat)} the boundary by heat, ${side} the threshold by index: ${own.join(', ')}.`]
  })
  return [
    ...(named.length === 0
      ? ['No material stands on one side by its heat and on the other by its index.']
      : [...named, 'The readings do not say why the two disagree.']),
    ...(undecided.length === 0
      ? []
      : [`Not decided, since it reads above a ceiling below the threshold: ${undecided.join(', ')}.`]),
  ]
}

/** "K1 (reactive, 305 J/g, 75.6 %)". */
function figures(material: string, all: readonly Referenced[]): string {
  const found = all.find(({ mean }) => mean.material === material)
  if (found === undefined) return material
  const { mean, reference } = found
  return `${material} (${mean.class}, ${heatText(reference)}, ${indexText(mean.value, mean.above)} %)`
}

/** Materials of the condition that the picture or all of it leaves out. */
function leftOutSentences(
  { record }: StudyEntry,
  materials: readonly string[],
  all: readonly Referenced[],
): string[] {
  const unknown = materials.filter((material) => record.materials[material]?.heat === undefined)
  const bounded = materials.filter((material) => record.materials[material]?.heat?.censored !== undefined)
  const off = all.filter(({ reference }) => reference <= 0).map(({ mean }) => mean.material)
  return [
    ...(unknown.length === 0 ? [] : [`Without a heat on record: ${unknown.join(', ')}.`]),
    ...(bounded.length === 0
      ? []
      : [`Left out, the heat being known only as a bound: ${bounded.join(', ')}.`]),
    ...(off.length === 0 ? [] : [`Not drawn, since a logarithmic axis has no zero: ${off.join(', ')}.`]),
  ]
}

function tableOf(
  { record }: StudyEntry,
  all: readonly Referenced[],
  { disagreements, undecided }: AgainstReference,
): ChartTable {
  const others = new Set(disagreements?.map(({ material }) => material))
  return {
    summary: 'As a table',
    heads: [
      textHead('Material'),
      textHead('Class'),
      numberHead('Heat'),
      numberHead('Index, %'),
      textHead('Sides'),
    ],
    rows: all
      .toSorted((a, b) => b.reference - a.reference)
      .map(({ mean }) => {
        const { material } = mean
        const heat = record.materials[material]?.heat
        return {
          lot: null,
          cells: [
            material,
            mean.class,
            heat === undefined ? '' : written(heat),
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
