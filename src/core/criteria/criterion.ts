/**
 * Acceptance criteria as the core judges them: compiled from a record, every limit a quantity in the
 * property's stored unit. Longer than most files: these shapes name one another, and are read together.
 */
import type { Duty } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import { type Age, isSameAge } from '../measure/age.ts'
import type { MaterialKind } from '../measure/material-kind.ts'
import type { PropertyKey } from '../measure/properties.ts'
import type { Quantity } from '../measure/units.ts'

export type Operator = 'at-least' | 'at-most' | 'above' | 'below' | 'between' | 'magnitude-at-most' | 'report'

/** Stands in `Limit.byClass` for every class not named. */
export const EVERY_CLASS = '*'

/**
 * One operator with its limit for each class, or for EVERY_CLASS; `between` holds two quantities, `report`
 * none, others one.
 */
export interface Limit {
  readonly operator: Operator
  readonly byClass: Readonly<Record<string, readonly Quantity[]>>
}

export type DecisionRule =
  | { readonly rule: 'as-specified' }
  | { readonly rule: 'guarded'; readonly k: number; readonly agreedIn?: string }
  | { readonly rule: 'probability'; readonly p: number; readonly agreedIn?: string }

export type Basis = { readonly read: string } | { readonly memory: string }

/**
 * One demand on a lot's results that decides something else: every limit must hold for the value of the
 * property.
 */
export interface PropertyPremise {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly limits: readonly Limit[]
}
/**
 * Whether a demand of a band is on the very result that its clause classifies.
 * @param premise of a band; without a condition and an age of its own it takes the clause's
 * @param clause that the band stands in
 */
export function isOwnPremise(
  { property, condition, age }: PropertyPremise,
  clause: Pick<PropertyPremise, 'property' | 'condition' | 'age'>,
): boolean {
  return (
    property === clause.property &&
    (condition === undefined || condition === clause.condition) &&
    (age === undefined || isSameAge(age, clause.age))
  )
}

/** A fact stated of the lot, else of its source: the words that are asked for. */
export interface FactPremise {
  readonly fact: string
  readonly is: readonly string[]
}
export type Premise = PropertyPremise | FactPremise

/** The duties of samples that a clause may judge or count: those that verify are never judged. */
export type ClauseDuty = Exclude<Duty, 'verification'>

/** What a supplement did to a clause, in the order of the layers. */
export interface ClauseChange {
  readonly layer: string
  readonly change: 'tighten' | 'relax' | 'promote' | 'replace-method' | 'set-frequency' | 'set-decision-rule'
  /** The clause as it stood before, without its own changes. */
  readonly former: Clause
}

export interface ClauseHead {
  readonly id: string
  readonly title?: string
  readonly classes?: readonly string[]
  readonly kinds?: readonly MaterialKind[]
  /** The clause applies where all of these hold. */
  readonly when?: readonly Premise[]
  readonly optional: boolean
  readonly information: boolean
  readonly basis?: Basis
  /** Who or what set the limit; of a study, the condition by its code there and the age where it is not the clause's. */
  readonly setBy?: {
    readonly study?: string
    readonly user?: string
    readonly condition?: string
    readonly age?: Age
  }
  readonly decisionRule?: DecisionRule
  /** Id of the set that gave this clause its limits. */
  readonly layer: string
  readonly changes?: readonly ClauseChange[]
}

export type Deviation =
  | { readonly from: 'preceding'; readonly count: number; readonly relative: boolean }
  | { readonly from: 'declared' | 'control'; readonly relative: boolean }

/**
 * What is judged in place of the single result.
 * rolling-mean: mean of the result and those before it, `count` in all; variables: mean less or plus
 * tolerance factor times
 * standard deviation over a control period; attributes: how many results of the period lie beyond the limit;
 * tolerance: the
 * estimated share of results within the limits; variability: moving average and standard deviations,
 * reported; declared: the
 * value that the source declares.
 */
export type Statistic =
  | { readonly of: 'rolling-mean'; readonly count: number }
  | {
      readonly of: 'variables'
      readonly days: number
      readonly atLeast: number
      readonly share: number
      readonly confidence: number
    }
  | {
      readonly of: 'attributes'
      readonly days: number
      readonly acceptance: readonly { readonly from: number; readonly allow: number }[]
      readonly beyond?: { readonly factor: number; readonly less: number }
    }
  | { readonly of: 'tolerance'; readonly count: number; readonly atLeast: number; readonly share: number }
  | { readonly of: 'variability'; readonly count: number }
  | { readonly of: 'declared' }

/** One region of a classification: the first whose demands all hold gives its title. */
export interface Band {
  readonly title: string
  readonly where: readonly PropertyPremise[]
}

/**
 * A limit that may be exceeded up to an outer one, on an approval with evidence or on the source's own
 * declaration.
 */
export interface Approval {
  readonly limit: Limit
  readonly evidence: string
  readonly classes?: readonly string[]
  readonly by: 'approval' | 'declaration'
}

export interface Comparison extends ClauseHead {
  readonly form: 'comparison'
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  readonly limits: readonly Limit[]
  readonly bands?: readonly Band[]
  readonly deviation?: Deviation
  readonly statistic?: Statistic
  readonly several: 'worst' | 'mean' | 'latest'
  /**
   * Rounding step in the limit's written unit; the limit's written decimals without it; `none` compares
   * unrounded (ASTM E29, absolute method).
   */
  readonly resolution?: number | 'none'
  readonly approval?: Approval
  /** The clause counts as met without a test while these hold. */
  readonly deemedBy?: readonly Premise[]
  readonly method?: string
  /** Only results by `method` count. */
  readonly methodRequired?: true
  /** Only results that are computed from readings of specimens count. */
  readonly from?: 'readings'
  /** Only results on samples of this duty count, each for itself; preceding ones are samples, not lots. */
  readonly duty?: ClauseDuty
}

export interface Group extends ClauseHead {
  readonly form: 'group'
  readonly combine: 'any-of' | 'all-of'
  readonly members: readonly Clause[]
}

/** A fact that must be stated and be one of the words allowed: scope, fuel, treatment. */
export interface FactClause extends ClauseHead, FactPremise {
  readonly form: 'fact'
}

/** A document that must be on record and in force; an event of a kind in `voidOn` after it began ends it. */
export interface DocumentClause extends ClauseHead {
  readonly form: 'document'
  readonly document: string
  readonly voidOn: readonly string[]
}

/** Classes that are allowed; another class may be accepted as one of them on its composition. */
export interface ClassClause extends ClauseHead {
  readonly form: 'class'
  readonly allowed: readonly string[]
  readonly acceptedAs: readonly {
    readonly class: string
    readonly as: string
    readonly where: readonly Premise[]
  }[]
}

/** Longest time and largest mass between two tests; hours and tonnes. */
export interface Frequency {
  readonly hours?: number
  readonly tonnes?: number
  readonly written: string
}

/**
 * A test at least so often, whichever limit comes first; a new source, with records of less than `newFor`
 * days, at its own frequency.
 */
export interface SamplingClause extends ClauseHead {
  readonly form: 'sampling'
  readonly properties: readonly PropertyKey[]
  readonly every: Frequency
  readonly newSource?: Frequency & { readonly newFor: number }
  readonly sample?: 'grab' | 'composite'
  /** Only tests on samples of this duty count. */
  readonly duty?: ClauseDuty
}

export type Clause = Comparison | Group | FactClause | DocumentClause | ClassClause | SamplingClause

/** One set of the stack that a supplement rests on, the base first, the supplement itself last. */
export interface Layer {
  readonly id: string
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly authority?: string
  readonly confirmed?: { readonly by: string; readonly date: Moment; readonly edition: string }
  /** Where its limits were read, by code. */
  readonly sources: Readonly<Record<string, string>>
}

/** A clause of a lower layer that a supplement took out. */
export interface RemovedClause {
  readonly id: string
  readonly layer: string
  readonly by: string
  /** The clause as it stood, without its own changes. */
  readonly former: Clause
}

export interface Criterion {
  readonly id: string
  readonly title: string
  readonly designation?: string
  readonly edition: string
  readonly authority?: string
  readonly supersededBy?: string
  /** Name of that later set; missing where it has a fault. */
  readonly laterName?: string
  readonly kinds: readonly MaterialKind[]
  readonly classes: readonly string[]
  readonly classTitles: Readonly<Record<string, string>>
  /** Independent categories whose combinations, joined by "/", are the classes. */
  readonly axes?: readonly (readonly string[])[]
  /** The classes, or the categories of each axis, are listed from the most to the least demanding. */
  readonly bestFirst: boolean
  /** The class follows from the material, not from a claim: the first whose premises hold. */
  readonly classFrom?: readonly { readonly class: string; readonly where: readonly Premise[] }[]
  readonly clauses: readonly Clause[]
  readonly release: readonly {
    readonly clause: string
    readonly age?: Age
    readonly limits: readonly Limit[]
  }[]
  readonly decisionRule: DecisionRule
  readonly layers: readonly Layer[]
  readonly removed: readonly RemovedClause[]
  readonly lacks: readonly string[]
  /** What the specification says on retests and disputes; shown, never computed. */
  readonly retests?: string
  readonly note?: string
  /** The set whose demand on activity stands in this one's place, where the set is composed to answer "what if". */
  readonly activityOf?: Pick<Criterion, 'id' | 'title' | 'designation' | 'edition'>
}

/**
 * Clauses in reading order, a group before its members, however deep.
 * @param clauses of a set or of a group
 * @returns to be walked once
 */
export function* everyClause(clauses: readonly Clause[]): Generator<Clause> {
  for (const clause of clauses) {
    yield clause
    if (clause.form === 'group') yield* everyClause(clause.members)
  }
}

/**
 * The layer that a clause's limits come from.
 * @param id of the layer
 * @returns undefined where the set has no such layer
 */
export function layerOf(criterion: Criterion, id: string): Layer | undefined {
  return criterion.layers.find((layer) => layer.id === id)
}

/**
 * The name of a set or layer for a reader: no set is named without its edition.
 * @param designation as the standard body writes it; undefined for a set of no such body
 * @param title,edition of the set
 * @returns "ASTM C618, edition 12a": designation, else title
 */
export function setName({
  designation,
  title,
  edition,
}: {
  readonly designation?: string | undefined
  readonly title: string
  readonly edition: string
}): string {
  return `${designation ?? title}, edition ${edition}`
}

/**
 * The name of a layer; its id where the set has no such layer.
 * @param id of the layer
 */
export function layerTitle(criterion: Criterion, id: string): string {
  const layer = layerOf(criterion, id)
  return layer === undefined ? id : setName(layer)
}

/**
 * A set with a limit from memory that nobody has checked against the standard; its verdicts are trial
 * judgements.
 */
export function isUnconfirmed(criterion: Criterion): boolean {
  return unconfirmedClauses(criterion, 'memory').length > 0
}

/**
 * The layers of a set with a limit from memory that nobody has checked against the standard.
 * @returns the base first
 */
export function unconfirmedLayers(criterion: Criterion): Layer[] {
  const open = new Set(unconfirmedClauses(criterion, 'memory').map(({ layer }) => layer))
  return criterion.layers.filter(({ id }) => open.has(id))
}

/** A set with a limit that was read somewhere and that nobody has checked against the standard. */
export function isAsRead(criterion: Criterion): boolean {
  return unconfirmedClauses(criterion, 'read').length > 0
}

function unconfirmedClauses(criterion: Criterion, basis: 'memory' | 'read'): Clause[] {
  return [...everyClause(criterion.clauses)].filter(
    (clause) =>
      clause.basis !== undefined &&
      basis in clause.basis &&
      layerOf(criterion, clause.layer)?.confirmed === undefined,
  )
}

/**
 * The categories that a class is made of: itself, and one of each axis.
 * @param name of the class, "F" or "N/2"
 */
export function partsOfClass(name: string): readonly string[] {
  return name.includes('/') ? [name, ...name.split('/')] : [name]
}

/**
 * Whether a list of classes speaks of a class.
 * @param list classes or categories, for instance of a clause
 * @param name of the class, "F" or "N/2"
 */
export function includesClass(list: readonly string[], name: string): boolean {
  return partsOfClass(name).some((part) => list.includes(part))
}
