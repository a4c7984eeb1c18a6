/** Histories without what is not shown: its values count and stand bare. */
import { closestLimit } from '../../core/history/closest-limit.ts'
import type { LaboratoryHistory } from '../../core/history/laboratory-history.ts'
import type { Shown } from '../../core/history/not-shown.ts'
import type { Slope } from '../../core/history/segment-figures.ts'
import type {
  AgePrediction,
  HistoryPoint,
  Segment,
  SourceHistory,
  SourceSeries,
  Step,
} from '../../core/history/source-history.ts'

type IsShown = (id: string) => boolean

/**
 * The history of a source without what names a lot that is not shown.
 * @param isShown of a lot's id
 * Note: a series of which no lot is shown is left out, and so are laboratories, cements and days that only others know.
 */
export function publicSourceHistory(history: SourceHistory, isShown: IsShown): SourceHistory {
  const series = history.series.flatMap((one) => publicSeries(one, isShown))
  return {
    ...history,
    series,
    closest: closestLimit(series),
    uniformity: history.uniformity.map((count) => ({
      ...count,
      lots: count.lots.map((id) => (id !== null && isShown(id) ? id : null)),
    })),
    predictions: history.predictions.flatMap((one) => publicPrediction(one, series, isShown)),
  }
}

function publicSeries(series: SourceSeries, isShown: IsShown): SourceSeries[] {
  const points = series.points.map((point) => barePoint(point, isShown))
  const known = points.filter(({ named }) => named !== null)
  if (known.length === 0) return []
  return [
    {
      ...series,
      points,
      segments: series.segments.map((segment) => publicSegment(segment, points)),
      steps: series.steps.filter((step) => isPublicStep(step, known)),
    },
  ]
}

function barePoint(point: HistoryPoint, isShown: IsShown): HistoryPoint {
  return point.named === null || isShown(point.named.lot) ? point : { ...point, named: null }
}

/** Of a segment none of whose lots is shown, laboratory and cements stay unnamed. */
function publicSegment(segment: Segment, points: readonly HistoryPoint[]): Segment {
  const own = segment.places.flatMap((place) => points[place]?.named ?? [])
  const cements = new Set(own.map(({ cement }) => cement))
  return {
    ...segment,
    laboratory: own.length === 0 ? '' : segment.laboratory,
    cements: segment.cements.filter((cement) => cements.has(cement)),
    slope: publicSlope(segment.slope, points),
  }
}

function publicSlope(slope: Shown<Slope>, points: readonly HistoryPoint[]): Shown<Slope> {
  if (!slope.shown) return slope
  return { ...slope, since: points[slope.from]?.named?.sampled ?? null }
}

/** Events are the source's own; a change of laboratory or cement is known by the first lot after it. */
function isPublicStep({ event }: Step, known: readonly HistoryPoint[]): boolean {
  if (event.by === 'event') return true
  const of = event.by === 'laboratory' ? 'laboratory' : 'cement'
  const names = new Set(known.map(({ named }) => named?.[of]))
  const isDated = known.some(({ named }) => named?.sampled.day === event.date?.day)
  return isDated && names.has(event.from) && names.has(event.to)
}

function publicPrediction(
  prediction: AgePrediction,
  series: readonly SourceSeries[],
  isShown: IsShown,
): AgePrediction[] {
  const isKnown = series.some(
    ({ property, condition, points }) =>
      property === prediction.property &&
      condition === prediction.condition &&
      points.some(({ named }) => named?.laboratory === prediction.laboratory),
  )
  if (!isKnown) return []
  const { fit } = prediction
  return [
    fit.shown
      ? { ...prediction, fit: { ...fit, open: fit.open.filter(({ lot }) => isShown(lot)) } }
      : prediction,
  ]
}

/**
 * The history of a laboratory without what names a batch that is not shown.
 * @param isShown of a control batch's id
 */
export function publicLaboratoryHistory(history: LaboratoryHistory, isShown: IsShown): LaboratoryHistory {
  return {
    ...history,
    series: history.series.flatMap((series) => {
      const points = series.points.map((point) =>
        point.named === null || isShown(point.named.batch) ? point : { ...point, named: null },
      )
      if (points.every(({ named }) => named === null)) return []
      const cements = new Set(points.map(({ named }) => named?.cement))
      return [
        {
          ...series,
          points,
          segments: series.segments.map((segment) => ({
            ...segment,
            cements: segment.cements.filter((cement) => cements.has(cement)),
            slope: segment.slope.shown
              ? { ...segment.slope, since: points[segment.slope.from]?.named?.cast ?? null }
              : segment.slope,
          })),
        },
      ]
    }),
  }
}
