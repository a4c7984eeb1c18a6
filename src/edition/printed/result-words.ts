/** Title, remarks and value of a row of results in words. */
import { defined } from '../../core/measure/defined.ts'
import { comparedFigure } from '../../words/compared-values.ts'
import { setName } from '../../core/criteria/criterion.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import type { Figure } from '../../core/result/working.ts'
import { shortDate } from '../../words/dates.ts'
import { propertyTitle } from '../../words/property-names.ts'
import { AS_REPORTED } from '../../words/result-reasons.ts'
import { boundsWords } from '../../words/bounds.ts'
import { besideLimit } from '../../words/limit-units.ts'
import { hasOther, type UnitSystem } from '../../words/unit-systems.ts'
import { quantity, resultText, signed } from '../../words/units.ts'
import type { CertificateFacts, CertificateResult } from '../shape/certificate-facts.ts'
import { type CertificateCondition, conditionIn, laboratoryNameIn } from './names.ts'
import type { WordedClause } from '../../words/worded-verdict.ts'
import type { TableRow } from './result-rows.ts'

/** Beside a result whose method is not on record. */
export const NO_METHOD = 'method not recorded'

/** A certificate, with what its results must name because there are several of it. */
export interface TableContext {
  readonly facts: CertificateFacts
  readonly severalLaboratories: boolean
  readonly severalSamples: boolean
  /** Beside a result whose method is not on record; undefined in a table that says it once. */
  readonly noMethod: string | undefined
}

/** An index at another condition than the standard's is always named with it. */
export function rowTitle(row: TableRow, { facts }: TableContext): string {
  if (row.kind === 'statistic' && row.clause !== null) return row.clause.title
  const condition = conditionIn(facts, row.condition)
  const title = propertyTitle(row.property, facts.units)
  const modified =
    condition === undefined || condition.standing === 'standard'
      ? title
      : `${title}, modified (${condition.title})`
  const aged = joined([modified, row.age], ', ')
  if (row.kind !== 'deviation' || row.clause === null) return aged
  const { against, title: own } = row.clause
  return against === undefined ? own : `${aged}, ${referenceWords(against)}`
}

function referenceWords({ from, n }: NonNullable<WordedClause['against']>): string {
  if (from === 'control') return 'against the control'
  if (from === 'declared') return 'against the declared value'
  return n === 1 ? 'against the one before' : `against the preceding ${n}`
}

/**
 * How and when a value was found, or what stands in its place, in parts set off by a dot.
 * @param withValue properties whose value has a row of its own in the table
 */
export function remarks(row: TableRow, context: TableContext, withValue: ReadonlySet<PropertyKey>): string {
  const { clause, result, under } = row
  if (row.kind === 'deviation')
    return joined([
      deviationWords(row, context.facts.units),
      ...(withValue.has(row.property) ? [] : originWords(result, context)),
    ])
  const reason = clause?.reason
  if (row.kind === 'statistic') return reason ?? ''
  const limit = under === null ? undefined : `limit of ${setName(under)}`
  return joined([...(result === null ? [reason] : testWords(row, result, context)), limit])
}

/** How the result of a row was found. */
function testWords(row: TableRow, result: CertificateResult, context: TableContext): (string | undefined)[] {
  const condition = conditionIn(context.facts, row.condition)
  return [
    mortarWords(result, context.facts.units),
    condition?.standing === 'standard' ? condition.title : undefined,
    condition?.standing === 'details-to-be-entered'
      ? 'details of the condition still to be entered from the standard'
      : undefined,
    methodWords(result, condition === undefined ? context.noMethod : undefined, condition),
    result.basis,
    result.n === 1 ? undefined : `n ${result.n}`,
    result.summaryOnly === true ? 'mean as reported' : undefined,
    result.finished === true ? AS_REPORTED : undefined,
    `tested ${shortDate(result.tested)}`,
    result.subcontracted === undefined ? undefined : `subcontracted: ${result.subcontracted}`,
    ...standingWords(result, context),
  ]
}

/** "test 25.8 MPa, control 29.7 MPa": an index is read beside the two that it is made of. */
function mortarWords({ mortars }: CertificateResult, units: UnitSystem): string | undefined {
  if (mortars === undefined) return undefined
  const words = ({ value, decimals, unit }: Figure) => quantity(value, decimals, unit, units)
  return `test ${words(mortars.test)}, control ${words(mortars.control)}`
}

/**
 * @param unstated where no method is on record
 * @param condition a modified one departs from the method that it follows
 */
export function methodWords(
  { property: key, method }: CertificateResult,
  unstated: string | undefined,
  condition?: Pick<CertificateCondition, 'standing'>,
): string | undefined {
  if (property(key).nature === 'derived') return 'computed'
  return method !== undefined && condition?.standing === 'modified'
    ? `after ${method}, modified`
    : (method ?? unstated)
}

/** Sample and laboratory where there are several, and a result outside the accreditation. */
export function standingWords(
  { sample, laboratory, accredited }: Pick<CertificateResult, 'sample' | 'laboratory' | 'accredited'>,
  { facts, severalSamples, severalLaboratories }: TableContext,
): string[] {
  return [
    ...(severalSamples ? [`sample ${sample}`] : []),
    ...(severalLaboratories ? [laboratoryNameIn(facts, laboratory)] : []),
    ...(accredited ? [] : notAccredited(facts, laboratory)),
  ]
}

/**
 * A laboratory without any accreditation on record may well have one. Where that is so of every laboratory, their own
 * lines say it once.
 */
function notAccredited({ laboratories }: CertificateFacts, id: string): string[] {
  const unknown = laboratories.filter(({ accreditationUnknown }) => accreditationUnknown === true)
  if (!unknown.some((laboratory) => laboratory.id === id)) return ['not accredited']
  return unknown.length === laboratories.length ? [] : ['accreditation not recorded']
}

/** Of a value that stands in a deviation's row alone. */
function originWords(result: CertificateResult | null, context: TableContext): (string | undefined)[] {
  if (result === null) return []
  return [
    result.method ?? context.noMethod,
    result.basis,
    result.n === 1 ? undefined : `n ${result.n}`,
    `tested ${shortDate(result.tested)}`,
    ...standingWords(result, context),
  ]
}

/** The value and what it deviates from; one decimal more for a mean. */
function deviationWords({ clause, result, property: key }: TableRow, units: UnitSystem): string {
  if (clause === null) return ''
  const found = result === null ? undefined : resultText(result, units)
  if (clause.against === undefined) return joined([found, clause.reason])
  const { from, mean, bounds } = clause.against
  const { decimals } = property(key)
  const unit = result?.unit ?? ''
  const own = found === undefined ? '' : `${found} against `
  const figure = (digits: number) =>
    bounds === undefined
      ? quantity(mean, digits, unit, units)
      : `what is ${boundsWords(bounds, digits, unit, units)}`
  if (from === 'control') return `${own}${figure(decimals)} of the control`
  return from === 'declared'
    ? `${own}${figure(decimals)} declared`
    : `${own}a mean of ${figure(decimals + 1)}`
}

export interface RowFigures {
  /** A dash where there is none. */
  readonly value: string
  /** What was rounded for the comparison, where that changed it. */
  readonly unrounded?: string
  /** The value in the site's unit, where it is compared in another. */
  readonly american?: string
}

/** The figure of a row: beside a limit as it was compared with it. */
export function rowFigures(row: TableRow, units: UnitSystem): RowFigures {
  const { clause, kind } = row
  const value = clause?.value ?? null
  if (clause === null || value === null || clause.limit === null || isWithinBounds(row))
    return { value: unjudgedFigure(row, units) }
  const shown = comparedFigure({ ...clause, value }, reportedDecimals(row))
  const { limit } = clause
  const unit = clause.unit ?? ''
  const print = kind === 'deviation' ? signed : quantity
  const beside = (figure: Pick<Figure, 'value' | 'decimals'>) => {
    const own = hasOther(unit, units) ? { ...figure, unit } : besideLimit({ ...figure, unit }, limit)
    return print(own.value, own.decimals, own.unit)
  }
  const { unrounded } = shown
  return defined({
    value: beside(shown),
    unrounded: unrounded && `${beside(unrounded)} before rounding`,
    american: hasOther(unit, units) ? print(shown.value, shown.decimals, unit, units) : undefined,
  })
}

/** No one figure was compared of a value that is known only within bounds. */
function isWithinBounds({ clause, result }: TableRow): boolean {
  return result?.censored !== undefined || clause?.bounds !== undefined
}

/** Of a result that no limit was held against, or that is no one figure. */
function unjudgedFigure({ clause, result, kind }: TableRow, units: UnitSystem): string {
  if (kind === 'value') return result === null ? '–' : resultText(result, units)
  if (clause === null || clause.value === null) return '–'
  const { value, bounds, decimals, unit } = clause
  if (bounds !== undefined) return boundsWords(bounds, decimals ?? 1, unit ?? '', units)
  const print = kind === 'deviation' ? signed : quantity
  return print(value, decimals ?? 1, unit ?? '', units)
}

function reportedDecimals({ clause, result, kind }: TableRow): number {
  if (kind === 'value') return result?.decimals ?? clause?.decimals ?? 1
  return Math.max(clause?.decimals ?? 1, kind === 'statistic' && clause?.unit === '' ? 0 : 1)
}

function joined(parts: readonly (string | undefined)[], separator = ' · '): string {
  return parts.filter((part) => part !== undefined && part !== '').join(separator)
}
