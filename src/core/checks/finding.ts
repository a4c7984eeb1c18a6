/**
 * What an audit check reports: a question with its evidence, never an accusation, never a change of the exit
 * status.
 */
export interface Finding {
  /** Permanent within its lot or source: check and what it is about. */
  readonly id: string
  readonly check:
    | 'changed-after-issue'
    | 'would-now-be-judged-otherwise'
    | 'issued-document-missing'
    | 'digest-differs'
  readonly severity: 'blocks' | 'warning' | 'information'
  /** Lot, source, result or clause that it is about. */
  readonly about: string
  readonly sentence: string
  readonly evidence: readonly string[]
}
