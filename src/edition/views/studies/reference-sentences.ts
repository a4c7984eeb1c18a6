/** A route's best condition against one reference test, in sentences. */
import {
  type AgainstReference,
  REFERENCE_ERROR_RATIO,
  type Referenced,
} from '../../../core/studies/screening/against-reference.ts'
import type { ReferenceMeasure } from '../../../core/studies/reference/reference-tests.ts'
import type { ConditionScreen } from '../../../core/studies/screening/screening.ts'
import { plainNumber } from '../../../words/numbers.ts'
import { MEASURES, measureText } from '../../../words/reference-tests.ts'
import { listWords, sentence, unbroken } from '../../../words/sentences.ts'
import { indexText } from '../../../words/studies.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

/** A reference with what it says of a route's best condition. */
export interface Compared {
  readonly measure: ReferenceMeasure
  readonly all: readonly Referenced[]
  readonly found: AgainstReference
}

/** Order, line, boundary, who disagrees, and who is left out. */
export function comparedSentences(study: StudyEntry, best: ConditionScreen, compared: Compared): string[] {
  return [
    orderSentence(compared.found),
    ...lineSentences(compared),
    boundarySentence(compared),
    ...disagreementSentences(compared, best.threshold),
    ...leftOutSentences(
      study,
      best.means.means.map(({ material }) => material),
      compared,
    ),
  ].map(unbroken)
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
