/** What an audit check found, in words. */
import { AGENCY_EVIDENCE, AGENCY_SENTENCES } from './agency-findings.ts'
import type { Finding, FindingParams, FindingReason } from '../core/checks/finding.ts'
import { COMPLETENESS_EVIDENCE, COMPLETENESS_SENTENCES } from './completeness-findings.ts'
import type { FindingNames } from './finding-names.ts'
import { HISTORY_EVIDENCE, HISTORY_SENTENCES } from './history-findings.ts'
import { IDENTITY_EVIDENCE, IDENTITY_SENTENCES } from './identity-findings.ts'
import { INTEGRITY_EVIDENCE, INTEGRITY_SENTENCES } from './integrity-findings.ts'
import { LABORATORY_EVIDENCE, LABORATORY_SENTENCES } from './laboratory-findings.ts'
import { LOT_EVIDENCE, LOT_SENTENCES } from './lot-findings.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { sentence } from './sentences.ts'
import { SHIPPING_EVIDENCE, SHIPPING_SENTENCES } from './shipping-findings.ts'
import { TESTING_EVIDENCE, TESTING_SENTENCES } from './testing-findings.ts'

/** A finding with its sentence and the evidence for it. */
export interface WordedFinding extends Omit<Finding, 'reason'> {
  readonly check: FindingReason['code']
  /** One sentence without a full stop. */
  readonly sentence: string
  /** A line each, without a full stop. */
  readonly evidence: readonly string[]
}

/** @param names how it names sources, laboratories, conditions and lots */
export function wordedFinding({ reason, ...finding }: Finding, names: FindingNames): WordedFinding {
  const { id, ...rest } = finding
  const said = sentence(wordsOf(SENTENCES, reason, names))
  return { id, check: reason.code, ...rest, sentence: said, evidence: wordsOf(EVIDENCE, reason, names) }
}

const SENTENCES: WordsOf<FindingParams, [FindingNames]> = {
  ...AGENCY_SENTENCES,
  ...LOT_SENTENCES,
  ...COMPLETENESS_SENTENCES,
  ...SHIPPING_SENTENCES,
  ...TESTING_SENTENCES,
  ...LABORATORY_SENTENCES,
  ...IDENTITY_SENTENCES,
  ...HISTORY_SENTENCES,
  ...INTEGRITY_SENTENCES,
}

const EVIDENCE: WordsOf<FindingParams, [FindingNames], string[]> = {
  ...AGENCY_EVIDENCE,
  ...LOT_EVIDENCE,
  ...COMPLETENESS_EVIDENCE,
  ...SHIPPING_EVIDENCE,
  ...TESTING_EVIDENCE,
  ...LABORATORY_EVIDENCE,
  ...IDENTITY_EVIDENCE,
  ...HISTORY_EVIDENCE,
  ...INTEGRITY_EVIDENCE,
}
