/**
 * An issued document, format 2: all that its page prints, the same as data, and the digest of the document
 * before it. The bytes of content/issued/SOURCE/LOT/N.json are its canonical form with the shared parts taken
 * out (`records/issued/parts.ts`); what `publish:` governs lies in its private part.
 */
import type { ClauseOutcome, Verdict } from '../../core/criteria/verdict.ts'
import type { WithTexts } from '../../core/measure/texts-of-times.ts'
import type { Result } from '../../core/result/result.ts'
import type { Interval } from '../../core/statistics/ratio-interval.ts'
import type { IssuedHead } from '../../records/issued/issued-head.ts'
import type { CertificateFacts } from './certificate-facts.ts'
import type { PrintedCertificate, PrintedLot, PrintedShared } from './printed-certificate.ts'

export interface IssuedDocument extends IssuedHead {
  /** A part: what most documents of a source hold alike. */
  readonly shared: DocumentShared
  /** A part: what the revisions of the lot hold alike as a rule. */
  readonly lot: DocumentLot
  /** A part: the control batches by id, as written and as known on the day. */
  readonly controls: Readonly<Record<string, unknown>>
  readonly printed: PrintedCertificate
  readonly data: DocumentData
}

export interface DocumentShared {
  readonly printed: PrintedShared
  readonly source: Pick<CertificateFacts, 'producer' | 'source'>
  readonly laboratories: CertificateFacts['laboratories']
  readonly conditions: CertificateFacts['conditions']
  /** The governing criterion first. */
  readonly criteria: readonly DocumentCriterion[]
}

export interface DocumentLot {
  readonly printed: PrintedLot
  /** Results of analyses. */
  readonly results: readonly DocumentResults[]
  /** The lot's record but for its mortars, as written, without what goes on after issue. */
  readonly record: unknown
}

export interface DocumentData {
  readonly class: string | null
  /** Results of mortars. */
  readonly results: readonly DocumentResults[]
  /** Under the governing criterion; absent where none applies. */
  readonly verdict?: DocumentVerdict
  /** Under the other criteria. */
  readonly others: readonly DocumentOutcome[]
  /** The mortars of the lot's record as written and as known on the day. */
  readonly tests: unknown
}

/** Results that share where and on what they were found. */
export interface DocumentResults {
  readonly laboratory: string
  readonly sample: string
  readonly condition?: string
  readonly control?: string
  /** Of all results here that do not state their own. */
  readonly tested: string
  readonly method?: string
  readonly basis?: string
  /** Absent where the results lie outside the laboratory's recorded accreditation. */
  readonly accredited?: true
  readonly subcontracted?: string
  /** Values by property, where there is no more to say of them. */
  readonly values?: Readonly<Record<string, number>>
  readonly results?: readonly DocumentResult[]
}

/** A result in the stored unit of its property; what its group says, or is as usual, is absent. */
export interface DocumentResult
  extends Pick<
    WithTexts<Result>,
    'property' | 'age' | 'value' | 'censored' | 'summaryOnly' | 'finished' | 'statedU'
  > {
  readonly tested?: string
  /** null where none is stated, absent where it is the group's. */
  readonly method?: string | null
  readonly basis?: string | null
  /** 1 where it is absent. */
  readonly n?: number
  readonly interval?: DocumentInterval
  /** What a computed value may be; a reported one says so by `censored`. */
  readonly bounds?: DocumentBounds
  readonly valid?: false
  readonly reasons?: Result['reasons']
}

/** null where nothing bounds the value on that side. */
export interface DocumentBounds {
  readonly low: number | null
  readonly high: number | null
}

/** Ends and degrees of freedom to six digits, in the unit of the result. */
export interface DocumentInterval {
  readonly method: Interval['method']
  readonly df: number
  readonly low: number | null
  readonly high: number | null
  /** Absent for "bounded". */
  readonly shape?: Interval['shape']
}

/** A criterion as it judged: whole, so that its limits can be read when its file has changed. */
export interface DocumentCriterion {
  readonly id: string
  readonly edition: string
  readonly trial: boolean
  readonly decisionRule: unknown
  readonly clauses: unknown
}

export interface DocumentVerdict extends DocumentOutcome {
  readonly acceptedAs?: string
  readonly reasons: Verdict['reasons']
  readonly release?: WithTexts<Verdict['release']>
  readonly clauses: readonly DocumentClause[]
}

/** An outcome, with what the clause of its criterion does not say. */
export interface DocumentClause {
  readonly id: string
  readonly outcome: ClauseOutcome['outcome']
  /**
   * Place of the result judged among the groups, those of analyses first, and its property or its place in the
   * group.
   */
  readonly result?: readonly [group: number, result: string | number]
  /** Absent where it is the result's. */
  readonly value?: number
  /** What that value may be, where it is known only within bounds. */
  readonly bounds?: DocumentBounds
  /** The value as compared, after rounding. */
  readonly compared?: number
  readonly due?: string
  readonly against?: DocumentReference
  readonly uncertainty?: ClauseOutcome['uncertainty']
  readonly band?: string
  readonly acceptedAs?: string
  /** The supplement that made the demand easier. */
  readonly relaxedBy?: string
  /**
   * Absent where the value was held against the limit and no more; codes alone where their figures stand
   * beside them and in the criterion.
   */
  readonly reasons?: readonly (string | { readonly code: string; readonly params: unknown })[]
  readonly clauses?: readonly DocumentClause[]
}

/** What a deviation was taken from: a mean, with the preceding results it rests on. */
export interface DocumentReference {
  readonly mean: number
  /** Where the mean is known only within bounds. */
  readonly bounds?: DocumentBounds
  readonly n: number
  /** Names within the source, oldest first. */
  readonly lots?: readonly string[]
  readonly values?: readonly number[]
}

export interface DocumentOutcome extends Pick<Verdict, 'criterion' | 'class' | 'outcome'> {
  /** Absent where every clause that applies is met. */
  readonly decidedBy?: Verdict['decidedBy']
}
