/** Histories as the check report carries them: figures and what they rest on, without what follows from the points. */
import type { ControlBatchSeries, LaboratoryHistory } from '../../core/history/laboratory-history.ts'
import type { Shown } from '../../core/history/not-shown.ts'
import type { EwmaChart } from '../../core/history/segment-figures.ts'
import type { Segment, SourceHistory, SourceSeries } from '../../core/history/source-history.ts'

/** A point stands at its place in `points`, which segments and signals refer to. */
export function sourceStatistics({ series, closest, uniformity, predictions }: SourceHistory): unknown {
  return { series: series.map(seriesData), closest, uniformity, predictions }
}

function seriesData({ points, segments, ...series }: SourceSeries): unknown {
  return {
    ...series,
    points: points.map(({ named, value, status }) => ({ lot: named?.lot ?? null, value, status })),
    segments: segments.map(segmentData),
  }
}

/** Averages follow from the points and the design that is stated. */
function segmentData({ movingAverage, ewma, ...segment }: Segment): unknown {
  return { ...segment, movingAverage: movingAverage.at(-1) ?? null, ewma: designOf(ewma) }
}

function designOf(ewma: Shown<EwmaChart>): unknown {
  if (!ewma.shown) return ewma
  const { points: _, ...design } = ewma
  return design
}

export function laboratoryStatistics({ laboratory, series }: LaboratoryHistory): Record<string, unknown> {
  return { id: laboratory, series: series.map(batchSeriesData) }
}

function batchSeriesData({ points, segments, ...series }: ControlBatchSeries): unknown {
  return {
    ...series,
    points: points.map(({ named, ...point }) => ({ batch: named?.batch ?? null, ...point })),
    segments: segments.map(({ cusum, movingAverage: _, ewma, ...segment }) => ({
      ...segment,
      ewma: designOf(ewma),
      cusum: cusum.shown ? { shown: true, reference: cusum.reference, decision: cusum.decision } : cusum,
    })),
  }
}
