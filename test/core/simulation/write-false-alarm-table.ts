/**
 * Writes src/core/statistics/false-alarm-table.ts: `node test/core/simulation/write-false-alarm-table.ts`. To be run
 * again where a rule of the charts changes; a test holds cells of the table against a fresh simulation.
 */
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { CHART_RULES, WATCHED_RULES } from '../../../src/core/statistics/chart-signals.ts'
import { simulatedAlarms } from '../../../src/core/statistics/false-alarms.ts'
import { normal } from './chance.ts'

const PHIS = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8]
const BASELINES = [8, 12, 16, 20, 30, 50]
/** Points in all for each point of the baseline. */
const TIMES = [1, 1.5, 2, 3, 5, 10, 25, 50]
const TRIALS = 4000

const draw = normal(20_261_126)
const rates = rowsOf(CHART_RULES)
const limits = rowsOf(WATCHED_RULES)
for (const phi of PHIS)
  for (const baseline of BASELINES) {
    const lengths = TIMES.map((times) => Math.round(times * baseline))
    const points = lengths.at(-1) ?? baseline
    // The longest series need fewer trials: each holds thousands of points.
    const found = simulatedAlarms({ phi, baseline, points }, lengths, TRIALS, draw)
    for (const rule of CHART_RULES)
      rates[rule].push(
        found.rates[rule].map((one) => `${one.perPoint.toFixed(4)}/${one.inSeries.toFixed(3)}`).join(' '),
      )
    for (const rule of WATCHED_RULES)
      limits[rule].push(
        found.limits[rule].map((one) => `${+one.extent.toFixed(3)}/${one.share.toFixed(3)}`).join(' '),
      )
  }

function rowsOf<Rule extends string>(rules: readonly Rule[]): Record<Rule, string[]> {
  return Object.fromEntries(rules.map((rule) => [rule, []])) as unknown as Record<Rule, string[]>
}

function tableOf(rows: Readonly<Record<string, readonly string[]>>): string {
  return Object.entries(rows)
    .map(([rule, own]) => `  ${quoted(rule)}: [\n${own.map((row) => `    '${row}',\n`).join('')}  ],\n`)
    .join('')
}

/** As the formatter writes the name of a member. */
function quoted(rule: string): string {
  return /^[a-z]+$/.test(rule) ? rule : `'${rule}'`
}
writeFileSync(
  resolve(import.meta.dirname, '../../../src/core/statistics/false-alarm-table.ts'),
  `/**
 * False alarms of the rules of a control chart, simulated: ${TRIALS} series without any cause in each cell. Written by
 * test/core/simulation/write-false-alarm-table.ts; not to be edited by hand.
 */
import type { ChartRule, WatchedRule } from './chart-signals.ts'

/** Correlation of neighbours. */
export const PHIS: readonly number[] = [${PHIS.join(', ')}]
/** Points that set the limits. */
export const BASELINES: readonly number[] = [${BASELINES.join(', ')}]
/** Points in all for each point of the baseline. */
export const TIMES: readonly number[] = [${TIMES.join(', ')}]

/**
 * By rule a row for each correlation and, within it, baseline; in a row for each length "share of points that
 * signal/share of series with a signal".
 */
// biome-ignore format: a table is read by rows
export const RATES: Readonly<Record<ChartRule, readonly string[]>> = {
${tableOf(rates)}}

/**
 * As above, "extent of the rule that at most one in twenty series reach/share of series that reach it".
 */
// biome-ignore format: a table is read by rows
export const MANY: Readonly<Record<WatchedRule, readonly string[]>> = {
${tableOf(limits)}}
`,
)
