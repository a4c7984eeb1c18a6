/** One line of results without a limit, in words. */
import { defined } from '../../core/measure/defined.ts'
import { hoursOf } from './ages.ts'
import { property } from '../../core/measure/properties.ts'
import { propertyTitle } from '../../words/property-names.ts'
import { shortDate } from '../../words/dates.ts'
import { AS_REPORTED } from '../../words/result-reasons.ts'
import { unbroken } from '../../words/sentences.ts'
import { resultText } from '../../words/units.ts'
import type { CertificateFacts, CertificateResult } from '../shape/certificate-facts.ts'
import type { PrintedItem, PrintedPlainLine } from '../shape/printed-certificate.ts'
import { conditionIn } from './names.ts'
import type { PlainResults } from './plain-results.ts'
import { methodWords, standingWords, type TableContext } from './result-words.ts'

export function plainLine(line: PlainResults, context: TableContext): PrintedPlainLine {
  const condition = conditionIn(context.facts, line.condition)
  const methods = line.results.map((result) => methodWords(result, context.noMethod, condition))
  const parts = [
    condition?.title,
    [...new Set(methods)].filter((method) => method !== undefined).join(', ') || undefined,
    line.results.some(({ finished }) => finished === true) ? AS_REPORTED : undefined,
    line.condition === undefined ? `tested ${shortDate(line.tested)}` : undefined,
    ...standingWords(line, context),
  ]
  return {
    items: line.results.map((result) => plainItem(result, context.facts)),
    remarks: unbroken(parts.filter((part) => part !== undefined).join(' · ')),
  }
}

function plainItem(result: CertificateResult, facts: CertificateFacts): PrintedItem {
  const { symbol } = property(result.property)
  return defined({
    name: symbol ?? propertyTitle(result.property, facts.units),
    value: resultText(result, facts.units),
    detail: result.age === undefined ? undefined : unbroken(` (${result.age}, ${shortDate(result.tested)})`),
    fault: result.valid ? undefined : faultWords(result, facts),
  })
}

/** A fault that an index of the same test shares is told there alone. */
function faultWords(result: CertificateResult, { results }: CertificateFacts): string {
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
