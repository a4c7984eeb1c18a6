/** What an agency's samples of a source show, in one statement at the head of its page. */
import { property, type PropertyKey, storedUnit } from '../core/measure/properties.ts'
import { plainNumber } from './numbers.ts'
import { counted, plain, type Said, strong } from './said.ts'
import { unitSign } from './unit-signs.ts'
import { signed } from './units.ts'

export interface AgencyCounts {
  readonly independent: number
  readonly split: number
  /** Beyond the limit of difference; null where no pair has one. */
  readonly beyond: number | null
  readonly opposite: number
  /** Of one property that is chosen before its differences are known, agency less producer. */
  readonly difference: {
    readonly property: PropertyKey
    /** "7 d"; null of a property without one. */
    readonly age: string | null
    readonly mean: number | null
    readonly interval: { readonly low: number; readonly high: number } | null
  } | null
  /** Properties that splits compare. */
  readonly compared: number
  /** Of them, those with a bias that is more than chance; null where findings are not published. */
  readonly biased: readonly PropertyKey[] | null
}

/**
 * "4 independent, 5 split; 1 beyond the precision limit; 1 on opposite sides of a limit; mean difference of splits, loss
 * on ignition, +0.55 ± 0.11 points; 5 other properties in D; of 6 compared, 1 with a bias shown: loss on ignition".
 */
export function agencyWords(counts: AgencyCounts | null): Said[] {
  if (counts === null) return [plain('Verification results are not published on this site')]
  const { independent, split, beyond, opposite, difference } = counts
  const head = [strong(String(independent)), plain(' independent, '), strong(String(split)), plain(' split')]
  if (split === 0) return head
  return [
    ...head,
    plain('; '),
    ...(beyond === null
      ? [plain('no precision limit on record')]
      : [counted(beyond), plain(' beyond the precision limit')]),
    ...differenceSaid(difference),
    plain('; '),
    counted(opposite),
    plain(' on opposite sides of a limit'),
  ]
}

/** "5 other properties in D; of 6 compared, 1 with a bias shown: loss on ignition": what the one difference leaves out. */
export function comparedWords({ difference, compared, biased }: AgencyCounts): Said[] {
  if (difference === null || difference.mean === null) return []
  const others = compared - 1
  const rest = others === 0 ? 'No other property compared' : `${others} other ${noun(others)} in D`
  return [plain(`${rest}${biasWords(compared, biased)}.`)]
}

function noun(count: number): string {
  return count === 1 ? 'property' : 'properties'
}

function biasWords(compared: number, biased: AgencyCounts['biased']): string {
  if (biased === null) return ''
  const names = biased.map((key) => lowerFirst(property(key).title)).join(', ')
  return biased.length === 0
    ? `; of ${compared} compared, none with a bias shown`
    : `; of ${compared} compared, ${biased.length} with a bias shown: ${names}`
}

function differenceSaid(difference: AgencyCounts['difference']): Said[] {
  if (difference === null || difference.mean === null) return []
  const { property: key, age, mean, interval } = difference
  const { decimals, title } = property(key)
  const half = interval === null ? '' : ` ± ${plainNumber((interval.high - interval.low) / 2, decimals)}`
  const unit = storedUnit(key) === '%' ? 'percentage points' : storedUnit(key)
  return [
    plain(`; mean difference of splits, ${lowerFirst(title)}${age === null ? '' : ` at ${age}`}, `),
    strong(`${signed(mean, decimals, '')}${half} ${unitSign(unit)}`.trim()),
  ]
}

function lowerFirst(title: string): string {
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}`
}
