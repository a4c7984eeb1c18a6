/** Results of a source at the limits that they are judged by: a histogram each, with what is expected near the edge. */
import { histogram, type HistogramModel } from '../../charts/histogram.ts'
import type { AtLimit } from '../../core/checks/at-the-limits.ts'
import { property } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { mean, standardDeviation } from '../../core/statistics/descriptive.ts'
import { cumulative } from '../../core/statistics/distributions.ts'
import { atLimitWords } from '../../words/at-the-limits.ts'
import { barReading } from '../../words/chart-readings.ts'
import { fixedDigits } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { type PrintedUnit, printedUnit } from '../../words/unit-systems.ts'
import { unitSign } from '../../words/unit-signs.ts'
import type { ReadPoint } from '../../charts/read-point.ts'
import { type ChartTable, numberHead } from './chart-table.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'

export interface AtLimitView {
  readonly title: string
  readonly shown: AtLimit['shown']
  readonly note: string
  readonly sentences: readonly string[]
  readonly model: HistogramModel
  readonly tickLabels: readonly string[]
  readonly readings: readonly ReadPoint[]
  readonly table: ChartTable
}

const HEIGHT = 150
/** Bars in the window on either side of the edge. */
const BARS = 2

/** The indices and the one other limit that results lie closest to, as far as enough lots were judged by them. */
export function limitHistograms(edition: Edition, source: SourceEntry): AtLimitView[] {
  return chosenLimits(source.atLimits()).flatMap((limit) => {
    const printed = printedUnit(limit.unit, limit.decimals, edition.site.units)
    const model = histogramOf(limit, printed.of)
    return model === null ? [] : [viewOf(edition, source, limit, { model, printed })]
  })
}

/** Indices in the order of their clauses, then the closest of the others. */
export function chosenLimits(limits: readonly AtLimit[]): AtLimit[] {
  const isIndex = (limit: AtLimit) => RATIO_OF[limit.property] !== undefined
  const [closest] = limits.filter((limit) => !isIndex(limit)).sort((a, b) => distance(a) - distance(b))
  return [...limits.filter(isIndex), ...(closest === undefined ? [] : [closest])]
}

/** From the mean of the values to the edge, in their standard deviations; below zero beyond it. */
function distance({ values, edge, side }: AtLimit): number {
  const inside = (side === 'low' ? 1 : -1) * (mean(values) - edge)
  return inside / standardDeviation(values)
}

/** @param of a value in the unit that the site prints */
function histogramOf(limit: AtLimit, of: (value: number) => number): HistogramModel | null {
  const { values, edge, width } = limit
  const expected = expectedIn(limit)
  const stored = (value: number) => (value - of(0)) / (of(1) - of(0))
  return histogram({
    values: values.map(of),
    edge: of(edge),
    barWidth: (of(width) - of(0)) / BARS,
    window: { from: of(edge - width), to: of(edge + width) },
    expected: expected === null ? null : (middle) => expected(stored(middle)),
    height: HEIGHT,
  })
}

/** Lots that the fitted density puts into a bar about a value. */
function expectedIn({ fitted, edge, width }: AtLimit): ((middle: number) => number) | null {
  if (fitted === null) return null
  const upTo = (value: number) => cumulative((value - fitted.mean) / fitted.standardDeviation)
  const share = upTo(edge + width) - upTo(edge - width)
  if (share <= 0) return null
  const total = (fitted.admitted + fitted.refused) / share
  const half = width / BARS / 2
  return (middle) => total * (upTo(middle + half) - upTo(middle - half))
}

function viewOf(
  edition: Edition,
  { record }: SourceEntry,
  limit: AtLimit,
  { model, printed }: { readonly model: HistogramModel; readonly printed: PrintedUnit },
): AtLimitView {
  const { property: key, age, condition } = limit
  const { decimals, unit } = printed
  const figure = (value: number) => fixedDigits(value, Math.max(0, decimals + 1))
  const title = unbroken([property(key).title, age].filter((part) => part !== null).join(', '))
  return {
    title,
    shown: limit.shown,
    note: condition === null ? '' : unbroken(conditionTitle(edition, condition)),
    sentences: atLimitWords(limit, record.diverted?.length ?? null, edition.site.units),
    model,
    tickLabels: model.ticks.map(
      ({ value }, place) =>
        `${fixedDigits(value, Math.max(0, decimals))}${place === model.ticks.length - 1 ? ` ${unitSign(unit)}` : ''}`,
    ),
    readings: model.bars.map((bar, place) => ({
      x: model.tops[place]?.x ?? 0,
      y: model.tops[place]?.y ?? 0,
      words: barReading({ ...bar, from: figure(bar.from), to: figure(bar.to), unit: unitSign(unit) }),
    })),
    table: {
      summary: 'As a table',
      heads: [
        numberHead(`From, ${unitSign(unit)}`),
        numberHead(`to, ${unitSign(unit)}`),
        numberHead('Results'),
        numberHead('Expected from the curve'),
      ],
      rows: model.bars.map(({ from, to, count, expected }) => ({
        lot: null,
        cells: [figure(from), figure(to), String(count), expected === null ? '' : fixedDigits(expected, 1)],
      })),
    },
  }
}
