/** Answers of a source and of its lots, by the finding that they answer. */
import { sourceOf } from '../../core/measure/lot-id.ts'
import { kept } from '../../core/measure/kept.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { asked } from '../shape/trace.ts'
import { partOfSource } from '../shape/part-of-source.ts'

export type RecordedAnswer = NonNullable<SourceEntry['record']['answers']>[number]

/** An answer with the lot or source whose record holds it. */
export interface PlacedAnswer {
  readonly about: string
  readonly answer: RecordedAnswer
}

/** All answers of a source, those of its lots after its own. */
export const answersOf = partOfSource('answers', (edition: Edition, source): readonly PlacedAnswer[] => [
  ...(edition.source(source).record.answers ?? []).map((answer) => ({ about: source, answer })),
  ...edition
    .lotsOf(source)
    .flatMap(({ id }) => (edition.lot(id).record.answers ?? []).map((answer) => ({ about: id, answer }))),
])

/** Null for a finding without an answer. */
export type AnswerReader = (finding: { readonly id: string; readonly about: string }) => RecordedAnswer | null

/**
 * The answer to a finding: one about a lot in the record of the lot or of its source, one about a source in its record or
 * in that of any of its lots, which are then read once.
 */
export function answerReader(edition: Edition): AnswerReader {
  const bySource = new Map<string, ReadonlyMap<string, RecordedAnswer>>()
  return ({ id, about }) => {
    if (!edition.sources.has(about)) {
      const ofLot = edition.lots.has(about) ? (edition.lot(about).record.answers ?? []) : []
      const own = [...ofLot, ...answersInSource(edition, sourceOf(about))]
      return own.find(({ finding }) => finding === id) ?? null
    }
    const ofSource = () => new Map(answersOf(edition, about).map(({ answer }) => [answer.finding, answer]))
    return kept(bySource, about, ofSource).get(id) ?? null
  }
}

/** The same for findings of all sources, without reading every lot that there is one about. */
export function answersOfAll(edition: Edition): AnswerReader {
  const bySource = new Map<string, readonly PlacedAnswer[]>()
  return ({ id, about }) => {
    const source = edition.sources.has(about) ? about : sourceOf(about)
    if (!edition.sources.has(source)) return null
    const placed = kept(bySource, source, () => answersOf(edition, source))
    if (about === source) return placed.findLast(({ answer }) => answer.finding === id)?.answer ?? null
    const own = [about, source].flatMap((of) => placed.filter((one) => one.about === of))
    return own.find(({ answer }) => answer.finding === id)?.answer ?? null
  }
}

/** What the record of a source itself answers; nothing where it is none of the edition. */
const answersInSource = asked('answers-in-source', (edition: Edition, source): readonly RecordedAnswer[] =>
  edition.sources.has(source) ? ownAnswers(edition, source) : [],
)

const ownAnswers = partOfSource(
  'answers of its own',
  (edition: Edition, source): readonly RecordedAnswer[] => edition.source(source).record.answers ?? [],
)

/** Answers to findings that are no longer made, by source. */
export function answersLeftOver(edition: Edition, made: ReadonlySet<string>): PlacedAnswer[] {
  return [...edition.sources.keys()].flatMap((source) =>
    answersOf(edition, source).filter(({ answer }) => !made.has(answer.finding)),
  )
}
