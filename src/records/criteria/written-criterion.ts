/**
 * A criterion as validated against schemas/criterion.json, still in its written form: what the compiling asks
 * of it.
 */
import type { Operator } from '../../core/criteria/criterion.ts'
import type { Quantity } from '../../core/measure/units.ts'

type YesNo = 'yes' | 'no'
/** A limit with its unit, or one for each class. */
export type WrittenLimit = string | Readonly<Record<string, string>>

/** The operators of a clause, a `when`, a release entry or an approval. */
export interface WrittenOperators {
  readonly 'at-least'?: WrittenLimit
  readonly 'at-most'?: WrittenLimit
  readonly above?: WrittenLimit
  readonly below?: WrittenLimit
  readonly between?: readonly string[]
  readonly 'magnitude-at-most'?: WrittenLimit
  readonly report?: YesNo
}

export interface WrittenDecisionRule {
  readonly guarded?: number
  readonly probability?: number
  readonly 'agreed-in'?: string
}

export interface WrittenPremise extends WrittenOperators {
  readonly property?: string
  readonly condition?: string
  readonly age?: string
  readonly fact?: string
  readonly is?: readonly string[]
}

export interface WrittenBand extends WrittenOperators {
  readonly title: string
  readonly and?: readonly WrittenPremise[]
}

/** Durations and shares are quantities already: the schema names their kind. */
export interface WrittenStatistic {
  readonly 'rolling-mean'?: number
  readonly variables?: {
    readonly period: Quantity
    readonly 'at-least': number
    readonly share: Quantity
    readonly confidence: Quantity
  }
  readonly attributes?: {
    readonly period: Quantity
    readonly acceptance: readonly { readonly from: number; readonly allow: number }[]
    readonly beyond?: { readonly factor: number; readonly less: number }
  }
  readonly tolerance?: { readonly results: number; readonly 'at-least': number; readonly share: Quantity }
  readonly variability?: { readonly results: number }
  readonly declared?: YesNo
}

export interface WrittenFrequency {
  readonly every?: Quantity
  readonly 'or-every'?: Quantity
}

export interface WrittenSampling extends WrittenFrequency {
  readonly properties: readonly string[]
  readonly 'new-source'?: WrittenFrequency & { readonly for: Quantity }
  readonly sample?: 'grab' | 'composite'
}

export interface WrittenClause extends WrittenOperators {
  readonly clause?: string
  readonly title?: string
  readonly property?: string
  readonly condition?: string
  readonly age?: string
  readonly 'deviation-from'?: {
    readonly preceding?: number
    readonly declared?: YesNo
    readonly control?: YesNo
  }
  readonly relative?: YesNo
  readonly classes?: readonly string[]
  readonly kinds?: readonly string[]
  readonly when?: readonly WrittenPremise[]
  readonly 'deemed-by'?: readonly WrittenPremise[]
  readonly band?: readonly WrittenBand[]
  readonly statistic?: WrittenStatistic
  readonly optional?: YesNo
  readonly information?: YesNo
  readonly several?: 'worst' | 'mean' | 'latest'
  /** A step, or "none". */
  readonly resolution?: number | string
  readonly approval?: Pick<WrittenOperators, 'at-least' | 'at-most'> & {
    readonly classes?: readonly string[]
    readonly evidence: string
    readonly by?: 'approval' | 'declaration'
  }
  readonly method?: string
  readonly 'method-required'?: YesNo
  readonly fact?: string
  readonly is?: readonly string[]
  readonly document?: string
  readonly 'void-on'?: readonly string[]
  readonly 'allowed-classes'?: readonly string[]
  readonly 'accepted-as'?: readonly {
    readonly class: string
    readonly as: string
    readonly when: readonly WrittenPremise[]
  }[]
  readonly sampling?: WrittenSampling
  readonly basis?: { readonly read?: string; readonly memory?: string }
  readonly 'set-by'?: { readonly study?: string; readonly user?: string; readonly condition?: string }
  readonly 'decision-rule'?: WrittenDecisionRule
  readonly 'any-of'?: readonly WrittenClause[]
  readonly 'all-of'?: readonly WrittenClause[]
  readonly change?: WrittenChange
  readonly after?: string
}

export type WrittenChange =
  | 'tighten'
  | 'relax'
  | 'add'
  | 'remove'
  | 'promote'
  | 'restrict'
  | 'replace-method'
  | 'set-frequency'
  | 'add-document'

export interface WrittenCriterion {
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly authority?: string
  readonly 'superseded-by'?: string
  readonly kinds: readonly string[]
  readonly classes?: readonly string[]
  readonly 'class-titles'?: Readonly<Record<string, string>>
  readonly axes?: readonly (readonly string[])[]
  readonly 'best-first'?: YesNo
  readonly 'class-from'?: readonly { readonly class: string; readonly when: readonly WrittenPremise[] }[]
  readonly extends?: {
    readonly set: string
    readonly classes?: readonly string[]
    readonly edition?: 'as-named' | 'current'
  }
  readonly clauses: readonly WrittenClause[]
  readonly release?: readonly {
    readonly clause: string
    readonly with?: WrittenOperators & { readonly age?: string }
  }[]
  readonly lacks?: readonly string[]
  readonly retests?: string
  readonly sources?: Readonly<Record<string, string>>
  readonly confirmed?: { readonly by: string; readonly date: string; readonly edition: string }
  readonly 'decision-rule'?: WrittenDecisionRule
  readonly note?: string
}

/** Operators in the order in which a clause's limits are compiled and shown. */
export const WRITTEN_OPERATORS = [
  'at-least',
  'above',
  'at-most',
  'below',
  'between',
  'magnitude-at-most',
  'report',
] as const satisfies readonly Operator[]
