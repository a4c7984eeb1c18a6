/** Acceptance criteria as the core judges them: compiled from a record, every limit a quantity in the property's stored unit. */
import type { PropertyKey } from './properties.ts'
import type { Quantity } from './units.ts'

export type MaterialKind =
  | 'coal-fly-ash' | 'coal-bottom-ash' | 'harvested-coal-ash' | 'raw-natural-pozzolan' | 'calcined-natural-pozzolan'
  | 'slag' | 'silica-fume' | 'blend' | 'limestone-filler' | 'quartz-filler'

export type Operator = 'at-least' | 'at-most' | 'above' | 'below' | 'between' | 'magnitude-at-most' | 'report'

/** Stands in `Limit.byClass` for every class not named. */
export const EVERY_CLASS = '*'

/** One operator with its limit for each class, or for EVERY_CLASS; `between` holds two quantities, `report` none, others one. */
export interface Limit {
  readonly operator: Operator
  readonly byClass: Readonly<Record<string, readonly Quantity[]>>
}

export type DecisionRule =
  | { readonly rule: 'as-specified' }
  | { readonly rule: 'guarded'; readonly k: number; readonly agreedIn?: string }
  | { readonly rule: 'probability'; readonly p: number; readonly agreedIn?: string }

export type Basis = { readonly read: string } | { readonly memory: string }

interface ClauseHead {
  readonly id: string
  readonly title?: string
  readonly classes?: readonly string[]
  readonly kinds?: readonly MaterialKind[]
  readonly when?: { readonly property: PropertyKey; readonly limits: readonly Limit[] }
  readonly optional: boolean
  readonly information: boolean
  readonly basis?: Basis
  readonly setBy?: { readonly study?: string; readonly user?: string; readonly condition?: string }
  readonly decisionRule?: DecisionRule
  /** Id of the set that gave this clause its limits. */
  readonly layer: string
}

export interface Comparison extends ClauseHead {
  readonly form: 'comparison'
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: string
  readonly limits: readonly Limit[]
  readonly deviation?: { readonly from: 'preceding'; readonly count: number; readonly relative: boolean } | { readonly from: 'declared'; readonly relative: boolean }
  readonly several: 'worst' | 'mean' | 'latest'
  /** Rounding step in the limit's written unit; the limit's written decimals without it. */
  readonly resolution?: number
  readonly approval?: { readonly limit: Limit; readonly evidence: string; readonly classes?: readonly string[] }
  readonly method?: string
}

export interface Group extends ClauseHead {
  readonly form: 'group'
  readonly combine: 'any-of' | 'all-of'
  readonly members: readonly Clause[]
}

export type Clause = Comparison | Group

export interface Criterion {
  readonly id: string
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly authority?: string
  readonly supersededBy?: string
  readonly kinds: readonly MaterialKind[]
  readonly classes: readonly string[]
  readonly classTitles: Readonly<Record<string, string>>
  readonly clauses: readonly Clause[]
  readonly release: readonly { readonly clause: string; readonly age?: string; readonly limits: readonly Limit[] }[]
  readonly decisionRule: DecisionRule
  readonly confirmed?: { readonly by: string; readonly date: string; readonly edition: string }
  readonly lacks: readonly string[]
  readonly sources: Readonly<Record<string, string>>
  readonly note?: string
}

/** Clauses in reading order, members after their group. */
export function* everyClause(clauses: readonly Clause[]): Generator<Clause> {
  for (const clause of clauses) {
    yield clause
    if (clause.form === 'group') yield* everyClause(clause.members)
  }
}

/** A set with a limit from memory that nobody has checked against the standard; its verdicts are trial judgements. */
export function isUnconfirmed(criterion: Criterion): boolean {
  if (criterion.confirmed !== undefined) return false
  return [...everyClause(criterion.clauses)].some((clause) => clause.basis !== undefined && 'memory' in clause.basis)
}
