/** The figures that a set of criteria asks of a lot, so that a sheet for them can be laid out. */
import { type Clause, type Comparison, type Criterion, includesClass } from '../core/criteria/criterion.ts'
import { limitsForClass, statedLimit } from '../core/criteria/limits-for-class.ts'
import type { Age } from '../core/measure/age.ts'
import type { MaterialKind } from '../core/measure/material-kind.ts'
import { PROPERTIES, type PropertyKey, property } from '../core/measure/properties.ts'
import { isMortarResult } from '../core/measure/ratio-indices.ts'
import { limitsWords } from '../words/limits.ts'

/** Whom a set is asked for. */
export interface AskedOf {
  readonly kind: MaterialKind
  /** Class claimed; null without one. */
  readonly class: string | null
}

export interface AskedFigure {
  readonly property: PropertyKey
  readonly condition?: string
  readonly age?: Age
  /** The only method whose results count. */
  readonly method?: string
  /** The method that the specification names, for the laboratory's record. */
  readonly named?: string
  /** "at most 6.0 %"; empty where the figure is to be reported, compared with others or computed from. */
  readonly limit: string
}

/** What derived properties are made of, which is what a laboratory reports. */
const MADE_OF: Partial<Record<PropertyKey, readonly PropertyKey[]>> = {
  'oxide-sum': ['SiO2', 'Al2O3', 'Fe2O3'],
  'alkali-equivalent': ['Na2O', 'K2O'],
  'multiple-factor': ['loss-on-ignition', 'residue-45um'],
}

/**
 * The figures that a set's clauses need, each once, in the order of the list of properties, then by age. What is optional or
 * for information alone is not asked for.
 */
export function askedFigures(criterion: Criterion, of: AskedOf): AskedFigure[] {
  const figures = new Map<string, AskedFigure>()
  for (const figure of [...demanded(criterion.clauses, of)].flatMap(measured)) {
    const key = [figure.property, figure.condition, figure.age?.text].join('|')
    const before = figures.get(key)
    if (before === undefined || (before.limit === '' && figure.limit !== '')) figures.set(key, figure)
  }
  const places = Object.keys(PROPERTIES)
  return [...figures.values()].toSorted(
    (a, b) =>
      places.indexOf(a.property) - places.indexOf(b.property) || (a.age?.hours ?? 0) - (b.age?.hours ?? 0),
  )
}

/** Facts that a set asks for, in the order of its clauses. */
export function askedFacts(criterion: Criterion, of: AskedOf): string[] {
  return [...new Set(facts(criterion.clauses, of))]
}

/** Properties that a set compares with what the source declares. */
export function declaredProperties(criterion: Criterion, of: AskedOf): PropertyKey[] {
  const declared = [...comparisons(criterion.clauses, of)].filter(
    ({ deviation, statistic }) => deviation?.from === 'declared' || statistic?.of === 'declared',
  )
  return [...new Set(declared.map((clause) => clause.property))]
}

/** What a laboratory reports of a sample that is tested for these: derived properties by what they are made of. */
export function reportedOn(properties: readonly PropertyKey[]): PropertyKey[] {
  const measuredOn = properties.flatMap((key) => measured({ property: key, limit: '' }))
  return [...new Set(measuredOn.map((figure) => figure.property))].filter((key) => !isMortarResult(key))
}

function* comparisons(clauses: readonly Clause[], of: AskedOf): Generator<Comparison> {
  for (const clause of applicable(clauses, of)) {
    if (clause.form === 'group') yield* comparisons(clause.members, of)
    if (clause.form === 'comparison') yield clause
  }
}

function applicable(clauses: readonly Clause[], of: AskedOf): Clause[] {
  return clauses.filter(
    ({ optional, information, classes, kinds }) =>
      !optional &&
      !information &&
      (classes === undefined || of.class === null || includesClass(classes, of.class)) &&
      (kinds === undefined || kinds.includes(of.kind)),
  )
}

function* demanded(clauses: readonly Clause[], of: AskedOf): Generator<AskedFigure> {
  for (const clause of applicable(clauses, of)) {
    for (const premise of clause.when ?? [])
      if ('property' in premise) yield { ...testOf(premise), limit: '' }
    if (clause.form === 'group') yield* demanded(clause.members, of)
    if (clause.form === 'comparison' && speaksOf(clause, of)) yield asked(clause, of)
    if (clause.form === 'comparison')
      for (const band of clause.bands ?? [])
        for (const premise of band.where) yield { ...testOf(clause), ...testOf(premise), limit: '' }
  }
}

/** Whether some limit holds for the class, or the figure is to be reported; without a class every limit may hold. */
function speaksOf({ limits, bands, statistic }: Comparison, of: AskedOf): boolean {
  return (
    of.class === null ||
    bands !== undefined ||
    statistic !== undefined ||
    limits.some(({ operator }) => operator === 'report') ||
    limitsForClass(limits, of.class).length > 0
  )
}

function asked(clause: Comparison, of: AskedOf): AskedFigure {
  const isPlain = clause.deviation === undefined && clause.statistic === undefined
  const limits = limitsForClass(clause.limits, of.class).map(statedLimit)
  return {
    ...testOf(clause),
    ...(clause.method === undefined ? {} : { named: clause.method }),
    ...(clause.methodRequired === true && clause.method !== undefined ? { method: clause.method } : {}),
    limit: isPlain ? limitsWords(limits) : '',
  }
}

function testOf({
  property: key,
  condition,
  age,
}: Pick<AskedFigure, 'property' | 'condition' | 'age'>): Omit<AskedFigure, 'limit'> {
  const test = {
    ...(condition === undefined ? {} : { condition }),
    ...(age === undefined ? {} : { age }),
  }
  return { property: key, ...(isMortarResult(key) ? test : {}) }
}

function measured(figure: AskedFigure): AskedFigure[] {
  const parts = MADE_OF[figure.property]
  const { named } = figure
  if (parts !== undefined)
    return parts.map((key) => ({ property: key, ...(named === undefined ? {} : { named }), limit: '' }))
  return property(figure.property).nature === 'derived' ? [] : [figure]
}

function* facts(clauses: readonly Clause[], of: AskedOf): Generator<string> {
  for (const clause of applicable(clauses, of)) {
    const premises = [
      ...(clause.when ?? []),
      ...(clause.form === 'comparison' ? (clause.deemedBy ?? []) : []),
      ...(clause.form === 'fact' ? [clause] : []),
    ]
    for (const premise of premises) if ('fact' in premise) yield premise.fact
    if (clause.form === 'group') yield* facts(clause.members, of)
  }
}
