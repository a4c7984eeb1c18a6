/** A criterion as validated against schemas/criterion.json, still in its written form: what the compiling asks of it. */
import type { Operator } from '../core/criterion.ts'

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

export interface WrittenDecisionRule { readonly guarded?: number; readonly probability?: number; readonly 'agreed-in'?: string }

export interface WrittenClause extends WrittenOperators {
  readonly clause?: string
  readonly title?: string
  readonly property?: string
  readonly condition?: string
  readonly age?: string
  readonly 'deviation-from'?: { readonly preceding?: number; readonly declared?: YesNo; readonly control?: YesNo }
  readonly relative?: YesNo
  readonly classes?: readonly string[]
  readonly kinds?: readonly string[]
  readonly when?: WrittenOperators & { readonly property: string }
  readonly optional?: YesNo
  readonly information?: YesNo
  readonly several?: 'worst' | 'mean' | 'latest'
  readonly resolution?: number
  readonly approval?: Pick<WrittenOperators, 'at-least' | 'at-most'> & { readonly classes?: readonly string[]; readonly evidence: string }
  readonly method?: string
  readonly basis?: { readonly read?: string; readonly memory?: string }
  readonly 'set-by'?: { readonly study?: string; readonly user?: string; readonly condition?: string }
  readonly 'decision-rule'?: WrittenDecisionRule
  readonly 'any-of'?: readonly WrittenClause[]
  readonly 'all-of'?: readonly WrittenClause[]
  readonly change?: string
}

export interface WrittenCriterion {
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly authority?: string
  readonly 'superseded-by'?: string
  readonly kinds: readonly string[]
  readonly classes?: readonly string[]
  readonly 'class-titles'?: Readonly<Record<string, string>>
  readonly extends?: { readonly set: string; readonly classes?: readonly string[] }
  readonly clauses: readonly WrittenClause[]
  readonly release?: readonly { readonly clause: string; readonly with?: WrittenOperators & { readonly age?: string } }[]
  readonly lacks?: readonly string[]
  readonly sources?: Readonly<Record<string, string>>
  readonly confirmed?: { readonly by: string; readonly date: string; readonly edition: string }
  readonly 'decision-rule'?: WrittenDecisionRule
  readonly note?: string
}

/** Operators in the order in which a clause's limits are compiled and shown. */
export const WRITTEN_OPERATORS = ['at-least', 'above', 'at-most', 'below', 'between', 'magnitude-at-most', 'report'] as const satisfies readonly Operator[]
