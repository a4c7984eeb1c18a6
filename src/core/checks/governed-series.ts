/** Which series of a source the checks of its history ask about, and how a finding names one. */
import type { Segment, SourceSeries } from '../history/source-history.ts'
import { dateOf } from '../measure/moment.ts'
import type { PropertyKey } from '../measure/properties.ts'
import { RATIO_OF } from '../measure/ratio-indices.ts'
import type { OfSegment, OfSeries } from './history-findings.ts'
import type { LotOnDay } from './testing-findings.ts'

/** Beside the indices: what a source of ash is steered by, own choice, so that a list of findings stays readable. */
const ALSO: readonly PropertyKey[] = ['loss-on-ignition', 'residue-45um']
/** Lots named: own choice. */
const SHOWN = 5

/**
 * Series that the governing criterion limits: the indices, loss on ignition and the residue on the 45 um sieve.
 * @param series of a source
 */
export function governedSeries(series: readonly SourceSeries[]): SourceSeries[] {
  return series.filter(
    ({ limits, property }) => 0 < limits.length && (property in RATIO_OF || ALSO.includes(property)),
  )
}

/** A segment with the series that it is of. */
export interface GovernedSegment {
  readonly series: SourceSeries
  readonly segment: Segment
  /** Of the series and the segment, for the id of a finding. */
  readonly place: readonly string[]
}

/**
 * Every segment of the governed series.
 * @param series of a source
 */
export function governedSegments(series: readonly SourceSeries[]): GovernedSegment[] {
  return governedSeries(series).flatMap((one) =>
    one.segments.map((segment, at) => {
      const same = one.segments.slice(0, at).filter(({ laboratory }) => laboratory === segment.laboratory)
      const ordinal = same.length === 0 ? [] : [String(same.length + 1)]
      return { series: one, segment, place: [...placeOf(one), segment.laboratory, ...ordinal] }
    }),
  )
}

/** Of a series, for the id of a finding. */
export function placeOf({ property, condition, age, duty, class: own }: SourceSeries): string[] {
  const beside = [condition, age?.text, own ?? undefined, duty === 'composite' ? undefined : duty]
  return [property, ...beside.filter((part) => part !== undefined)]
}

/**
 * What the parameters of a finding say of a series.
 * @param source id
 * @param n results looked at
 */
export function ofSeries(source: string, series: SourceSeries, n: number): OfSeries {
  const { property, condition, age, unit, decimals } = series
  return { source, property, condition: condition ?? null, age: age?.text ?? null, unit, decimals, n }
}

/**
 * What the parameters of a finding say of a segment: all its results are looked at.
 * @param source id
 */
export function ofSegment(source: string, { series, segment }: GovernedSegment): OfSegment {
  return { ...ofSeries(source, series, segment.places.length), laboratory: segment.laboratory }
}

/**
 * The newest lots at places of a series, the newest last, and how many there are: several samples of a lot are several
 * points, and the lot is named once.
 * @param places in rising order
 * @returns five lots at most; null for a lot that is not known
 */
export function newestLots(
  { points }: SourceSeries,
  places: readonly number[],
): { readonly lots: readonly (string | null)[]; readonly ofLots: number } {
  const lots = [...new Set(places.map((place) => points[place]?.named?.lot ?? null))]
  return { lots: lots.slice(-SHOWN), ofLots: lots.length }
}

/**
 * The lot at a place of a series, with its day.
 * @param place from 0
 * @returns null where no lot is known
 */
export function lotAt({ points }: SourceSeries, place: number): LotOnDay | null {
  const named = points[place]?.named
  return named === null || named === undefined ? null : { lot: named.lot, day: dateOf(named.sampled).text }
}
