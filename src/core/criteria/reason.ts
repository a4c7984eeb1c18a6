/**
 * Why a clause came out as it did, and why a verdict did: codes with what their sentences need. The codes are
 * permanent, since the check report and data files carry them; `src/words/` makes the sentences.
 */
import type { SampleKind } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { ReasonOf } from '../result/reason.ts'
import type { FactPremise } from './criterion.ts'
import type { AgreedRule, DoubtRule } from './decision-rule.ts'
import type { StatedLimit } from './limits-for-class.ts'
import type { Outcome } from './outcome.ts'
import type { PremiseReason, StatedPremise } from './premise.ts'
import type { SelectionParams } from './selection.ts'

type None = Readonly<Record<string, never>>

/** A number as a sentence prints it. */
export interface Figure {
  readonly value: number
  readonly decimals: number
  readonly unit: string
}

/** What of the property is held against a limit. */
export type ComparedSubject = 'value' | 'deviation' | 'mean' | 'estimate' | 'declared'

/** Why no class is known, on which a clause depends. */
export interface NoClassParams {
  readonly 'no-class-claimed': { readonly classes: readonly string[] }
  readonly 'class-of-another-set': { readonly class: string; readonly classes: readonly string[] }
  /** The class follows from the material, and the premise is open. */
  readonly 'class-not-determined': { readonly because: PremiseReason }
  readonly 'class-none-fits': None
}
export type NoClassReason = ReasonOf<NoClassParams>

/** Why a clause is not judged for this lot. */
export interface ScopeParams extends NoClassParams {
  readonly 'other-material': None
  readonly 'other-class': { readonly class: string }
  readonly 'not-requested': None
  readonly 'premise-not-met': { readonly because: PremiseReason }
  readonly 'premise-not-determined': { readonly because: PremiseReason }
}

/** What a value is worth against a limit as specified. */
export interface ComparedParams {
  readonly 'compared-with-limit': {
    readonly subject: ComparedSubject
    readonly compared: Figure
    /** The value before rounding, where rounding changed it. */
    readonly unrounded?: number
    readonly met: boolean
    readonly limit: StatedLimit
  }
  /** A value that is known only within bounds, which lie on one side of the limit or on both. */
  readonly 'bounds-with-limit': BoundedParams
  /** A result reported as below the figure. */
  readonly 'censored-with-limit': {
    readonly below: Figure
    readonly answer: 'met' | 'not-met' | 'cannot-decide'
    readonly limit: StatedLimit
  }
}
export type ComparedReason = ReasonOf<ComparedParams>

/** A value under a rule that takes its uncertainty into account, and the figures that decided. */
export interface UnderRuleParams {
  readonly value: number
  readonly u: number
  readonly unit: string
  readonly outcome: Outcome
  readonly limit: StatedLimit
  readonly rule: AgreedRule
  /** Degrees of freedom of the uncertainty, where known. */
  readonly df?: number
  /** Standard uncertainties that the guard band takes: k, or more for few degrees of freedom. */
  readonly factor?: number
  /** Width of the guard band in `unit`. */
  readonly guard?: number
  /** Probability of conformity that the value reaches, from 0 to 1. */
  readonly probability?: number
}

/** Ends in `unit`, that of the limit; null where nothing bounds the value on that side. */
export interface BoundedParams {
  readonly subject: ComparedSubject
  readonly low: number | null
  readonly high: number | null
  /** Of the limit. */
  readonly decimals: number
  readonly unit: string
  readonly answer: 'met' | 'not-met' | 'cannot-decide'
  readonly limit: StatedLimit
}

export interface ValueParams extends SelectionParams, ComparedParams {
  readonly 'deemed-to-satisfy': { readonly premises: readonly StatedPremise[] }
  readonly 'reported-without-limit': None
  readonly 'no-declared-value': None
  readonly 'no-uncertainty': { readonly rule: AgreedRule; readonly asSpecified: ComparedReason }
  readonly 'under-rule': UnderRuleParams
  readonly 'no-mean-of-censored': None
  readonly 'no-preceding-result': None
  readonly 'no-declared-reference': None
  readonly 'no-control-reference': None
  readonly 'no-deviation-of-censored': None
  readonly 'no-deviation-from-zero': None
  readonly 'band-none': None
  readonly 'band-found': { readonly band: string }
  readonly 'band-not-determined': { readonly because: PremiseReason }
}

export interface StatisticParams {
  readonly 'no-statistic-of-censored': None
  readonly 'too-few-results': { readonly n: number; readonly atLeast: number }
  readonly 'results-beyond-limit': {
    readonly beyond: number
    readonly n: number
    readonly allowed: number
    readonly limits: readonly StatedLimit[]
  }
  readonly 'share-within-limits': {
    readonly percent: number
    readonly leastPercent: number
    readonly n: number
    readonly mean: Figure
    readonly standardDeviation: Figure
    readonly limits: readonly StatedLimit[]
  }
  readonly variability: {
    /** Of the last five results; null for fewer. */
    readonly movingAverage: number | null
    readonly standardDeviation: number
    readonly n: number
    /** Testing error from duplicates, and the scatter left without it; null without duplicates. */
    readonly testing: { readonly error: number; readonly corrected: number; readonly pairs: number } | null
    readonly decimals: number
    readonly unit: string
  }
}

export interface RecordParams {
  readonly 'fact-not-stated': { readonly fact: string }
  readonly 'fact-stated': { readonly fact: string; readonly stated: string }
  readonly 'fact-not-allowed': FactPremise & { readonly stated: string }
  readonly 'no-document': { readonly document: string }
  readonly 'document-not-in-force': { readonly document: string; readonly on: string }
  readonly 'document-void': {
    readonly document: string
    readonly since: string
    readonly event: string
  }
  /** `title` of a document; scope and giver of a source's approval. */
  readonly 'document-on-record': {
    readonly document: string
    readonly standing: { readonly title: string } | { readonly scope: string; readonly by: string }
  }
  readonly 'class-not-claimed': { readonly allowed: readonly string[] }
  readonly 'class-allowed': { readonly class: string }
  readonly 'class-not-allowed': { readonly class: string; readonly allowed: readonly string[] }
  readonly 'class-acceptance-not-determined': AcceptedAs & { readonly because: PremiseReason }
  readonly 'class-not-accepted': AcceptedAs & { readonly where: readonly StatedPremise[] }
  readonly 'class-accepted': AcceptedAs & { readonly where: readonly StatedPremise[] }
  readonly 'sampling-not-known': None
  readonly 'sampled-often-enough': { readonly every: string; readonly newSource: boolean }
  readonly 'sampled-too-seldom': {
    readonly gaps: readonly SamplingGap[]
    readonly every: string
    readonly newSource: boolean
  }
}

interface AcceptedAs {
  readonly class: string
  readonly as: string
}

/** Time and mass since the test before, and the tests among which they are shared. */
export interface SamplingGap {
  readonly property: PropertyKey
  readonly hours: number
  readonly tonnes: number
  readonly tests: number
  /** Lot of the test before, by id; absent where the source's records hold none. */
  readonly since?: string
}

interface GroupParams {
  readonly 'no-member-applies': None
  /** Members with the group's outcome, by id; of alternatives that are met, the others with theirs. */
  readonly 'by-members': {
    readonly outcome: Outcome
    readonly members: readonly string[]
    readonly others: readonly { readonly clause: string; readonly outcome: Outcome }[]
  }
}

export interface ClauseParams extends ScopeParams, ValueParams, StatisticParams, RecordParams, GroupParams {}
export type ClauseReason = ReasonOf<ClauseParams>

/** What follows the first reason and rests on it. */
export interface AddedParams {
  readonly 'rule-not-agreed': { readonly rule: DoubtRule }
  readonly 'rule-applied': { readonly rule: AgreedRule }
  readonly 'approval-lacking': { readonly limit: StatedLimit; readonly evidence: string }
  readonly 'approval-granted': {
    readonly limit: StatedLimit
    readonly by: string
    readonly from: string
    readonly evidence: string
  }
  readonly 'declaration-lacking': { readonly limit: StatedLimit }
  readonly 'declaration-exceeded': { readonly limit: StatedLimit; readonly declared: string }
  readonly 'declaration-covers': { readonly limit: StatedLimit; readonly declared: string }
  readonly 'deviation-reference': {
    readonly from: 'preceding' | 'declared' | 'control'
    readonly n: number
    readonly reference: Figure
    /** Where the reference is known only within bounds, in its unit. */
    readonly bounds?: { readonly low: number | null; readonly high: number | null }
  }
  readonly 'rolling-mean': { readonly n: number }
  readonly 'estimate-of': {
    readonly n: number
    readonly mean: Figure
    readonly standardDeviation: Figure
    readonly factor: number
  }
  readonly 'one-of-several': { readonly which: 'worst' | 'highest' | 'latest' | 'mean'; readonly n: number }
  /** `controls` that the results rest on, where they are indices. */
  readonly 'mean-of-several': { readonly n: number; readonly controls?: number }
  /** Samples that are not judged and would not meet the limit. */
  readonly 'other-samples': {
    readonly others: readonly (Figure & { readonly sample: string; readonly sampleKind: SampleKind })[]
  }
  /** All results that counted are as their laboratories reported them, not recomputed. */
  readonly finished: None
  /** So many of the results that counted are. */
  readonly 'finished-among': { readonly finished: number; readonly n: number }
  /** As it is written, the figure stands for anything between two that lie on both sides of a limit. */
  readonly 'finished-near-limit': {
    readonly low: number
    readonly high: number
    readonly decimals: number
    readonly unit: string
  }
  /** Of a group that is not met: overdue results that can still meet it. */
  readonly 'late-routes': { readonly routes: readonly LateRoute[] }
}
export type AddedReason = ReasonOf<AddedParams>

/** A clause, by id, whose result is overdue. */
export interface LateRoute {
  readonly clause: string
  readonly since: string
}

/** The reason of a clause outcome, and what was added to it. */
export type ClauseReasons = readonly [ClauseReason, ...AddedReason[]]

export interface VerdictParams {
  readonly 'no-clause-applies': None
  readonly 'all-met': { readonly count: number }
  readonly 'all-met-some-by-approval': { readonly count: number }
  /** Everything that can be evaluated is met; `uniformity` is all that waits for a history. */
  readonly 'history-lacking': { readonly uniformityAlone: boolean }
  /** `count` clauses have the outcome, and `others` beside them, all of which are met. */
  readonly 'others-met': {
    readonly outcome: Outcome
    readonly count: number
    readonly others: number
    /** How many of those that are not met an overdue result can still meet; absent for none. */
    readonly soFar?: number
  }
  /** Of `of` clauses `met` are met and `failed` are not; some are still open. */
  readonly 'met-so-far': { readonly met: number; readonly failed: number; readonly of: number }
  /** A clause that is not met, by id, and the overdue results that can still meet it. */
  readonly 'late-routes-of': { readonly clause: string; readonly routes: readonly LateRoute[] }
  /** A clause that decided, by id: its own reasons say why. */
  readonly 'decided-by': { readonly clause: string }
  /** Clauses that decided, two or more, because nobody states an uncertainty for what they judge. */
  readonly 'without-uncertainty': { readonly clauses: readonly string[] }
  readonly 'also-open': { readonly outcome: Outcome; readonly clauses: readonly string[] }
  /** `by` names the later edition, or is its id. */
  readonly 'edition-superseded': { readonly edition: string; readonly by: string }
}
export type VerdictReason = ReasonOf<VerdictParams>

/** A release on early results: the clauses that it waits for, with the date of each where one is known. */
export interface Release {
  readonly awaits: readonly { readonly clause: string; readonly due?: Moment }[]
}
