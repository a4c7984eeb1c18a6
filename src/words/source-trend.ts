/** Changes of a source's results over its lots, each with its interval: no arrow ever stands alone. */
import type { Moment } from '../core/measure/moment.ts'
import { property, type PropertyKey } from '../core/measure/properties.ts'
import { date } from './dates.ts'
import { plain, type Said, strong } from './said.ts'
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
  const since = changing.slope.since === null ? '' : ` since ${date(changing.slope.since)}`
  return `${nameOf(changing)}: ${changeWords(changing)} per 10 lots${since}`
}

/** The changes whose interval leaves out zero, else that none is shown. */
export function trendWords(changes: readonly string[]): Said[] {
  return changes.length === 0 ? [strong('none shown')] : [strong(changes.join('; '))]
}

/** "Strength activity index, 7 d: −1.4 ± 7.5 points per 10 lots, 12 results on cement PC-C". */
export function noTrendWords(
  changing: Changing<ShownSlope | null>,
  { n, cement }: { readonly n: number; readonly cement: string | null },
): Said[] {
  const { slope } = changing
  const on = cement === null ? '' : ` on control cement ${cement}`
  const results = n === 1 ? '1 result' : `${n} results`
  if (slope === null)
    return [
      plain(
        `${nameOf(changing)}: ${results}${on} since the last change; too few, or too much alike, for a slope.`,
      ),
    ]
  return [plain(`${nameOf(changing)}: ${changeWords({ ...changing, slope })} per 10 lots, ${results}${on}.`)]
}

function nameOf({ property: key, age }: Pick<Changing<unknown>, 'property' | 'age'>): string {
  return [property(key).title, age?.text].filter((part) => part !== undefined).join(', ')
}

function changeWords({ property: key, unit, slope }: Changing<ShownSlope>): string {
  const decimals = Math.max(1, property(key).decimals)
  const points = unit === '%' ? 'percentage points' : unit
  const half = (slope.interval.high - slope.interval.low) / 2
  return `${signed(slope.perTenLots, decimals, '')} ± ${quantity(half, decimals, points)}`
}
