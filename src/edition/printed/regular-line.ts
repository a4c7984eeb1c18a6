/** Averages and ranges of a lot's regular samples, beside the composite, as one line of a table. */
import { property, type Property } from '../../core/measure/properties.ts'
import { type RegularSummary, regularSummaries } from '../../core/result/regular-summary.ts'
import { propertyTitle } from '../../words/property-names.ts'
import { unbroken } from '../../words/sentences.ts'
import { resultText } from '../../words/units.ts'
import type { CertificateFacts, CertificateResult } from '../shape/certificate-facts.ts'
import type { PrintedItem, PrintedPlainLine } from '../shape/printed-certificate.ts'
import { propertyOrder } from './plain-results.ts'
import { methodWords } from './result-words.ts'

const LEAD = 'Regular samples of the lot taken together, beside the composite:'

/**
 * @param noMethod beside a result whose method is not on record
 * @returns none where no property of the group has two regular results
 */
export function regularLines(
  { results, units }: Pick<CertificateFacts, 'results' | 'units'>,
  group: Property['group'],
  noMethod: string | undefined,
): PrintedPlainLine[] {
  const summaries = regularSummaries(results)
    .filter(({ least }) => property(least.property).group === group)
    .toSorted((a, b) => propertyOrder(a.least) - propertyOrder(b.least))
  if (summaries.length === 0) return []
  const methods = summaries.map(({ least }) => methodWords(least, noMethod, undefined))
  return [
    {
      lead: LEAD,
      items: summaries.map((summary) => summaryItem(summary, units)),
      remarks: unbroken([...new Set(methods)].filter((method) => method !== undefined).join(', ')),
    },
  ]
}

/** "Loss on ignition mean 2.14 % (n 9, 1.90 % to 2.50 %; composite 2.10 %)". */
function summaryItem(
  { n, mean, least, most, composites }: RegularSummary<CertificateResult>,
  units: CertificateFacts['units'],
): PrintedItem {
  const { unit, decimals, property: key } = least
  const text = (result: CertificateResult) => resultText(result, units)
  const beside =
    composites.length === 0 ? 'not tested on a composite' : `composite ${composites.map(text).join(', ')}`
  return {
    name: property(key).symbol ?? propertyTitle(key, units),
    value: `mean ${resultText({ ...mean, unit, decimals }, units)}`,
    detail: unbroken(` (n ${n}, ${text(least)} to ${text(most)}; ${beside})`),
  }
}
