/** A criterion as its schema lets it through, still in its written form: what the compiling asks of it. */
import type { Moment } from '../../core/measure/moment.ts'
import type { Age } from '../../core/measure/age.ts'
import type { Operator } from '../../core/criteria/criterion.ts'
import type { Clause, CriterionRecord, Premise } from '../schema/loaded-records.ts'

/** Nothing of a record is changed by compiling it. */
type Immutable<T> = T extends Age | Moment ? T : { readonly [K in keyof T]: Immutable<T[K]> }

export type WrittenCriterion = Immutable<CriterionRecord>
export type WrittenClause = Immutable<Clause>
export type WrittenPremise = Immutable<Premise>

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

/** The operators of a clause, a `when`, a release entry or an approval. */
export type WrittenOperators = Pick<WrittenClause, (typeof WRITTEN_OPERATORS)[number]>
/** A limit with its unit, or one for each class. */
export type WrittenLimit = NonNullable<WrittenOperators['at-least']>

export type WrittenDecisionRule = NonNullable<WrittenClause['decision-rule']>
/** Durations and shares are quantities already: the schema names their kind. */
export type WrittenStatistic = NonNullable<WrittenClause['statistic']>
export type WrittenSampling = NonNullable<WrittenClause['sampling']>
export type WrittenFrequency = Pick<WrittenSampling, 'every' | 'or-every'>
export type WrittenChange = NonNullable<WrittenClause['change']>
