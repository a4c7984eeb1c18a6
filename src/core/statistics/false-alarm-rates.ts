/** False-alarm rates of a chart at hand, from the table of simulated ones. */
import type { ChartRule, WatchedRule } from './chart-signals.ts'
import { firstAtOrAfter } from './first-at-or-after.ts'
import { BASELINES, MANY, PHIS, RATES, TIMES } from './false-alarm-table.ts'
import type { AlarmLimit, AlarmRates, CauselessSeries } from './false-alarms.ts'

/**
 * How often a rule signals without any cause in a series like this one.
 * @param rule of the chart
 * @param series its correlation, baseline and points in all
 * @returns shares from 0 to 1
 * Notes: 1. between the cells of the table linear in the correlation and in the logarithms of baseline and length;
 * 2. beyond the table as at its edge, but that a longer series has as many more chances.
 */
export function falseAlarmRates(rule: ChartRule, { phi, baseline, points }: CauselessSeries): AlarmRates {
  const times = Math.max(1, points / baseline)
  const [a, b, c] = [
    between(PHIS, phi),
    between(BASELINES.map(Math.log), Math.log(baseline)),
    between(TIMES.map(Math.log), Math.log(times)),
  ]
  const at = (p: number, q: number, r: number) => cell(rule, a.low + p, b.low + q, c.low + r)
  const mixed = (of: (rates: AlarmRates) => number) =>
    mix(a.part, (p) => mix(b.part, (q) => mix(c.part, (r) => of(at(p, q, r)))))
  return {
    perPoint: mixed((rates) => rates.perPoint),
    inSeries: extended(
      mixed((rates) => rates.inSeries),
      times,
    ),
  }
}

/**
 * How far chance seldom carries a rule in a series like this one.
 * @param rule of the chart
 * @param series its correlation, baseline and points in all
 * @returns the smallest extent that at most one in twenty such series reach, with the share that does
 * Note: of the cell of the table that comes next on the side of more alarms: a baseline at most as long and a series at
 * least as long; beyond the table counts and sums grow with the length, averages do not.
 */
export function alarmLimit(rule: WatchedRule, { phi, baseline, points }: CauselessSeries): AlarmLimit {
  const isWhole = points <= baseline
  const least = placeIn(BASELINES, isWhole ? baseline : baseline + 1) - (isWhole ? 0 : 1)
  const row = Math.min(BASELINES.length - 1, Math.max(0, least))
  const times = isWhole ? 1 : points / (BASELINES[row] ?? baseline)
  const column = Math.min(TIMES.length - 1, placeIn(TIMES, times))
  const phiRow = Math.min(PHIS.length - 1, placeIn(PHIS, Math.round(10 * phi) / 10))
  const [extent = 1, share = 0] = (MANY[rule][phiRow * BASELINES.length + row]?.split(' ')[column] ?? '')
    .split('/')
    .map(Number)
  const inCell = (TIMES[column] ?? 1) * (BASELINES[row] ?? baseline)
  const longer = Math.max(1, points / inCell)
  return { extent: rule === 'ewma' || longer === 1 ? extent : Math.ceil(extent * longer), share }
}

/** Place of the first that is as large; the length of the list where none is. */
function placeIn(list: readonly number[], value: number): number {
  return firstAtOrAfter(list, (one) => one, value)
}

/** Twice as long a series goes without a signal as seldom as two such series. */
function extended(inSeries: number, times: number): number {
  const most = TIMES.at(-1) ?? 1
  return times <= most ? inSeries : 1 - (1 - inSeries) ** (times / most)
}

/** Neighbouring places of a value in a rising list, and how far it lies between them. */
function between(list: readonly number[], value: number): { low: number; part: number } {
  const found = list.findIndex((one) => value < one)
  const low = Math.min(list.length - 2, Math.max(0, (found < 0 ? list.length : found) - 1))
  const [from = 0, to = 1] = list.slice(low)
  return { low, part: Math.min(1, Math.max(0, (value - from) / (to - from))) }
}

function mix(part: number, of: (place: 0 | 1) => number): number {
  return part === 0 ? of(0) : (1 - part) * of(0) + part * of(1)
}

function cell(rule: ChartRule, phi: number, baseline: number, times: number): AlarmRates {
  const row = RATES[rule][phi * BASELINES.length + baseline] ?? ''
  const [perPoint = 0, inSeries = 0] = (row.split(' ')[times] ?? '').split('/').map(Number)
  return { perPoint, inSeries }
}
