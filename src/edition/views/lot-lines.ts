/** Lots as a table lists them, each with its verdict under the governing criterion or under a chosen one. */
import type { Outcome } from '../../core/criteria/outcome.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { bestClassInWords, type NamedInVerdicts, sentencesOfVerdict } from '../shape/verdict-words.ts'

/** One lot on a line. */
export interface LotLine
  extends Pick<ListedLot, 'id' | 'number' | 'sampled' | 'tonnes' | 'state' | 'issued'> {
  readonly class: string | null
  /** null where the lot is not judged. */
  readonly outcome: Outcome | null
  /** What decided under a chosen criterion, and the best class met. */
  readonly remark?: string
}

/** Lots in the order given, each with its governing verdict. */
export function lotLines(lots: readonly ListedLot[]): LotLine[] {
  return lots.map((lot) => lotLine(lot, lot.outcomes[0]?.outcome ?? null))
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
    if (verdict === undefined) return lotLine(row, null)
    const decisive = sentencesOfVerdict(edition, verdict)[verdict.outcome === 'meets' ? 0 : 1]
    const remark = [decisive, bestClassInWords(edition, lot, criterion)]
      .filter((text) => text !== undefined)
      .join('; ')
    return { ...lotLine(row, verdict.outcome), remark }
  })
}

function lotLine(lot: ListedLot, outcome: Outcome | null): LotLine {
  const { id, number, sampled, tonnes, state, issued } = lot
  return { id, number, sampled, tonnes, state, issued, class: lot.class ?? null, outcome }
}
