/** Lots as a table lists them, each with its verdict under the governing criterion or under a chosen one. */
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { type NamesConditions, standingOf } from '../shape/standing.ts'
import { bestClassInWords, type NamedInVerdicts, sentencesOfVerdict } from '../shape/verdict-words.ts'

/** One lot on a line. */
export interface LotLine extends Pick<ListedLot, 'id' | 'number' | 'sampled' | 'tonnes' | 'issued'> {
  readonly class: string | null
  /** State and verdict together. */
  readonly standing: LotStanding
  /** What decided under a chosen criterion, and the best class met. */
  readonly remark?: string
}

/** Lots in the order given, each with its state and governing verdict. */
export function lotLines(edition: NamesConditions, lots: readonly ListedLot[]): LotLine[] {
  return lots.map((lot) => lotLine(lot, standingOf(edition, lot)))
}

/** Lots in the order given, each with its verdict under one criterion and what decided it. */
export function lotLinesUnder(
  edition: Pick<Edition, 'lot'> & NamedInVerdicts,
  lots: readonly ListedLot[],
  criterion: string,
): LotLine[] {
  return lots.map((row) => {
    const lot = edition.lot(row.id)
    const verdict = lot.verdicts.find((candidate) => candidate.criterion === criterion)
    const line = lotLine(row, standingOf(edition, row, criterion))
    if (verdict === undefined) return line
    const decisive = sentencesOfVerdict(edition, verdict)[verdict.outcome === 'meets' ? 0 : 1]
    const remark = [decisive, bestClassInWords(edition, lot, criterion)]
      .filter((text) => text !== undefined)
      .join('; ')
    return { ...line, remark }
  })
}

function lotLine(lot: ListedLot, standing: LotStanding): LotLine {
  const { id, number, sampled, tonnes, issued } = lot
  return { id, number, sampled, tonnes, issued, class: lot.class ?? null, standing }
}
