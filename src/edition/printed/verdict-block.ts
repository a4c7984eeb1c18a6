/** The judgement on a certificate: the governing criterion in full, the others on a line each. */
import { defined } from '../../core/measure/defined.ts'
import { TRIAL_HEADING, verdictHeadline } from '../../words/outcomes.ts'
import { plural } from '../../words/numbers.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import type { WordedVerdict } from '../../words/worded-verdict.ts'
import type { CertificateCriterion, CertificateFacts } from '../shape/certificate-facts.ts'
import type {
  PrintedLink,
  PrintedSet,
  PrintedVerdict,
  PrintedVerdicts,
} from '../shape/printed-certificate.ts'

interface Judged {
  readonly verdict: WordedVerdict
  readonly criterion: CertificateCriterion
}

export function printedVerdicts({
  verdicts,
  criteria,
  state,
}: Pick<CertificateFacts, 'verdicts' | 'criteria' | 'state'>): PrintedVerdicts {
  const [governing, ...others] = verdicts.flatMap((verdict, index): Judged[] => {
    const criterion = criteria[index]
    return criterion === undefined ? [] : [{ verdict, criterion }]
  })
  return defined({
    governing: governing && governingVerdict(governing, state),
    others: others.map(({ verdict, criterion }) =>
      defined({
        outcome: verdict.outcome,
        headline: ofSet(criterion, headlineOf({ verdict, criterion }, state)),
        trial: criterion.trial ? (true as const) : undefined,
        scope: criterion.scope,
      }),
    ),
  })
}

function governingVerdict({ verdict, criterion }: Judged, state: CertificateFacts['state']): PrintedVerdict {
  return defined({
    outcome: verdict.outcome,
    cautions: [
      ...(state === 'withdrawn'
        ? ['This certificate is withdrawn; the verdict below no longer applies']
        : []),
      ...(criterion.trial ? [TRIAL_HEADING] : []),
      ...(criterion.scope === undefined ? [] : [sentence(criterion.scope)]),
    ],
    headline: headlineOf({ verdict, criterion }, state),
    reasons: verdict.reasons.map((reason) => unbroken(fullSentence(reason))),
    release: verdict.release === undefined ? undefined : fullSentence(verdict.release),
  })
}

/** @returns undefined where no criterion applies */
export function printedSet({
  criteria: [governing],
}: Pick<CertificateFacts, 'criteria'>): PrintedSet | undefined {
  if (governing === undefined) return undefined
  return {
    title: ofSet(governing, governing.title),
    rule: [governing.decisionRule, governing.risk, ...reservations(governing)].map(fullSentence).join(' '),
  }
}

/** A set that nobody has checked, or that does not hold all of its specification, says so wherever it governs. */
function reservations({ asRead, lacks }: CertificateCriterion): string[] {
  return [
    ...(asRead === true
      ? ['the limits of the set are as read, not checked against the published standard']
      : []),
    ...(lacks === undefined
      ? []
      : [`the set leaves out ${plural(lacks, 'part', 'parts')} of its specification, listed on its page`]),
  ]
}

/** What a withdrawn certificate once said is never printed as if it stood. */
function headlineOf({ verdict, criterion }: Judged, state: CertificateFacts['state']): string {
  const headline = unbroken(verdictHeadline(verdict, criterion))
  return state === 'withdrawn'
    ? `Withdrawn; was: ${headline.slice(0, 1).toLowerCase()}${headline.slice(1)}`
    : headline
}

function ofSet({ id }: CertificateCriterion, text: string): PrintedLink {
  return { text, to: { kind: 'criterion', id } }
}
