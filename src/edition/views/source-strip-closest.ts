/** The statement on the limit that a source's results stand nearest to. */
import { atLimitsSaid } from '../../words/at-the-limits.ts'
import { plain, type Said } from '../../words/said.ts'
import { closestWords, distanceWords } from '../../words/source-strip.ts'
import { distanceOf, type JudgedSeries } from './judged-series.ts'
import type { StripInput, StripLine } from './source-strip.ts'
import { panelFigure } from './source-strip-figures.ts'

export function closestLine({ closest, atLimits }: StripInput): StripLine {
  const smallest = closest?.values.reduce((a, b) => (b.judged.margin < a.judged.margin ? b : a))
  const last = closest?.values.at(-1)
  const says =
    closest === null || smallest === undefined || last === undefined
      ? closestWords(null)
      : closestWords({
          title: closest.title,
          value: last.judged.value,
          limit: last.judged.limit,
          n: closest.values.length,
          margin: `${smallest.judged.margin < 0 ? 'beyond by ' : ''}${smallest.judged.by}`,
          beyond: smallest.judged.margin < 0,
          alone: smallest.judged.margin < 0 && !smallest.lot.missed.includes(smallest.judged),
          at: smallest.lot.row,
        })
  return {
    label: 'Closest to its limit',
    section: 'charts',
    says,
    rest: [...(closest === null ? [] : distanceSaid(closest.values)), ...atLimitsSaid(atLimits)],
    figure: closest === null ? null : panelFigure(closest),
  }
}

function distanceSaid(values: JudgedSeries['values']): Said[] {
  const distance = distanceOf(values)
  if (distance === null)
    return [plain('Too few results for their scatter: margins are compared as shares of their limits. ')]
  return [plain(`${distanceWords(distance, values.at(-1)?.judged.turn ?? null)}. `)]
}
