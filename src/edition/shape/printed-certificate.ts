/**
 * What a certificate prints, as plain texts: names, units and sentences are those of its day, so that the page
 * of an issued certificate never changes. Members that a certificate has no use for are absent.
 */
import type { CertificateWords } from '../../words/certificate-words.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import type { CertificateState } from '../../core/evidence/certificate-state.ts'

/** A page that a text leads to, where the site has one; or a telephone number or a mail address, as written. */
export interface PageOf {
  readonly kind: 'source' | 'laboratory' | 'criterion' | 'certificate' | 'telephone' | 'mail'
  readonly id: string
}

export interface PrintedLink {
  readonly text: string
  readonly to?: PageOf
}

/** One particular of a definition list; what a record lacks has no text, and the page says so. */
export interface PrintedFact {
  readonly label: string
  readonly text?: string
  /** Stands before the text. */
  readonly lead?: PrintedLink
  /** Telephone numbers and mail addresses, in place of the text. */
  readonly contacts?: readonly PrintedLink[]
  /** Takes the whole width of the list. */
  readonly wide?: true
}

export interface PrintedHead {
  readonly lot: string
  readonly material: string
  /** SOURCE/LOT */
  readonly certificate: string
  readonly revision: string
  readonly state: CertificateState
  /** State and verdict together. */
  readonly standing: string
  readonly issued: string
  readonly replaces?: string
  readonly reason?: string
}

export interface PrintedWithdrawal {
  readonly on: string
  readonly reason: string
  readonly replacement?: PrintedLink
}

export interface PrintedVerdict {
  readonly outcome: Outcome
  /** Stand over the headline, the most serious first. */
  readonly cautions: readonly string[]
  readonly headline: string
  readonly reasons: readonly string[]
  readonly release?: string
}
/** A set with its decision rule and what the rule implies for the risk. */
export interface PrintedSet {
  readonly title: PrintedLink
  readonly rule: string
}
export interface PrintedOtherVerdict {
  readonly outcome: Outcome
  readonly headline: PrintedLink
  readonly trial?: true
  /** How much of the material the set judges, where that is not the whole. */
  readonly scope?: string
}
export interface PrintedVerdicts {
  /** Absent where no criterion applies to the lot. */
  readonly governing?: PrintedVerdict
  readonly others: readonly PrintedOtherVerdict[]
}

/** Who made the material from what. */
export interface PrintedOrigin {
  readonly before: readonly PrintedFact[]
  readonly after: readonly PrintedFact[]
}

export interface PrintedSampling {
  /** The facts of each sample that the lot is judged on. */
  readonly samples: readonly (readonly PrintedFact[])[]
  /** Splits and independent samples in one sentence without a full stop. */
  readonly others?: string
}

export interface PrintedLaboratory {
  readonly name: PrintedLink
  readonly particulars: string
  /** Telephone number and mail address, where they are on record. */
  readonly contacts?: readonly PrintedLink[]
}

export interface PrintedTable {
  readonly title: string
  /** What holds for all its results. */
  readonly note?: string
  readonly lines: readonly PrintedLine[]
  readonly plain: readonly PrintedPlainLine[]
}

/** A result beside its limit, a clause that still waits for one, or a statistic. */
export interface PrintedLine {
  /** The heading of the group that begins with this line. */
  readonly opens?: { readonly title: string; readonly demand: string; readonly outcome: Outcome }
  readonly kind?: 'deviation'
  readonly member?: true
  readonly title: string
  readonly remarks: string
  /** How near a limit the value is, where its uncertainty leaves the outcome in doubt. */
  readonly doubt?: string
  readonly why?: string
  readonly value: string
  /** The value before rounding, where the comparison with the limit changed it. */
  readonly unrounded?: string
  /** The value in US customary units, where the site prints those first. */
  readonly american?: string
  readonly strip?: PrintedStrip
  readonly limit?: string
  readonly outcome: Outcome
  /** Due date of a result that is awaited. */
  readonly due?: string
}

/** What the drawing beside a value is made from; the line says the same in words. */
export interface PrintedStrip {
  readonly value?: number
  /** Ends of what meets the limit; one alone for a limit to one side. */
  readonly from?: number
  readonly to?: number
  /** Standard uncertainty in the unit of the value. */
  readonly u?: number
}

/** Results without a limit, on one line. */
export interface PrintedPlainLine {
  /** Stands before the line, where it is not the table’s own. */
  readonly lead?: string
  readonly items: readonly PrintedItem[]
  /** What holds for the whole line: condition, methods, day, standing. */
  readonly remarks: string
}
export interface PrintedItem {
  readonly name: string
  readonly value: string
  /** Age and day of a mortar's result, in brackets. */
  readonly detail?: string
  /** Why the result is not valid. */
  readonly fault?: string
}

export interface PrintedMortars {
  /** Why there is no mortar, where that is no lack. */
  readonly note?: string
  /** Condition by id, and what is particular to the mortar. */
  readonly mortars: readonly { readonly condition: string; readonly line: string }[]
  /** Deviations from the methods and specimens left out, a part each. */
  readonly departures: readonly string[]
}

export interface PrintedCondition {
  readonly title: string
  /** What a line about a mortar begins with. */
  readonly summary: string
  readonly particulars: readonly { readonly label: string; readonly text: string }[]
}

/** Readings of one test mortar and its control, as the record writes them. */
export interface PrintedReadings {
  readonly sample: string
  /** Of `PrintedShared`. */
  readonly condition: string
  readonly readings: readonly PrintedReading[]
}
export interface PrintedReading {
  readonly mortar: string
  readonly tested: string
  readonly specimens: string
  readonly facts: string
}

export interface PrintedSignature {
  readonly name: string
  readonly particulars: string
}

/** What a certificate prints alike with others of its source. */
export interface PrintedShared {
  /** Headings, labels, outcomes and cautions as they read on the day. */
  readonly words: CertificateWords
  /** Title of the site. */
  readonly site: string
  readonly notice?: string
  /** Lines over the certificate. */
  readonly letterhead?: readonly string[]
  readonly origin: PrintedOrigin
  readonly laboratories: readonly PrintedLaboratory[]
  /** By id. */
  readonly conditions: Readonly<Record<string, PrintedCondition>>
  /** The governing set; absent where no criterion applies. */
  readonly set?: PrintedSet
}

/** How the lot was made and sampled, and its analyses: alike in its revisions as a rule. */
export interface PrintedLot {
  readonly identification: readonly PrintedFact[]
  readonly sampling: PrintedSampling
  readonly tables: readonly PrintedTable[]
}

export interface PrintedCertificate {
  /** "certificate SOURCE/LOT, revision 1". */
  readonly name: string
  readonly head: PrintedHead
  readonly withdrawal?: PrintedWithdrawal
  readonly verdicts: PrintedVerdicts
  /** The activity of the mortars. */
  readonly tables: readonly PrintedTable[]
  /** Clauses on the record rather than on a value. */
  readonly record: readonly { readonly outcome: Outcome; readonly text: string }[]
  /** Clauses that need no result of this lot, in one sentence. */
  readonly neutral?: string
  readonly mortars: PrintedMortars
  /** Absent from a draft. */
  readonly signature?: PrintedSignature
}
