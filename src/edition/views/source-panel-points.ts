/** The points of a panel: where each lies, what it may be compared with, and what is read out at it. */
import type { PanelInput, PanelPoint } from '../../charts/panel.ts'
import { chartedState, meanBefore, resultReading } from '../../words/chart-readings.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { type PrintedUnit, printedUnit } from '../../words/unit-systems.ts'
import { unitSign } from '../../words/unit-signs.ts'
import type { Edition, Series, SeriesPoint } from '../shape/edition.ts'
import { type ChartTable, newestTable, numberHead, textHead } from './chart-table.ts'
import type { OwnLimit } from './source-limits.ts'
import { seriesKey, type SourceLot } from './source-lots.ts'
import type { PanelContext } from './source-panels.ts'

/** A result of a series with the lot that it belongs to. */
export interface ChartedPoint {
  readonly lot: SourceLot
  readonly point: SeriesPoint
  /** Beyond a limit of the governing set. */
  readonly outside: boolean
  /** Beyond it, and yet the lot does not fail by it: another result of the clause decides, or is awaited. */
  readonly alone: boolean
}

/** The results of a series that belong to the lots charted, in order of sampling. */
export function chartedPoints(
  { lots }: Pick<PanelContext, 'lots'>,
  series: Series,
  limits: readonly OwnLimit[],
): ChartedPoint[] {
  const byLot = new Map(lots.map((lot) => [lot.row.id, lot]))
  return series.points.flatMap((point) => {
    const lot = byLot.get(point.lot)
    if (lot === undefined) return []
    const outside = isOutside(point, limits)
    return [{ lot, point, outside, alone: outside && !isMissed(lot, series, point) }]
  })
}

function isOutside({ value }: SeriesPoint, limits: readonly OwnLimit[]): boolean {
  return value !== null && limits.some(({ low, high }) => value < low || high < value)
}

/** Whether the lot fails by the value. */
function isMissed({ missed }: SourceLot, { property }: Series, { value }: SeriesPoint): boolean {
  return missed.some((own) => own.property === property && own.number === value)
}

/** Values in the unit of the series, across as the axis says. */
export function panelPoints(
  { axis, laboratories, edition }: PanelContext,
  series: Series,
  { points, band }: { readonly points: readonly ChartedPoint[]; readonly band: PanelInput['band'] },
): PanelPoint[] {
  const key = seriesKey(series)
  const figure = figuresOf(series, edition.site.units)
  let before: { laboratory: string; cement?: string } | undefined
  return points.map(({ lot, point, outside, alone }): PanelPoint => {
    const { value, status, precedingMean } = point
    const origin = lot.origins.get(key)
    const breaks = before !== undefined && origin !== undefined && isBreak(edition, before, origin)
    if (origin !== undefined && status === 'valid') before = origin
    return {
      x: axis.of(lot),
      value,
      status,
      breaks,
      shape: Math.max(0, laboratories.indexOf(origin?.laboratory ?? '')),
      outside,
      alone,
      ...(precedingMean === undefined ? {} : { mean: precedingMean }),
      words: resultReading({
        of: lot.row.number,
        at: point.at,
        value: value === null ? null : figure(value),
        status,
        outside: outside && status === 'valid',
        remarks: remarksOf(point, band === undefined ? null : figure),
      }),
    }
  })
}

/** @param figure of the mean before it, where a band is drawn about that */
function remarksOf(
  { note, precedingMean, precedingCount = 0 }: SeriesPoint,
  figure: ((value: number) => string) | null,
): string[] {
  const mean =
    precedingMean === undefined || figure === null ? [] : [meanBefore(precedingCount, figure(precedingMean))]
  return [...(note === undefined ? [] : [note]), ...mean]
}

/** A value as it is printed, with its unit. */
export function figuresOf(
  series: Pick<Series, 'unit' | 'decimals'>,
  units: Edition['site']['units'],
): (value: number) => string {
  const { of, decimals, unit }: PrintedUnit = printedUnit(series.unit, series.decimals, units)
  return (value) => `${number(of(value), decimals, units)} ${unitSign(unit)}`.trim()
}

/** The newest results, the latest first. */
export function pointsTable(
  { edition }: Pick<PanelContext, 'edition'>,
  series: Series,
  points: readonly ChartedPoint[],
): ChartTable {
  const figure = figuresOf(series, edition.site.units)
  return newestTable(points, {
    heads: [textHead('Lot'), textHead('Sampled'), numberHead('Value'), textHead('State')],
    row: ({ lot, point: { at, value, status, note }, outside }) => ({
      lot: lot.row.id,
      cells: [
        lot.row.number,
        shortDate(at),
        value === null ? '' : figure(value),
        [
          chartedState(status),
          ...(outside ? ['outside the limit'] : []),
          ...(note === undefined ? [] : [note]),
        ].join(', '),
      ],
    }),
  })
}

interface MadeBy {
  readonly laboratory: string
  readonly cement?: string
}

/** Results of two laboratories or control cements are not compared unless paired batches join the cements. */
function isBreak({ laboratories }: Pick<Edition, 'laboratories'>, before: MadeBy, now: MadeBy): boolean {
  if (before.laboratory !== now.laboratory) return true
  if (before.cement === now.cement) return false
  const bridges = laboratories.get(now.laboratory)?.['cement-bridges'] ?? []
  return !bridges.some(
    ({ from, to }) =>
      (from === before.cement && to === now.cement) || (to === before.cement && from === now.cement),
  )
}
