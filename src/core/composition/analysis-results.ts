/**
 * Results of chemical and physical analyses as reported, and what follows from the oxides of one analysis.
 */
import { alkaliEquivalent, classByCalcium, K2O_AS_NA2O, oxideSum } from './oxides.ts'
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
import { type Bounds, boundsOfSum, isBounded, reportedBounds, type Term } from '../result/bounds.ts'
import type { ResultReason } from '../result/reason.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result } from '../result/result.ts'
import { boundsStep, type Figure, type Summand, type WorkingStep } from '../result/working.ts'
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
    bounds: reportedBounds(key, quantity),
    ...controlOf(key, figure, analysis),
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
function controlOf(
  key: PropertyKey,
  { condition, age }: ReportedFigure,
  { 'control-results': controls }: Analysis,
): { controlValue?: number; controlBounds?: Bounds | undefined } {
  const stated = controls !== undefined && Object.hasOwn(controls, key) ? controls[key] : undefined
  const figures = stated === undefined ? [] : figuresOf(stated)
  // Only figures of a mortar come in lists, and each belongs beside the one of its condition and age.
  const own = figures.find((other) => other.condition === condition && isSameAge(other.age, age))
  const quantity = (own ?? (figures.length === 1 ? figures[0] : undefined))?.value
  return quantity === undefined
    ? {}
    : { controlValue: quantity.value, controlBounds: reportedBounds(key, quantity) }
}

function printedDecimals(key: PropertyKey, quantity: Quantity): number {
  return quantity.unit === storedUnit(key) ? quantity.decimals : property(key).decimals
}

function derivedResults(reported: readonly Result[], analysis: Analysis, lot: LotEvidence): Result[] {
  const get = (key: PropertyKey) => reported.find((result) => result.property === key)
  return [
    ...oxideSumOf([get('SiO2'), get('Al2O3'), get('Fe2O3')], get('CaO'), analysis, lot),
    ...alkaliEquivalentOf(get('Na2O'), get('K2O'), analysis),
  ]
}

type Found = Result | undefined

function oxideSumOf(
  [silica, alumina, iron]: readonly [Found, Found, Found],
  lime: Found,
  analysis: Analysis,
  lot: LotEvidence,
): Result[] {
  if (silica === undefined || alumina === undefined || iron === undefined) return []
  const summands = [silica, alumina, iron]
  const sum = {
    value: oxideSum({ SiO2: silica.value, Al2O3: alumina.value, Fe2O3: iron.value }),
    bounds: boundsOfSum(summands.map((of): Term => ({ factor: 1, of }))),
  }
  return [
    fromOxides('oxide-sum', summands, sum, analysis, (result) => [
      { step: 'oxide-sum', summands: summands.map(summand), result },
      ...boundsStep(sum.bounds, result),
      ...classStep(lime, lot),
    ]),
  ]
}

function alkaliEquivalentOf(soda: Found, potash: Found, analysis: Analysis): Result[] {
  if (soda === undefined || potash === undefined) return []
  const sum = {
    value: alkaliEquivalent(soda.value, potash.value),
    bounds: boundsOfSum([
      { factor: 1, of: soda },
      { factor: K2O_AS_NA2O, of: potash },
    ]),
  }
  return [
    fromOxides('alkali-equivalent', [soda, potash], sum, analysis, (result) => [
      { step: 'alkali-equivalent', soda: summand(soda), potash: summand(potash), result },
      ...boundsStep(sum.bounds, result),
    ]),
  ]
}

function summand({ property: key, value, decimals, censored }: Result): Summand {
  return { property: key, value, decimals, below: censored === 'below' }
}

/**
 * The class that calcium oxide alone would give; only a coal ash has one, and a bound above the divider tells none.
 */
function classStep(lime: Found, lot: LotEvidence): WorkingStep[] {
  if (lime === undefined || !lime.valid) return []
  const byCalcium = classByCalcium(lime.value, lot.kind)
  if (byCalcium === null || (isBounded(lime) && byCalcium === 'C')) return []
  return [{ step: 'class-by-calcium', lime: summand(lime), class: byCalcium }]
}

/**
 * A member known only within bounds makes such a sum, which is said. Per cent of different wholes do not add up, so
 * members on different bases make a sum that is shown but not valid; so does a member that does not count.
 */
function fromOxides(
  key: 'oxide-sum' | 'alkali-equivalent',
  members: readonly Result[],
  { value, bounds }: { readonly value: number; readonly bounds: Bounds | undefined },
  analysis: Analysis,
  steps: (result: Figure) => WorkingStep[],
): Result {
  const { laboratory, sample, tested } = analysis
  const first = members[0] as Result
  const methods = new Set(members.map((member) => member.method))
  const method = methods.size === 1 ? first.method : undefined
  const [mixed, excluded] = [basesDiffer(members), members.filter((member) => !member.valid)]
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
    censored: bounds === undefined ? undefined : ('below' as const),
    bounds,
    n: 1,
    tested,
    known: lateKnown(analysis),
    valid: mixed.length === 0 && excluded.length === 0,
    reasons: [
      ...members.filter(isBounded).map(entersWithBound),
      ...mixed,
      ...excluded.flatMap((member) => member.reasons),
    ],
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
