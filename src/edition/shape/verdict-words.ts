/** Words of the Edition's verdicts, made when a page or a file prints them. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import {
  bestClassWords,
  decidedByWords,
  verdictSentences,
  type WordedVerdict,
  wordedVerdict,
} from '../../words/worded-verdict.ts'
import { shortfallWords } from '../../words/shortfall.ts'
import { conditionTitle } from './condition-title.ts'
import type { Edition, LotEntry } from './edition.ts'

/** What a verdict's words name beside it: its set, and conditions. */
export type NamedInVerdicts = Pick<Edition, 'criteria' | 'conditions' | 'announcedConditions'> & {
  /** Figures are in the units of the site where there is one, else as stored. */
  readonly site?: Pick<Edition['site'], 'units'>
}

/** @throws RangeError, as all here, for a verdict under a set that is not on record */
export function wordsOfVerdict(edition: NamedInVerdicts, verdict: Verdict): WordedVerdict {
  return wordedVerdict(verdict, setOf(edition, verdict.criterion), titles(edition), edition.site?.units)
}

/** How far the set is met, what decided, what else is open: sentences without a full stop. */
export function sentencesOfVerdict(edition: NamedInVerdicts, verdict: Verdict): string[] {
  return verdictSentences(verdict, setOf(edition, verdict.criterion), titles(edition), edition.site?.units)
}

/** The clauses that decided, by title. */
export function decidedByInWords(edition: NamedInVerdicts, verdict: Verdict): string {
  return decidedByWords(verdict, setOf(edition, verdict.criterion), titles(edition))
}

/** The same with value, limit and the distance between them. */
export function shortfallInWords(edition: NamedInVerdicts, verdict: Verdict): string {
  return shortfallWords(verdict, setOf(edition, verdict.criterion), titles(edition))
}

/** The best class met under a set; undefined where it has no order of merit. */
export function bestClassInWords(
  edition: NamedInVerdicts,
  lot: Pick<LotEntry, 'bestClass'>,
  criterion: string,
): string | undefined {
  return bestClassWords(lot.bestClass(criterion), setOf(edition, criterion), titles(edition))
}

function titles(edition: NamedInVerdicts): (id: string) => string {
  return (id) => conditionTitle(edition, id)
}

function setOf({ criteria }: NamedInVerdicts, id: string): Criterion {
  const criterion = criteria.get(id)
  if (criterion === undefined) throw new RangeError(`verdict-words needs a set that is on record, got ${id}`)
  return criterion
}
