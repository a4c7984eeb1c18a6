/** What the results of a source near a limit show. */
import type { AtLimit } from '../core/checks/at-the-limits.ts'
import { limitWords } from './limits.ts'
import { countWords, shortNumber } from './numbers.ts'
import { plain, type Said } from './said.ts'
import { printedUnit, type UnitSystem } from './unit-systems.ts'
import { differenceUnitOf } from './unit-signs.ts'
import { quantity } from './units.ts'

const SHOWN: Readonly<Record<AtLimit['shown'], string>> = {
  bunched: 'Bunched just inside the limit',
  'not-bunched': 'No bunching shown',
  'too-few': 'Too few near the limit to say',
}

/** "At the limits: bunched, strength activity index, 7 d", or that none is, of all limits drawn. */
export function atLimitsSaid(
  limits: readonly { readonly title: string; readonly shown: AtLimit['shown'] }[],
): Said[] {
  if (limits.length === 0) return []
  const bunched = limits.filter(({ shown }) => shown === 'bunched').map(({ title }) => lowered(title))
  const none = limits.every(({ shown }) => shown === 'too-few')
    ? 'too few results near to say'
    : 'no bunching shown'
  const says = bunched.length === 0 ? none : `bunched just inside, ${bunched.join('; ')}`
  return [{ text: 'At the limits', part: 'at-the-limits' }, plain(`: ${says}. `)]
}

function lowered(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`
}

/**
 * The sentences beside a histogram.
 * @param diverted entries in the ledger of diverted material; null where none is kept
 */
export function atLimitWords(limit: AtLimit, diverted: number | null, units: UnitSystem): string[] {
  return [
    `${SHOWN[limit.shown]}: ${countsWords(limit, units)}.`,
    `Limit ${limitWords(limit.limit)}; before rounding the outcome changes at ${edgeWords(limit, units)}.`,
    ...(limit.shown === 'bunched' ? [divertedWords(diverted)] : []),
  ]
}

/** One digit more than results have, in the units of the site. */
function edgeWords({ edge, decimals, unit }: AtLimit, units: UnitSystem): string {
  const printed = printedUnit(unit, decimals, units)
  return quantity(printed.of(edge), Math.max(0, printed.decimals + 1), printed.unit)
}

function countsWords(
  { admitted, refused, fitted, width, unit, decimals, values }: AtLimit,
  units: UnitSystem,
): string {
  const printed = printedUnit(unit, decimals, units)
  const reach = printed.of(width) - printed.of(0)
  const near = quantity(reach, Math.max(0, printed.decimals + 1), differenceUnitOf(printed.unit))
  const found = `of ${countWords(values.length, 'result')}, ${admitted} within ${near} inside and ${refused} within as much beyond`
  if (fitted === null) return found
  const [inside, beyond] = [fitted.admitted, fitted.refused].map((count) => shortNumber(count, 1))
  return `${found}; ${inside} and ${beyond} expected from a normal density fitted to the others`
}

function divertedWords(diverted: number | null): string {
  if (diverted === null)
    return 'Diverted failing lots also cause this: no ledger of diverted material is kept.'
  return `Diverted failing lots also cause this: ${diverted} recorded.`
}
