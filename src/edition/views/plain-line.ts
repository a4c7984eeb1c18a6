/** One line of results without a limit, in words. */
import { hoursOf } from './document-ages.ts'
import { property } from '../../core/measure/properties.ts'
import { shortDate } from '../../words/dates.ts'
import { unbroken } from '../../words/sentences.ts'
import { resultText } from '../../words/units.ts'
import type { CertificateDocument, DocumentResult } from '../shape/document.ts'
import { conditionIn } from './document-names.ts'
import type { PlainResults } from './plain-results.ts'
import { methodWords, standingWords, type TableContext } from './result-words.ts'

export interface PlainLine {
  readonly items: readonly PlainItem[]
  /** What holds for the whole line: condition, methods, day, standing. */
  readonly remarks: string
}
export interface PlainItem {
  readonly name: string
  readonly value: string
  /** Age and day of a mortar's result, in brackets; empty for others. */
  readonly detail: string
  /** Why the result is not valid; null for a valid one. */
  readonly fault: string | null
}

export function plainLine(line: PlainResults, context: TableContext): PlainLine {
  const methods = line.results.map((result) => methodWords(result, 'method not recorded'))
  const parts = [
    conditionIn(context.document, line.condition)?.title,
    [...new Set(methods)].join(', '),
    line.condition === undefined ? `tested ${shortDate(line.tested)}` : undefined,
    ...standingWords(line, context),
  ]
  return {
    items: line.results.map((result) => plainItem(result, context.document)),
    remarks: unbroken(parts.filter((part) => part !== undefined).join(' · ')),
  }
}

function plainItem(result: DocumentResult, document: CertificateDocument): PlainItem {
  const { symbol, title } = property(result.property)
  return {
    name: symbol ?? title,
    value: resultText(result),
    detail: result.age === undefined ? '' : unbroken(` (${result.age}, ${shortDate(result.tested)})`),
    fault: result.valid ? null : faultWords(result, document),
  }
}

/** A fault that an index of the same test shares is told there alone. */
function faultWords(result: DocumentResult, { results }: CertificateDocument): string {
  const shared = results.some(
    (other) =>
      other.control !== undefined &&
      !other.valid &&
      other.condition === result.condition &&
      hoursOf(other.age) === hoursOf(result.age) &&
      other.reasons[0] === result.reasons[0] &&
      other.key !== result.key,
  )
  return shared ? ', see the index' : `: ${result.reasons.join('; ')}`
}
