/** Answers of a source and of its lots, by the finding that they answer. */
import { sourceOf } from '../../core/measure/lot-id.ts'
import { kept } from '../../core/measure/kept.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'

export type RecordedAnswer = NonNullable<SourceEntry['record']['answers']>[number]

/** An answer with the lot or source whose record holds it. */
export interface PlacedAnswer {
  readonly about: string
  readonly answer: RecordedAnswer
}

/** All answers of a source, those of its lots after its own. */
function answersOf(edition: Edition, source: string): PlacedAnswer[] {
  const own = (edition.source(source).record.answers ?? []).map((answer) => ({ about: source, answer }))
  const ofLots = edition
    .lotsOf(source)
    .flatMap(({ id }) => (edition.lot(id).record.answers ?? []).map((answer) => ({ about: id, answer })))
  return [...own, ...ofLots]
}

/** The answer to a finding, in the record of its lot or of its source; those of a source are read once. */
export function answerReader(
  edition: Edition,
): (finding: { readonly id: string; readonly about: string }) => RecordedAnswer | null {
  const bySource = new Map<string, ReadonlyMap<string, RecordedAnswer>>()
  return ({ id, about }) => {
    const isLot = edition.lots.has(about)
    const own = isLot ? edition.lot(about).record.answers?.find(({ finding }) => finding === id) : undefined
    const source = isLot ? sourceOf(about) : about
    if (own !== undefined || !edition.sources.has(source)) return own ?? null
    const answers = kept(bySource, source, () => byFinding(edition.source(source).record.answers ?? []))
    return answers.get(id) ?? null
  }
}

function byFinding(answers: readonly RecordedAnswer[]): Map<string, RecordedAnswer> {
  return new Map(answers.map((answer) => [answer.finding, answer]))
}

/** Answers to findings that are no longer made, by source. */
export function answersLeftOver(edition: Edition, made: ReadonlySet<string>): PlacedAnswer[] {
  return [...edition.sources.keys()].flatMap((source) =>
    answersOf(edition, source).filter(({ answer }) => !made.has(answer.finding)),
  )
}
