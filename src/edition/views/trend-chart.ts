/** A trend with its legend in words and the table behind it. */
import { trendMark, type TrendMarkDrawing } from '../../charts/marks.ts'
import { type TrendInput, trendModel, type TrendModel, type TrendPoint } from '../../charts/trend.ts'
import { tickDecimals } from '../../charts/trend-axes.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import { unitSign } from '../../words/unit-signs.ts'

export interface TrendChartInput extends Omit<TrendInput, 'width' | 'height'> {
  readonly title: string
  readonly unit: string
  /** What a point stands for: "lot", "control batch". */
  readonly of: string
  /** For the signs at thousands. */
  readonly units?: UnitSystem
}

export interface TrendChartView {
  readonly title: string
  readonly description: string
  /** What a script reads out at each point. */
  readonly readings: readonly string[]
  /** null where no point has a value. */
  readonly drawings: {
    readonly wide: TrendDrawing
    readonly narrow: TrendDrawing
  } | null
  readonly legend: TrendLegend
  readonly table: TrendTable
}

export interface TrendDrawing {
  readonly model: TrendModel
  /** Labels of the value axis, in the order of the ticks. */
  readonly tickLabels: readonly string[]
  /** Middles of all points, for a script: "12.3,45.6 78,90". */
  readonly places: string
  /** Marks of the points that are not plainly valid. */
  readonly marks: readonly TrendMarkDrawing[]
}

/** Words of the legend; null for what the chart does not show. */
export interface TrendLegend {
  readonly line: string
  readonly states: readonly { readonly words: string; readonly mark: TrendMarkDrawing }[]
  readonly mean: { readonly words: string; readonly band: boolean } | null
  readonly limits: string | null
}

export interface TrendTable {
  readonly summary: string
  /** Heading of the first column. */
  readonly of: string
  readonly unit: string
  readonly rows: readonly TrendTableRow[]
}
export interface TrendTableRow {
  readonly id: string
  readonly date: string
  readonly value: string
  readonly state: string
  readonly remark: string
}

/** Rows of the table; a source may have thousands of lots, which the file has all. */
const NEWEST = 100
/**
 * Letters shrink with the drawing: charts.css shows the wide one only where it has 860 px, and the narrow one
 * down to a phone's 320.
 */
const WIDE = { width: 860, height: 225 }
const NARROW = { width: 320, height: 215 }

/** A trend in the units of a site: points, means, limits and band alike, so that the axis is even in them. */
export function inUnits(input: TrendChartInput, units: UnitSystem): TrendChartInput {
  const { unit, decimals, of } = printedUnit(input.unit, input.decimals, units)
  if (unit === input.unit) return { ...input, units }
  const { band } = input
  return {
    ...input,
    units,
    unit,
    decimals,
    points: input.points.map(({ value, mean, ...point }) => ({
      ...point,
      value: value === null ? null : of(value),
      ...(mean === undefined ? {} : { mean: of(mean) }),
    })),
    limits: input.limits.map((limit) => ({ ...limit, value: of(limit.value) })),
    ...(band === undefined || band.relative ? {} : { band: { ...band, half: of(band.half) - of(0) } }),
  }
}

export function trendChartView({ title, unit, of, units = 'SI', ...input }: TrendChartInput): TrendChartView {
  const wide = trendModel({ ...input, ...WIDE })
  const narrow = trendModel({ ...input, ...NARROW })
  return {
    title: unbroken(title),
    description: descriptionOf(input, unit, units),
    readings: input.points.map((point) => readingWords(point, { unit, decimals: input.decimals, units })),
    drawings: wide === null || narrow === null ? null : drawingsOf(wide, narrow, { unit, units }),
    legend: legendOf(wide, input, { unit, of }),
    table: tableOf(input, { unit, of, units }),
  }
}

type Input = Omit<TrendInput, 'width' | 'height'>

interface Units {
  readonly unit: string
  readonly units: UnitSystem
}

function drawingsOf(wide: TrendModel, narrow: TrendModel, of: Units): TrendChartView['drawings'] {
  const decimals = tickDecimals(wide.yTicks)
  const drawing = (model: TrendModel): TrendDrawing => ({
    model,
    tickLabels: tickLabels(model, decimals, of),
    places: model.marks.map(({ x, y }) => `${x},${y}`).join(' '),
    marks: model.marks.map(trendMark).filter((mark) => mark !== null),
  })
  return { wide: drawing(wide), narrow: drawing(narrow) }
}

/** Only the uppermost carries the per cent sign. */
function tickLabels({ yTicks }: TrendModel, decimals: number, { unit, units }: Units): string[] {
  return yTicks.map(
    ({ value }, index) =>
      `${number(value, decimals, units)}${index === yTicks.length - 1 && unit === '%' ? ' %' : ''}`,
  )
}

function descriptionOf({ points, limits, decimals }: Input, unit: string, units: UnitSystem): string {
  const values = points.flatMap(({ status, value }) => (status === 'valid' && value !== null ? [value] : []))
  const last = values.at(-1)
  if (last === undefined) return 'No valid result yet.'
  const [least, most] = ends(values)
  const limitWords = limits.map(({ label }) => `Limit: ${label}.`).join(' ')
  return `${values.length} valid results from ${number(least, decimals, units)} to ${number(most, decimals, units)} ${unitSign(unit)}, the last ${number(last, decimals, units)}. ${limitWords}`
}

/** Smallest and largest; a spread of arguments would not bear thousands of values. */
function ends(values: readonly number[]): [number, number] {
  return [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]
}

/** What the legend explains, in its order. */
const STATES = [
  { status: 'not-valid', shape: 'diamond', words: 'not valid, left out of the line and the mean' },
  { status: 'withdrawn', shape: 'cross', words: 'withdrawn' },
  { status: 'pending', shape: 'ring', words: 'outstanding' },
] as const

function legendOf(
  model: TrendModel | null,
  { points, limits }: Input,
  { unit, of }: { readonly unit: string; readonly of: string },
): TrendLegend {
  const band = model !== null && model.band !== ''
  return {
    line: `${of}, ${unitSign(unit)}${model?.logarithmic === true ? ', logarithmic axis' : ''}`,
    states: STATES.filter(({ status }) => points.some((point) => point.status === status)).flatMap(
      ({ shape, words }) => {
        const mark = trendMark({ x: 11, y: 6, shape })
        return mark === null ? [] : [{ words, mark }]
      },
    ),
    mean:
      model === null || model.mean === ''
        ? null
        : { words: `mean of the preceding ten${band ? ' with the permitted band' : ''}`, band },
    limits: limits.length === 0 ? null : limitWords(limits),
  }
}

/** Each limit with its sets; a chart without sets says what the line is. */
function limitWords(limits: Input['limits']): string {
  return limits.every(({ sets }) => sets === undefined)
    ? 'limit'
    : limits.map(({ label, sets }) => `${label}: ${(sets ?? []).join('; ')}`).join(' · ')
}

function readingWords(
  { lot, at, value, status, note }: TrendPoint,
  { unit, decimals, units }: Units & { readonly decimals: number },
): string {
  return [
    `${lot}, ${shortDate(at)}: `,
    value === null ? 'no result' : `${number(value, decimals, units)} ${unitSign(unit)}`,
    status === 'valid' ? '' : `, ${stateWords(status)}`,
    note === undefined ? '' : `, ${note}`,
  ].join('')
}

/** Newest first. */
function tableOf(
  { points, decimals }: Input,
  { unit, of, units }: Units & { readonly of: string },
): TrendTable {
  const newest = points.slice(-NEWEST).reverse()
  return {
    summary:
      newest.length < points.length
        ? `Table of the newest ${newest.length} of ${points.length} results`
        : `Table of these ${points.length} results`,
    of,
    unit: unitSign(unit),
    rows: newest.map(({ lot, at, value, status, note }) => ({
      id: lot,
      date: shortDate(at),
      value: value === null ? '' : number(value, decimals, units),
      state: stateWords(status),
      remark: note ?? '',
    })),
  }
}

const STATE_WORDS: Readonly<Record<TrendPoint['status'], string>> = {
  valid: 'valid',
  'not-valid': 'not valid',
  pending: 'outstanding',
  withdrawn: 'withdrawn',
}

function stateWords(status: TrendPoint['status']): string {
  return STATE_WORDS[status]
}
