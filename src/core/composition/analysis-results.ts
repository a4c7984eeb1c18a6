/**
 * Results of chemical and physical analyses as reported, and what follows from the oxides of one analysis.
 */
import { classByCalcium, alkaliEquivalent, oxideSum } from './oxides.ts'
import {
  type Analysis,
  isQuantity,
  kindOfSample,
  type LotEvidence,
  type ReportedValue,
} from '../mortar/mortar.ts'
import { isPropertyKey, property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result, WorkingLine } from '../result/result.ts'
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
  const sampleKind = kindOfSample(analysis.sample, lot)
  const reported = Object.entries(analysis.results).flatMap(([key, value]) =>
    value !== undefined && isPropertyKey(key)
      ? [reportedResult(key, value, { analysis, role, sampleKind, lot })]
      : [],
  )
  return [...reported, ...derivedResults(reported, analysis, lot)]
}

interface Place {
  readonly analysis: Analysis
  readonly role: 'producer' | 'verification'
  readonly sampleKind: Result['sampleKind']
  readonly lot: LotEvidence
}

function reportedResult(
  key: PropertyKey,
  value: ReportedValue,
  { analysis, role, sampleKind, lot }: Place,
): Result {
  const detail = isQuantity(value) ? { value } : value
  const quantity = detail.value
  const method = detail.method ?? lot.methodOf(analysis.laboratory, key, analysis.tested)
  const excluded = detail.excluded === undefined ? [] : [`excluded: ${detail.excluded}`]
  return {
    key: resultKey({
      property: key,
      laboratory: analysis.laboratory,
      sample: analysis.sample,
      ...(method === undefined ? {} : { method }),
    }),
    property: key,
    ...(method === undefined ? {} : { method }),
    ...basisOf(key, detail.basis),
    laboratory: analysis.laboratory,
    sample: analysis.sample,
    sampleKind,
    role,
    value: quantity.value,
    unit: storedUnit(key),
    decimals: printedDecimals(key, quantity),
    written: quantity.written,
    ...(quantity.censored === undefined ? {} : { censored: quantity.censored }),
    ...controlOf(key, analysis),
    n: detail.of ?? 1,
    tested: analysis.tested,
    valid: excluded.length === 0,
    reasons: excluded,
    // A reported value has no working: it is what the record says.
    working: () => [],
  }
}

/** The same property of the control made beside, where the analysis states it. */
function controlOf(key: PropertyKey, { 'control-results': controls }: Analysis): { controlValue?: number } {
  const value = controls !== undefined && Object.hasOwn(controls, key) ? controls[key] : undefined
  return value === undefined ? {} : { controlValue: (isQuantity(value) ? value : value.value).value }
}

function basisOf(key: PropertyKey, stated: string | undefined): { basis?: string } {
  const basis = stated ?? property(key).basis
  return basis === undefined ? {} : { basis }
}

function printedDecimals(key: PropertyKey, quantity: Quantity): number {
  return quantity.unit === storedUnit(key) ? quantity.decimals : property(key).decimals
}

function derivedResults(reported: readonly Result[], analysis: Analysis, lot: LotEvidence): Result[] {
  const counted = reported.filter((result) => result.valid)
  const get = (key: PropertyKey) => counted.find((result) => result.property === key)
  const [silica, alumina, iron, soda, potash, lime] = [
    get('SiO2'),
    get('Al2O3'),
    get('Fe2O3'),
    get('Na2O'),
    get('K2O'),
    get('CaO'),
  ]
  const derived: Result[] = []
  if (silica !== undefined && alumina !== undefined && iron !== undefined) {
    derived.push(
      fromOxides(
        'oxide-sum',
        [silica, alumina, iron],
        oxideSum({ SiO2: silica.value, Al2O3: alumina.value, Fe2O3: iron.value }),
        {
          analysis,
          line: { label: 'sum', expression: `${shown(silica)} + ${shown(alumina)} + ${shown(iron)} %` },
          note: classNote(lime, lot),
        },
      ),
    )
  }
  if (soda !== undefined && potash !== undefined) {
    derived.push(
      fromOxides('alkali-equivalent', [soda, potash], alkaliEquivalent(soda.value, potash.value), {
        analysis,
        line: { label: 'equivalent', expression: `${shown(soda)} + 0.658 × ${shown(potash)} %` },
        note: [],
      }),
    )
  }
  return derived
}

function shown(result: Result): string {
  return `${result.censored === 'below' ? '<' : ''}${result.value.toFixed(result.decimals)}`
}

/** The class that calcium oxide alone would give, as a line of the working of the oxide sum. */
function classNote(lime: Result | undefined, lot: LotEvidence): WorkingLine[] {
  const byCalcium = lime === undefined ? null : classByCalcium(lime.value, lot.kind)
  return lime === undefined || byCalcium === null
    ? []
    : [
        {
          label: 'for information',
          expression: `CaO ${shown(lime)} %: class ${byCalcium} by the divider of 18 %`,
          source: 'ASTM C618, edition 19; at exactly 18.0 from memory',
        },
      ]
}

/**
 * A censored member enters with its bound, so the sum is an upper bound: at most so much, which is said. Per
 * cent of different
 * wholes do not add up, so members on different bases make a sum that is shown but not valid.
 */
function fromOxides(
  key: 'oxide-sum' | 'alkali-equivalent',
  members: readonly Result[],
  value: number,
  { analysis, line, note }: { analysis: Analysis; line: WorkingLine; note: readonly WorkingLine[] },
): Result {
  const first = members[0] as Result
  const bounds = members.filter((member) => member.censored === 'below')
  const methods = [...new Set(members.map((member) => member.method))]
  const method = methods.length === 1 ? methods[0] : undefined
  const decimals = Math.max(...members.map((member) => member.decimals))
  const bases = new Set(members.map((member) => member.basis))
  const stated = members.map((member) => `${member.property} ${member.basis ?? 'not stated'}`)
  const mixed = bases.size === 1 ? [] : [`the oxides are on different bases: ${stated.join(', ')}`]
  const bounded = bounds.map(
    (member) =>
      `${member.property} is reported as ${member.written ?? 'below a bound'} and enters with that bound`,
  )
  return {
    key: resultKey({
      property: key,
      laboratory: analysis.laboratory,
      sample: analysis.sample,
      ...(method === undefined ? {} : { method }),
    }),
    property: key,
    ...(method === undefined ? {} : { method }),
    ...(first.basis === undefined || bases.size > 1 ? {} : { basis: first.basis }),
    laboratory: analysis.laboratory,
    sample: analysis.sample,
    sampleKind: first.sampleKind,
    role: first.role,
    value,
    unit: '%',
    decimals,
    ...(bounds.length === 0 ? {} : { censored: 'below' as const }),
    n: 1,
    tested: analysis.tested,
    valid: mixed.length === 0,
    reasons: [...bounded, ...mixed],
    working: () => [{ ...line, value, unit: '%', decimals }, ...note],
  }
}
