/** Which series of a source stands closest to its limit. */
import { notShown, type Shown } from './not-shown.ts'
import { LEAST_SCATTER } from './segment-margins.ts'
import type { Closest, Segment, SourceSeries } from './source-history.ts'

/**
 * The limit that the newest segment of any series stands closest to: its mean margin in the standard deviation of all
 * segments of the series, each about its own mean.
 * @param series of a source
 * Note: a series none of whose segments has a standard deviation is passed over.
 */
export function closestLimit(series: readonly SourceSeries[]): Shown<Closest> {
  const limited = series.filter(({ limits, segments }) => 0 < limits.length && 0 < segments.length)
  if (limited.length === 0) return notShown({ code: 'no-limit', params: {} })
  const all = limited.flatMap(({ key, segments }) => {
    const deviation = sharedDeviation(segments)
    const segment = newestSegment(segments)
    return (segments[segment]?.margins ?? []).flatMap(({ mean }, margin) =>
      deviation === null ? [] : [{ closest: { series: key, segment, margin }, distance: mean / deviation }],
    )
  })
  const [first, ...others] = all
  if (first === undefined) {
    const n = limited.reduce((most, { segments }) => Math.max(most, longest(segments)), 0)
    return notShown({ code: 'too-few', params: { n, needed: LEAST_SCATTER } })
  }
  const { closest } = others.reduce((least, one) => (one.distance < least.distance ? one : least), first)
  return { shown: true, ...closest }
}

function longest(segments: readonly Pick<Segment, 'places'>[]): number {
  return segments.reduce((most, { places }) => Math.max(most, places.length), 0)
}

/** Pooled by degrees of freedom, JCGM 100:2008, 4.2.4. */
function sharedDeviation(segments: readonly Pick<Segment, 'scatter'>[]): number | null {
  const known = segments.flatMap(({ scatter }) => (scatter.shown ? [scatter] : []))
  const df = known.reduce((sum, { n }) => sum + n - 1, 0)
  const squares = known.reduce((sum, one) => sum + (one.n - 1) * one.standardDeviation ** 2, 0)
  return squares === 0 ? null : Math.sqrt(squares / df)
}

/**
 * The segment with the newest point.
 * @returns its place; −1 without any
 */
export function newestSegment(segments: readonly { readonly places: readonly number[] }[]): number {
  return segments.reduce(
    (newest, { places }, at) =>
      (segments[newest]?.places.at(-1) ?? -1) < (places.at(-1) ?? -1) ? at : newest,
    -1,
  )
}
