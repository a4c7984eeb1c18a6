/** Changes of a source's results over its lots, each with its interval: no arrow ever stands alone. */
import { dateOf, type Moment } from '../core/measure/moment.ts'
import { property, type PropertyKey } from '../core/measure/properties.ts'
import { date } from './dates.ts'
import { plain, type Said, strong } from './said.ts'
import { listWords } from './sentences.ts'
import { differenceUnitOf } from './unit-signs.ts'
import { quantity, signed } from './units.ts'

interface Changing<Slope> {
  readonly property: PropertyKey
  readonly age?: { readonly text: string }
  readonly unit: string
  readonly slope: Slope
}

interface ShownSlope {
  readonly perTenLots: number
  readonly interval: { readonly low: number; readonly high: number; readonly level: number }
  readonly since: Moment | null
}

/** "Loss on ignition: +0.4 ± 0.2 points per 10 lots since 3 March 2025". */
export function slopeWords(changing: Changing<ShownSlope>): string {
  const since = changing.slope.since === null ? '' : ` since ${date(dateOf(changing.slope.since))}`
  return `${nameOf(changing)}: ${changeWords(changing)} per 10 lots${since}`
}

/**
 * The changes whose interval leaves out zero; else that none is shown, or that none can be told yet.
 * @param asked whether the results that govern are enough for a slope
 */
export function trendWords(changes: readonly string[], asked: boolean): Said[] {
  if (0 < changes.length) return [strong(changes.join('; '))]
  return [strong(asked ? 'none shown' : 'cannot be said yet')]
}

/** "Strength activity index, 7 d: −1.4 ± 7.5 points per 10 lots, 12 results on cement PC-C". */
export function noTrendWords(
  changing: Changing<ShownSlope | null>,
  { n, cements }: { readonly n: number; readonly cements: readonly string[] },
): Said[] {
  const { slope } = changing
  const on = cementWords(cements)
  const results = n === 1 ? '1 result' : `${n} results`
  if (slope === null)
    return [
      plain(
        `${nameOf(changing)}: ${results}${on} since the last change; too few, or too much alike, for a slope.`,
      ),
    ]
  return [plain(`${nameOf(changing)}: ${changeWords({ ...changing, slope })} per 10 lots, ${results}${on}.`)]
}

/** Several control cements stand in one stretch only where paired batches join them. */
function cementWords(cements: readonly string[]): string {
  if (cements.length === 0) return ''
  return cements.length === 1
    ? ` on control cement ${cements[0]}`
    : ` on the control cements ${listWords(cements, 'and')}, which paired batches join`
}

function nameOf({ property: key, age }: Pick<Changing<unknown>, 'property' | 'age'>): string {
  return [property(key).title, age?.text].filter((part) => part !== undefined).join(', ')
}

function changeWords({ property: key, unit, slope }: Changing<ShownSlope>): string {
  const decimals = Math.max(1, property(key).decimals)
  const points = differenceUnitOf(unit)
  const half = (slope.interval.high - slope.interval.low) / 2
  return `${signed(slope.perTenLots, decimals, '')} ± ${quantity(half, decimals, points)}`
}
