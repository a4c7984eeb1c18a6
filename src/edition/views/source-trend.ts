/** Whether the governing results of a source rise or fall over its lots: a change with its interval, or none. */
import type { Segment, SourceSeries } from '../../core/history/source-history.ts'
import type { Said } from '../../words/said.ts'
import { noTrendWords, slopeWords, trendWords } from '../../words/source-trend.ts'
import { seriesKey } from './source-lots.ts'
import type { StripInput } from './source-strip.ts'

/** Series that the statement looks at beside the governing one. */
const ALSO = ['loss-on-ignition', 'residue-45um']

/** A change is stated where its interval leaves out zero; the governing series stands beside it in any case. */
export function trendSaid({ source, governing }: Pick<StripInput, 'source' | 'governing'>): {
  says: Said[]
  rest: Said[]
} {
  const { series } = source.history()
  const own = longest(series.filter((one) => seriesKey(one) === governing))
  const others = ALSO.flatMap((key) => longest(series.filter(({ property }) => property === key)) ?? [])
  const asked = [...new Set([...(own === undefined ? [] : [own]), ...others])]
  const clear = asked.flatMap((one) => {
    const slope = one.segments.at(-1)?.slope
    return slope?.shown === true && slope.clear ? [slopeWords({ ...one, slope })] : []
  })
  const last = own?.segments.at(-1)
  return {
    says: trendWords(clear, last?.slope.shown === true),
    rest: own === undefined || last === undefined ? [] : governingSaid(own, last),
  }
}

function longest(series: readonly SourceSeries[]): SourceSeries | undefined {
  return [...series].sort((a, b) => b.points.length - a.points.length)[0]
}

function governingSaid(series: SourceSeries, { slope, places, cements }: Segment): Said[] {
  if (slope.shown && slope.clear) return []
  const stretch = { n: places.length, cements }
  return slope.shown
    ? noTrendWords({ ...series, slope }, stretch)
    : noTrendWords({ ...series, slope: null }, stretch)
}
