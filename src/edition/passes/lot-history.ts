/**
 * The short history that a certificate draws: the lot's own activity results with those of lots before it.
 */
import { type Age, isSameAge } from '../../core/measure/age.ts'
import { property, storedUnit } from '../../core/measure/properties.ts'
import type { PlannedTest, Result } from '../../core/result/result.ts'
import { latestAges } from '../../core/history/latest-ages.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import type { HistorySeries, LotHistory } from '../shape/lot-history.ts'
import type { HistoryLot } from '../../core/history/history.ts'
import { representative } from '../../core/history/representative.ts'
import { resultsOn } from '../../core/result/observation.ts'
import { toSignificant } from '../../core/measure/rounding.ts'

/** How far back a certificate looks. */
const POINTS = 24

/**
 * @param lots the source's lots in order of sampling
 * @param place the lot's place among them
 * @param own the lot's results and planned tests as known on the date
 * @param asOf calendar date; earlier lots' results obtained later are left out
 * @returns one history for each activity index and condition, at its latest age
 */
export function lotHistory(
  lots: readonly HistoryLot[],
  place: number,
  own: { results: readonly Result[]; planned: readonly PlannedTest[] },
  asOf: Moment,
): LotHistory {
  const lot = lots[place]
  if (lot === undefined) return []
  return latestAges([...own.results, ...own.planned]).map(({ property: key, condition, age }) => {
    const earlier = lotsBefore(lots, place, asOf).flatMap((other) =>
      point(other, resultsOn(other.lot, asOf), { key, condition, age }),
    )
    const now = point({ lot, place }, own.results, { key, condition, age })
    return {
      property: key,
      condition,
      age: age.text,
      unit: storedUnit(key),
      decimals: property(key).decimals,
      points: [
        ...earlier,
        ...(now.length > 0 ? now : [{ ...pointAt({ lot, place }), value: null, status: 'pending' as const }]),
      ],
    }
  })
}

interface Placed {
  readonly lot: HistoryLot
  readonly place: number
}

/** The last lots before a place that were sampled by the date, in their order. */
function lotsBefore(lots: readonly HistoryLot[], place: number, asOf: Moment): Placed[] {
  const found: Placed[] = []
  for (let index = place - 1; 0 <= index && found.length < POINTS - 1; index -= 1) {
    const lot = lots[index]
    if (lot !== undefined && isBy(lot.sampled, asOf)) found.push({ lot, place: index })
  }
  return found.reverse()
}

function pointAt({ lot, place }: Placed): Pick<HistorySeries['points'][number], 'place' | 'named'> {
  return { place, named: { lot: lot.id, at: lot.sampled.text } }
}

function point(
  placed: Placed,
  results: readonly Result[],
  of: { key: string; condition: string; age: Age },
): HistorySeries['points'] {
  const result = representative(
    results.filter(
      (candidate) =>
        candidate.property === of.key &&
        candidate.condition === of.condition &&
        isSameAge(candidate.age, of.age) &&
        candidate.role === 'producer',
    ),
  )
  return result === undefined
    ? []
    : [
        {
          ...pointAt(placed),
          // Six digits are enough to draw.
          value: toSignificant(result.value, 6),
          status: result.valid ? 'valid' : 'not-valid',
        },
      ]
}
