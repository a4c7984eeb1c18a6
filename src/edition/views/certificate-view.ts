/** A certificate page: the frozen document in the order of an engineer's reading, ready to be drawn. */
import type { Outcome } from '../../core/criteria/outcome.ts'
import { outcomeWords } from '../../words/outcomes.ts'
import { storedSentence } from '../../words/stored-text.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { type Annex, annex } from './annex.ts'
import { type CertificateFoot, certificateFoot } from './certificate-foot.ts'
import { type CertificateHead, certificateHead } from './certificate-head.ts'
import { governingClauses, needsNoResult, recordClauses } from './document-clauses.ts'
import type { Fact } from './fact.ts'
import { type HistoryCharts, historyCharts } from './history-charts.ts'
import { identification } from './identification.ts'
import { type MortarsView, mortarsView } from './mortars-view.ts'
import { type ResultTableView, resultTableViews } from './result-table.ts'
import { type SamplingView, samplingView } from './sampling-view.ts'
import { isSuperseded, type StateNotice, stateNotice } from './state-notice.ts'
import { type VerdictBlock, verdictBlock } from './verdict-block.ts'

export interface CertificateView {
  /** "certificate SOURCE/LOT, revision 1". */
  readonly name: string
  readonly site: string
  readonly notice: string | null
  readonly head: CertificateHead
  readonly state: StateNotice
  readonly verdicts: VerdictBlock
  readonly identification: readonly Fact[]
  readonly sampling: SamplingView
  readonly tables: readonly ResultTableView[]
  /** Clauses on the record rather than on a value. */
  readonly record: readonly { readonly outcome: Outcome; readonly text: string }[]
  /** Clauses that need no result of this lot, in one sentence; null without any. */
  readonly neutral: string | null
  readonly mortars: MortarsView
  readonly history: HistoryCharts | null
  readonly annex: Annex | null
  readonly foot: CertificateFoot
}

export function certificateView(
  edition: Edition,
  entry: LotEntry,
  document: CertificateDocument,
): CertificateView {
  return {
    name: nameOf(document),
    site: document.site,
    notice: document.notice,
    head: certificateHead(document, { superseded: isSuperseded(entry, document) }),
    state: stateNotice(edition, entry, document),
    verdicts: verdictBlock(edition, document),
    identification: identification(edition, document),
    sampling: samplingView(edition, document),
    tables: resultTableViews(edition, document),
    record: recordClauses(document).map(({ outcome, title, reason }) => ({
      outcome,
      text: `${title}: ${storedSentence(reason)}`,
    })),
    neutral: neutralWords(document),
    mortars: mortarsView(document),
    history: historyCharts(document),
    annex: annex(document),
    foot: certificateFoot(edition, entry, document),
  }
}

function nameOf({ certificate, revision }: CertificateDocument): string {
  return `certificate ${certificate}, ${revision === null ? 'draft' : `revision ${revision}`}`
}

function neutralWords(document: CertificateDocument): string | null {
  const clauses = governingClauses(document).filter(needsNoResult)
  return clauses.length === 0
    ? null
    : `${clauses.map(({ title, outcome }) => `${title}: ${outcomeWords(outcome)}`).join('; ')}.`
}
