/**
 * Results of chemical and physical analyses as reported, and what follows from the oxides of one analysis.
 */
import { alkaliEquivalent, classByCalcium, oxideSum } from './oxides.ts'
import {
  type Analysis,
  figuresOf,
  type LotEvidence,
  type ReportedFigure,
  sampleOf,
} from '../mortar/mortar.ts'
import { exclusionOn, knownFrom } from '../mortar/known-when.ts'
import { isSameAge } from '../measure/age.ts'
import { defined } from '../measure/defined.ts'
import type { Moment } from '../measure/moment.ts'
import { isPropertyKey, property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import { isFinishable } from '../measure/ratio-indices.ts'
import type { ResultReason } from '../result/reason.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result } from '../result/result.ts'
import type { Figure, Summand, WorkingStep } from '../result/working.ts'
import type { Quantity } from '../measure/units.ts'

/**
 * All results of one analysis: reported values first, then oxide sum and alkali equivalent where their oxides
 * are there.
 */
export function analysisResults(
  analysis: Analysis,
  role: 'producer' | 'verification',
  lot: LotEvidence,
): Result[] {
  const taken = sampleOf(analysis.sample, lot)
  const reported = Object.entries(analysis.results).flatMap(([key, value]) =>
    value !== undefined && isPropertyKey(key)
      ? figuresOf(value).map((figure) => reportedResult(key, figure, { analysis, role, taken, lot }))
      : [],
  )
  return [...reported, ...derivedResults(reported, analysis, lot)]
}

interface Place {
  readonly analysis: Analysis
  readonly role: 'producer' | 'verification'
  readonly taken: Pick<Result, 'sampleKind' | 'duty'>
  readonly lot: LotEvidence
}

function reportedResult(
  key: PropertyKey,
  figure: ReportedFigure,
  { analysis, role, taken, lot }: Place,
): Result {
  const quantity = figure.value
  const why = exclusionOn(figure, lot.asOf)
  const excluded: ResultReason[] = why === undefined ? [] : [{ code: 'value-excluded', params: { why } }]
  const { laboratory, sample, tested } = analysis
  const test = defined({
    property: key,
    condition: conditionOf(key, figure, lot),
    age: figure.age,
    method: figure.method ?? lot.methodOf(laboratory, key, tested),
  })
  return defined({
    key: resultKey({ ...test, laboratory, sample }),
    ...test,
    basis: figure.basis ?? property(key).basis,
    laboratory,
    sample,
    ...taken,
    role,
    value: quantity.value,
    unit: storedUnit(key),
    decimals: printedDecimals(key, quantity),
    written: quantity.written,
    censored: quantity.censored,
    controlValue: controlValueOf(key, figure, analysis),
    n: figure.of ?? 1,
    tested,
    known: lateKnown(analysis),
    finished: isFinishable(key) ? (true as const) : undefined,
    statedU: figure['standard-uncertainty']?.value,
    valid: excluded.length === 0,
    reasons: excluded,
    working: () => (isFinishable(key) ? asReported(key, quantity) : []),
  })
}

/** Any other reported value has no working: it is what the record says. */
function asReported(key: PropertyKey, quantity: Quantity): WorkingStep[] {
  const result = { value: quantity.value, unit: storedUnit(key), decimals: printedDecimals(key, quantity) }
  return [{ step: 'reported-figure', written: quantity.written, result }]
}

/** A water requirement at a standard's condition is the one that laboratories also report without a condition. */
function conditionOf(key: PropertyKey, { condition }: ReportedFigure, lot: LotEvidence): string | undefined {
  const isUsual = condition !== undefined && lot.conditions.get(condition)?.standing === 'standard'
  return key === 'water-requirement' && isUsual ? undefined : condition
}

/** When the results became known, where that was on a later day than the test. */
function lateKnown(analysis: Analysis): Moment | undefined {
  const known = knownFrom(analysis)
  return known.day === analysis.tested.day ? undefined : known
}

/** The same property of the control made beside, where the analysis states it. */
function controlValueOf(
  key: PropertyKey,
  { condition, age }: ReportedFigure,
  { 'control-results': controls }: Analysis,
): number | undefined {
  const value = controls !== undefined && Object.hasOwn(controls, key) ? controls[key] : undefined
  if (value === undefined) return undefined
  const figures = figuresOf(value)
  // Only figures of a mortar come in lists, and each belongs beside the one of its condition and age.
  const own = figures.find((other) => other.condition === condition && isSameAge(other.age, age))
  return (own ?? (figures.length === 1 ? figures[0] : undefined))?.value.value
}

function printedDecimals(key: PropertyKey, quantity: Quantity): number {
  return quantity.unit === storedUnit(key) ? quantity.decimals : property(key).decimals
}

function derivedResults(reported: readonly Result[], analysis: Analysis, lot: LotEvidence): Result[] {
  const counted = reported.filter((result) => result.valid)
  const get = (key: PropertyKey) => counted.find((result) => result.property === key)
  const [silica, alumina, iron] = [get('SiO2'), get('Al2O3'), get('Fe2O3')]
  const [soda, potash, lime] = [get('Na2O'), get('K2O'), get('CaO')]
  const derived: Result[] = []
  if (silica !== undefined && alumina !== undefined && iron !== undefined) {
    const value = oxideSum({ SiO2: silica.value, Al2O3: alumina.value, Fe2O3: iron.value })
    const summands = [silica, alumina, iron]
    derived.push(
      fromOxides('oxide-sum', summands, value, analysis, (result) => [
        { step: 'oxide-sum', summands: summands.map(summand), result },
        ...classStep(lime, lot),
      ]),
    )
  }
  if (soda !== undefined && potash !== undefined) {
    const value = alkaliEquivalent(soda.value, potash.value)
    derived.push(
      fromOxides('alkali-equivalent', [soda, potash], value, analysis, (result) => [
        { step: 'alkali-equivalent', soda: summand(soda), potash: summand(potash), result },
      ]),
    )
  }
  return derived
}

function summand({ property: key, value, decimals, censored }: Result): Summand {
  return { property: key, value, decimals, below: censored === 'below' }
}

/** The class that calcium oxide alone would give; only a coal ash has one. */
function classStep(lime: Result | undefined, lot: LotEvidence): WorkingStep[] {
  if (lime === undefined) return []
  const byCalcium = classByCalcium(lime.value, lot.kind)
  return byCalcium === null ? [] : [{ step: 'class-by-calcium', lime: summand(lime), class: byCalcium }]
}

/**
 * A censored member enters with its bound, so the sum is an upper bound: at most so much, which is said. Per
 * cent of different wholes do not add up, so members on different bases make a sum that is shown but not valid.
 */
function fromOxides(
  key: 'oxide-sum' | 'alkali-equivalent',
  members: readonly Result[],
  value: number,
  analysis: Analysis,
  steps: (result: Figure) => WorkingStep[],
): Result {
  const { laboratory, sample, tested } = analysis
  const first = members[0] as Result
  const bounds = members.filter((member) => member.censored === 'below')
  const methods = new Set(members.map((member) => member.method))
  const method = methods.size === 1 ? first.method : undefined
  const mixed = basesDiffer(members)
  const figure = {
    value,
    unit: storedUnit(key),
    decimals: Math.max(...members.map((member) => member.decimals)),
  }
  return defined({
    key: resultKey({ property: key, laboratory, sample, ...defined({ method }) }),
    property: key,
    method,
    basis: mixed.length === 0 ? first.basis : undefined,
    laboratory,
    sample,
    sampleKind: first.sampleKind,
    duty: first.duty,
    role: first.role,
    ...figure,
    censored: bounds.length === 0 ? undefined : ('below' as const),
    n: 1,
    tested,
    known: lateKnown(analysis),
    valid: mixed.length === 0,
    reasons: [...bounds.map(entersWithBound), ...mixed],
    working: () => steps(figure),
  })
}

function entersWithBound({ property: key, written }: Result): ResultReason {
  return { code: 'enters-with-bound', params: { property: key, written: written ?? null } }
}

function basesDiffer(members: readonly Result[]): ResultReason[] {
  if (new Set(members.map(({ basis }) => basis)).size === 1) return []
  const stated = members.map(({ property: key, basis }) => ({ property: key, basis: basis ?? null }))
  return [{ code: 'bases-differ', params: { members: stated } }]
}
