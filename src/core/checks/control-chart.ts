/** Audit checks: more points beyond the rules of a control chart than chance explains. */
import type { IndividualsChart, RuleHeld } from '../history/segment-figures.ts'
import type { SourceHistory } from '../history/source-history.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'
import { type GovernedSegment, governedSegments, newestLots, ofSegment } from './governed-series.ts'

/** By rule of the chart: single values, runs, rises and falls, weighted averages. */
const RULES = {
  'beyond-limits': 'out-of-control',
  'run-of-eight': 'run-on-one-side',
  'six-rising-or-falling': 'steady-rise-or-fall',
  ewma: 'weighted-average-off',
} as const

/**
 * An excursion makes neighbours look more alike than they are, which raises the limit that it is held against: where the
 * correlation is estimated from the series itself, limits are reached so often as with the true one.
 * Source: simulated for correlations of 0, 0.2 and 0.4 and 12 to 500 points: 0.7 times on average, less often in the
 * shortest series, up to about 1.5 times in others.
 */
export const AS_ESTIMATED = 0.7

/**
 * One look and at most one finding for each segment and rule.
 * @param source id
 * @param history of the source
 * @returns findings where the rule was carried farther than in nineteen of twenty series without any cause, of the same
 * correlation, baseline and length; flags are expected at 0.7 times the simulated share
 */
export function chartChecks(source: string, { series }: SourceHistory): Checked[] {
  const charted = governedSegments(series).flatMap((governed) =>
    governed.segment.chart.shown ? [{ governed, chart: governed.segment.chart }] : [],
  )
  return (Object.keys(RULES) as (keyof typeof RULES)[]).map((rule) => {
    const looks = charted.flatMap(({ governed, chart }) =>
      chart.held.filter((held) => held.rule === rule).map((held) => ({ governed, chart, held })),
    )
    return {
      check: RULES[rule],
      looked: looks.length,
      expected: AS_ESTIMATED * looks.reduce((sum, { held }) => sum + held.share, 0),
      findings: looks
        .filter(({ held }) => held.tooMany)
        .map(({ governed, chart, held }) => findingOf(source, RULES[rule], governed, chart, held)),
    }
  })
}

function findingOf(
  source: string,
  code: (typeof RULES)[keyof typeof RULES],
  governed: GovernedSegment,
  { centre, low, high, baseline }: IndividualsChart,
  { places, extent, limit, share, phi }: RuleHeld,
): Finding {
  const params = {
    ...ofSegment(source, governed),
    ...{ held: places.length, extent, limit, share, correlation: phi, centre, low, high },
    baseline: baseline.places.length,
    ...newestLots(governed.series, places),
  }
  return found(source, { code, params }, ...governed.place)
}
