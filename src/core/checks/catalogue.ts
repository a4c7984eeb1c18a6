/**
 * Every audit check: how grave its findings are by default, and how often chance alone raises one. Severities follow
 * the design: only a fault of a reading, found before judging, may block.
 */
import type { FindingParams } from './finding.ts'

/** What a check is for, in the order of a list of them. */
export type CheckFamily =
  | 'document'
  | 'completeness'
  | 'time'
  | 'arithmetic'
  | 'trend'
  | 'laboratory'
  | 'integrity'
  | 'agency'
  | 'identity'

export interface CheckEntry {
  readonly family: CheckFamily
  /** The gravest that it reports unless the site says otherwise. */
  readonly severity: 'warning' | 'information'
  /** Chance alone can raise it: so often in each look, where its assumptions hold; a check may know it closer. */
  readonly rate?: number
  /** Among warnings it is read first: what practice would have block a verdict, though no reading is at fault. */
  readonly first?: true
  /** It adds up all lots of a source, so that one that is not shown could be worked out from it. */
  readonly sumsLots?: true
  /** It counts shipments lot by lot, and can be told of the lots that are shown alone. */
  readonly countsLots?: true
  /** It rests on verification results, which a site may leave unpublished. */
  readonly onVerification?: true
}

export type CheckId = keyof FindingParams

export const CHECKS: Readonly<Record<CheckId, CheckEntry>> = {
  'changed-after-issue': { family: 'document', severity: 'warning' },
  'would-now-be-judged-otherwise': { family: 'document', severity: 'warning' },

  'number-gap': { family: 'completeness', severity: 'warning', first: true },
  'number-off-pattern': { family: 'completeness', severity: 'warning' },
  'report-missing': { family: 'completeness', severity: 'warning' },
  'report-late': { family: 'completeness', severity: 'information' },
  'result-overdue': { family: 'completeness', severity: 'warning' },
  'sampled-behind-plan': { family: 'completeness', severity: 'warning' },
  'certificate-unshipped': { family: 'completeness', severity: 'information' },
  'balance-off': { family: 'completeness', severity: 'warning', sumsLots: true },
  'diversion-apart': { family: 'completeness', severity: 'warning' },
  'shipped-above-certified': { family: 'completeness', severity: 'warning', first: true, sumsLots: true },

  'shipped-without-certificate': { family: 'time', severity: 'warning', first: true },
  'shipped-before-results': { family: 'time', severity: 'warning' },
  'shipped-before-completion': { family: 'time', severity: 'information', countsLots: true },
  'shipped-on-missed-age': { family: 'time', severity: 'information' },
  'failed-after-shipping': { family: 'time', severity: 'warning' },
  'shipped-after-failure': { family: 'time', severity: 'warning', first: true },
  'shipped-after-withdrawal': { family: 'time', severity: 'warning', first: true },
  'shipped-on-old-certificate': { family: 'time', severity: 'warning' },
  'shipped-while-unlisted': { family: 'time', severity: 'warning', first: true },
  'tested-outside-accreditation': { family: 'time', severity: 'warning', first: true },
  'sampled-outside-production': { family: 'time', severity: 'warning' },
  'mortars-cast-apart': { family: 'time', severity: 'warning' },
  'tested-on-closed-day': { family: 'time', severity: 'information' },
  'equipment-unverified': { family: 'time', severity: 'warning' },

  'other-sample-fails': { family: 'arithmetic', severity: 'warning' },
  'result-implausible': { family: 'arithmetic', severity: 'warning', first: true },
  'test-and-control-swapped': { family: 'arithmetic', severity: 'warning', first: true },
  'oxide-total': { family: 'arithmetic', severity: 'warning' },
  'alkalis-above-total': { family: 'arithmetic', severity: 'warning' },
  'loss-too-small': { family: 'arithmetic', severity: 'warning' },
  'far-from-history': { family: 'arithmetic', severity: 'warning', first: true },
  'shipment-mass': { family: 'arithmetic', severity: 'warning' },
  'shipped-above-quantity': { family: 'arithmetic', severity: 'warning', first: true },
  'lot-quantity': { family: 'arithmetic', severity: 'warning' },
  'water-out-of-proportion': { family: 'arithmetic', severity: 'warning' },
  'finished-beside-readings': { family: 'arithmetic', severity: 'warning', first: true },

  // Rates of the four rules are those simulated for the series at hand: at most so often, mostly less.
  'out-of-control': { family: 'trend', severity: 'warning', rate: 0.05 },
  'run-on-one-side': { family: 'trend', severity: 'warning', rate: 0.05 },
  'steady-rise-or-fall': { family: 'trend', severity: 'warning', rate: 0.05 },
  'weighted-average-off': { family: 'trend', severity: 'warning', rate: 0.05 },
  // Simulated over 1,100 looks each at correlations of 0, 0.2 and 0.4 (test/core/simulation/clean-history.test.ts):
  // intervals of 95 % leave out zero in 5.8 % of level series, those of twelve months at once in 2.7 %, and at 5 %
  // one-sided a share grows in 1 to 3 %.
  'results-drift': { family: 'trend', severity: 'warning', rate: 0.06 },
  'step-at-event': { family: 'trend', severity: 'warning', rate: 0.06 },
  'month-effect': { family: 'trend', severity: 'information', rate: 0.03 },
  'margin-shrinking': { family: 'trend', severity: 'warning', rate: 0.02 },
  'period-estimate-beyond': { family: 'trend', severity: 'warning' },
  'uniformity-exceeded': { family: 'trend', severity: 'warning' },

  // A normal difference beyond 2.83 s_R, which is 2.83/√2 of its own standard deviations; the level of the paired t; and
  // F and t, each at the level of the comparison.
  'split-beyond-limit': { family: 'agency', severity: 'warning', onVerification: true, rate: 0.045 },
  'agency-other-side': { family: 'agency', severity: 'warning', onVerification: true },
  'split-bias': { family: 'agency', severity: 'warning', onVerification: true, rate: 0.01 },
  'independent-differs': { family: 'agency', severity: 'warning', onVerification: true, rate: 0.02 },
  'verification-behind': { family: 'agency', severity: 'warning', onVerification: true },
  'no-independent-sample': { family: 'agency', severity: 'warning', onVerification: true },
  'custody-not-stated': { family: 'agency', severity: 'warning', onVerification: true },
  'producer-never-fails': {
    family: 'agency',
    severity: 'information',
    rate: 0.01,
    onVerification: true,
  },

  'control-batch-off': { family: 'laboratory', severity: 'warning', rate: 0.003 },
  'cement-unbridged': { family: 'laboratory', severity: 'warning' },
  'laboratory-unbridged': { family: 'laboratory', severity: 'warning' },
  'proficiency-open': { family: 'laboratory', severity: 'warning', rate: 0.0455 },
  // Information: the test of the control alone, which every index is divided by, makes part of such a relation. The rate
  // is that of indices which do not depend on their control at all.
  'index-follows-control': { family: 'laboratory', severity: 'information', rate: 0.005 },
  'control-drift': { family: 'laboratory', severity: 'warning', rate: 0.05 },
  'proficiency-lapsed': { family: 'laboratory', severity: 'warning' },

  'bunched-at-limit': { family: 'integrity', severity: 'warning', rate: 0.01 },
  'bill-twice': { family: 'integrity', severity: 'warning' },
  'lots-alike': { family: 'integrity', severity: 'warning', rate: 0.01 },
  'readings-alike': { family: 'integrity', severity: 'warning' },
  // Simulated (test/core/checks/copied-specimens.test.ts): 2 sets of 10,000 where specimens scatter by 2.5 %.
  'specimens-equal': { family: 'integrity', severity: 'warning', rate: 0.0005 },
  'readings-of-control': { family: 'integrity', severity: 'warning' },
  'uneven-last-digits': { family: 'integrity', severity: 'warning', rate: 0.01 },
  'scatter-small': { family: 'integrity', severity: 'warning', rate: 0.01 },
  'specimens-excluded': { family: 'integrity', severity: 'information' },
  'age-left-out': { family: 'integrity', severity: 'warning' },
  retested: { family: 'integrity', severity: 'information' },

  'sampled-in-outage': { family: 'identity', severity: 'warning' },
  'blend-total': { family: 'identity', severity: 'warning' },
  'class-beside-calcium': { family: 'identity', severity: 'warning' },
  // Simulated (test/core/simulation/correlated-lots.test.ts): 0.2 to 0.4 % of lots that do not resemble their
  // neighbours, 1.0 to 1.2 % at a correlation of 0.4, which so few lots do not show in full.
  'feed-rising': { family: 'identity', severity: 'warning', rate: 0.012 },
}
