/** A route's best condition against a reference reactivity: two pictures, and a line for each reference test. */
import { type ReferenceScatterModel, referenceScatter } from '../../../charts/reference-scatter.ts'
import { againstReference, type Referenced } from '../../../core/studies/screening/against-reference.ts'
import type { ScreenedRoute } from '../../../core/studies/screening/screening.ts'
import { REFERENCE_MEASURES } from '../../../core/studies/reference/reference-tests.ts'
import { number, plainNumber, shortNumber } from '../../../words/numbers.ts'
import { MEASURES, measureText } from '../../../words/reference-tests.ts'
import { sentence } from '../../../words/sentences.ts'
import { indexText, STUDY_ROUTES } from '../../../words/studies.ts'
import { referenceValues } from '../../shape/reference-result.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'
import { type ChartTable, numberHead, textHead } from '../chart-table.ts'
import { dotShape } from './dot-shape.ts'
import { type Compared, comparedSentences } from './reference-sentences.ts'
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
    sentences: comparedSentences(study, best, compared),
    table: tableOf(study, compared),
  }
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
