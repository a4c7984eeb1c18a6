/** Working and readings behind a certificate's results. */
import { hoursOf } from './document-ages.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { property } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { quantity, resultText } from '../../words/units.ts'
import { withPrintedDates } from '../../words/stored-text.ts'
import type { WorkingLine } from '../../words/working-lines.ts'
import type { CertificateDocument, DocumentResult } from '../shape/document.ts'
import { judgements } from './document-clauses.ts'
import { conditionIn } from './document-names.ts'
import { type MortarReadings, mortarReadings } from './mortar-readings.ts'

export interface Annex {
  readonly workings: readonly Working[]
  readonly readings: readonly MortarReadings[]
}
export interface Working {
  readonly name: string
  readonly value: string
  readonly lines: readonly PrintedLine[]
}
/** A step of the computation with its value, or what a set makes of the result with its outcome. */
export interface PrintedLine {
  readonly label: string
  readonly text: string
  readonly note: string | null
  readonly value: string
  readonly outcome: Outcome | null
}

/** @returns null where there is nothing to show */
export function annex(document: CertificateDocument): Annex | null {
  const workings = workedResults(document).map((result) => ({
    name: nameOf(result, document),
    value: resultText(result),
    lines: [...result.working.map(workingLine), ...judgementLines(result, document)],
  }))
  const readings = document.mortars.map((mortar) => mortarReadings(mortar, document))
  return workings.length === 0 && readings.length === 0 ? null : { workings, readings }
}

/**
 * Indices first. An index's working holds the readings of both mortars, so that a strength or resistivity
 * beside it needs none of its own.
 */
function workedResults({ results }: CertificateDocument): DocumentResult[] {
  const [indices, others] = [results.filter(isIndex), results.filter((result) => !isIndex(result))]
  const indexed = new Set(
    indices
      .filter(({ age }) => age !== undefined)
      .map((index) => testOf({ ...index, property: RATIO_OF[index.property] })),
  )
  return [...indices, ...others].filter((result) => result.working.length > 0 && !indexed.has(testOf(result)))
}

function isIndex(result: DocumentResult): boolean {
  return property(result.property).nature === 'index'
}

function testOf({
  sample,
  condition,
  age,
  property: key,
}: Pick<DocumentResult, 'sample' | 'condition' | 'age'> & {
  readonly property?: string | undefined
}): string {
  return [sample, condition, hoursOf(age), key].join('|')
}

function nameOf(result: DocumentResult, document: CertificateDocument): string {
  const condition = conditionIn(document, result.condition)?.title ?? result.condition
  return [property(result.property).title, condition, result.age]
    .filter((part) => part !== undefined)
    .join(', ')
}

function workingLine({ label, expression, value, unit, decimals, source }: WorkingLine): PrintedLine {
  return {
    label,
    text: withPrintedDates(expression),
    note: source ?? null,
    value: value === undefined ? '' : quantity(value, decimals ?? 2, unit ?? ''),
    outcome: null,
  }
}

function judgementLines(result: DocumentResult, document: CertificateDocument): PrintedLine[] {
  return judgements(document, result).map((judgement) => ({ ...judgement, value: '' }))
}
