/** The judgement on a certificate: the governing criterion in full, the others on a line each. */
import type { Outcome } from '../../core/criteria/outcome.ts'
import { unbroken } from '../../words/sentences.ts'
import { storedSentence } from '../../words/stored-text.ts'
import { TRIAL_HEADING, verdictHeadline } from '../../words/outcomes.ts'
import { paths } from '../shape/addresses.ts'
import type { CertificateDocument, DocumentCriterion } from '../shape/document.ts'
import type { Edition } from '../shape/edition.ts'
import type { DocumentVerdict } from './document-clauses.ts'
import { type Linked, linked } from './linked.ts'

export interface GoverningVerdict {
  readonly outcome: Outcome
  /** Stand over the headline, the most serious first. */
  readonly cautions: readonly string[]
  readonly headline: string
  readonly reasons: readonly string[]
  readonly release: string | null
  readonly set: Linked
  /** The set's decision rule and what it implies for the risk. */
  readonly rule: string
}
export interface OtherVerdict {
  readonly outcome: Outcome
  readonly headline: Linked
  readonly trial: string | null
}
export interface VerdictBlock {
  /** null where no criterion applies to the lot. */
  readonly governing: GoverningVerdict | null
  readonly others: readonly OtherVerdict[]
}

interface Judged {
  readonly verdict: DocumentVerdict
  readonly criterion: DocumentCriterion
}

export function verdictBlock(
  edition: Pick<Edition, 'address' | 'criteria'>,
  { verdicts, criteria, state }: Pick<CertificateDocument, 'verdicts' | 'criteria' | 'state'>,
): VerdictBlock {
  const [governing, ...others] = verdicts.flatMap((verdict, index): Judged[] => {
    const criterion = criteria[index]
    return criterion === undefined ? [] : [{ verdict, criterion }]
  })
  return {
    governing: governing === undefined ? null : governingVerdict(edition, governing, state),
    others: others.map(({ verdict, criterion }) => ({
      outcome: verdict.outcome,
      headline: ofSet(edition, criterion, headlineOf({ verdict, criterion })),
      trial: criterion.trial ? TRIAL_HEADING.toLowerCase() : null,
    })),
  }
}

function governingVerdict(
  edition: Pick<Edition, 'address' | 'criteria'>,
  { verdict, criterion }: Judged,
  state: CertificateDocument['state'],
): GoverningVerdict {
  return {
    outcome: verdict.outcome,
    cautions: [
      ...(state === 'withdrawn'
        ? ['This certificate is withdrawn; the judgement below no longer stands']
        : []),
      ...(criterion.trial ? [TRIAL_HEADING] : []),
    ],
    headline: headlineOf({ verdict, criterion }),
    reasons: verdict.reasons.map((reason) => unbroken(storedSentence(reason))),
    release: verdict.release === undefined ? null : storedSentence(verdict.release),
    set: ofSet(edition, criterion, criterion.title),
    rule: [criterion.decisionRule, criterion.risk]
      .filter((text) => text !== undefined)
      .map(storedSentence)
      .join(' '),
  }
}

function headlineOf({ verdict, criterion }: Judged): string {
  return unbroken(verdictHeadline(verdict, criterion))
}

/** A set that is no longer on record has no page. */
function ofSet(
  edition: Pick<Edition, 'address' | 'criteria'>,
  { id }: DocumentCriterion,
  text: string,
): Linked {
  return linked(edition, text, edition.criteria.has(id) ? paths.criterion(id) : null)
}
