/** What a certificate states, in the order of an engineer's reading and as the texts that it prints. */
import { defined } from '../../core/measure/defined.ts'
import { CERTIFICATE_WORDS } from '../../words/certificate-words.ts'
import { date } from '../../words/dates.ts'
import { outcomeWords } from '../../words/outcomes.ts'
import { fullSentence } from '../../words/sentences.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'
import type {
  PrintedCertificate,
  PrintedLot,
  PrintedShared,
  PrintedSignature,
} from '../shape/printed-certificate.ts'
import { governingClauses, needsNoResult, recordClauses } from './clauses.ts'
import { printedHead, printedWithdrawal } from './head.ts'
import { identification, printedOrigin } from './identification.ts'
import { printedCondition, printedMortars } from './mortars.ts'
import { printedTables } from './result-table.ts'
import { printedLaboratory, printedSampling } from './sampling.ts'
import { printedSet, printedVerdicts } from './verdict-block.ts'

/** @param facts what the certificate states, names withheld where they must be */
export function printedCertificate(facts: CertificateFacts): PrintedCertificate {
  return defined({
    name: nameOf(facts),
    head: printedHead(facts),
    withdrawal: printedWithdrawal(facts),
    verdicts: printedVerdicts(facts),
    tables: printedTables(facts, ['activity']),
    record: recordClauses(facts).map(({ outcome, title, reason }) => ({
      outcome,
      text: `${title}: ${fullSentence(reason)}`,
    })),
    neutral: neutralWords(facts),
    mortars: printedMortars(facts),
    signature: printedSignature(facts),
  })
}

/** How the lot was made and sampled, and its analyses. */
export function printedLot(facts: CertificateFacts): PrintedLot {
  return {
    identification: identification(facts),
    sampling: printedSampling(facts),
    tables: printedTables(facts, ['composition', 'physical']),
  }
}

/** What the certificate prints alike with others of its source. */
export function printedShared(facts: CertificateFacts): PrintedShared {
  return defined({
    words: CERTIFICATE_WORDS,
    site: facts.site,
    notice: facts.notice ?? undefined,
    letterhead: facts.producer.letterhead,
    origin: printedOrigin(facts),
    laboratories: facts.laboratories.map(printedLaboratory),
    conditions: Object.fromEntries(
      facts.conditions.map((condition) => [condition.id, printedCondition(condition)]),
    ),
    set: printedSet(facts),
  })
}

function nameOf({ certificate, revision }: CertificateFacts): string {
  return `certificate ${certificate}, ${revision === null ? 'draft' : `revision ${revision}`}`
}

function neutralWords(facts: CertificateFacts): string | undefined {
  const clauses = governingClauses(facts).filter(needsNoResult)
  return clauses.length === 0
    ? undefined
    : `${clauses.map(({ title, outcome }) => `${title}: ${outcomeWords(outcome)}`).join('; ')}.`
}

function printedSignature({ by, issued }: CertificateFacts): PrintedSignature | undefined {
  if (by === null || issued === null) return undefined
  return { name: by.name, particulars: `${by.function}, ${independenceWords(by)}; ${date(issued)}` }
}

function independenceWords({ independent }: NonNullable<CertificateFacts['by']>): string {
  if (independent === null) return 'independence from production not recorded'
  return independent ? 'independent of production' : 'not independent of production'
}
