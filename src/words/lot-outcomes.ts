/** The outcome of a verdict said of a lot, whatever the state of its certificate. */
import type { Outcome } from '../core/criteria/outcome.ts'
import type { VerdictStanding } from '../core/criteria/verdict-standing.ts'
import { everyOutcome, NO_CLASS_FOR_LOT, outcomeWords, SO_FAR } from './outcomes.ts'

type Words = Readonly<Record<Outcome, string>>

/** Of a lot: "not valid" alone would speak of the lot, where it was a test. */
const OF_A_LOT: Words = {
  ...wordsOfAll(outcomeWords),
  // Whatever could be judged is met, which a reader must not have to guess.
  'insufficient-history': 'meets all that can be evaluated',
  'not-reported': 'required results not reported',
  'not-valid': 'a test is not valid',
  'not-applicable': 'no clause applies',
  'not-invoked': 'nothing was requested',
  reported: 'reported, no limit applies',
}

/** Of a lot without a certificate. */
const WOULD: Words = {
  ...OF_A_LOT,
  meets: 'would meet',
  'meets-by-approval': 'would meet by approval',
  'does-not-meet': 'would not meet',
  inconclusive: 'would be inconclusive',
  'insufficient-history': 'would meet all that can be evaluated',
}

/** Where nobody can tell whether anything else is met. */
export const HISTORY_SHORT = 'history still too short'

const NOT_JUDGED = 'not judged'
const UNEVALUATED = 'nothing can be evaluated yet'
function wordsOfAll(words: (outcome: Outcome) => string): Words {
  return Object.fromEntries(everyOutcome().map((outcome) => [outcome, words(outcome)])) as Record<
    Outcome,
    string
  >
}

interface Judged extends VerdictStanding {
  /** Null where the lot is not judged. */
  readonly outcome: Outcome | null
}

export function judgedWords(judged: Judged): string {
  return saidIn(judged, OF_A_LOT)
}

/** Of a lot without a certificate. */
export function wouldBeWords(judged: Judged): string {
  return saidIn(judged, WOULD)
}

function saidIn({ outcome, noClass, unevaluated, soFar }: Judged, words: Words): string {
  if (outcome === null) return NOT_JUDGED
  if (unevaluated === true) return UNEVALUATED
  if (noClass === true) return NO_CLASS_FOR_LOT
  return soFar === true ? `${words[outcome]} ${SO_FAR}` : words[outcome]
}

/**
 * The outcome of a lot in the words of its standing.
 * @param beside what must be said with it; without it nothing is claimed of clauses that nobody may have evaluated
 */
export function outcomeOfLot(outcome: Outcome, beside?: VerdictStanding): string {
  if (beside === undefined && outcome === 'insufficient-history') return HISTORY_SHORT
  return judgedWords({ outcome, ...beside })
}
