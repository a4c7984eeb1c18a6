/** What an uncertainty rests on, and how far it leaves a value from its limit, in words. */
import type { DoubtOfOutcome } from '../core/criteria/verdict.ts'
import { FEW_DF } from '../core/doubt/pooled-repeatability.ts'
import type { UncertaintyBasis } from '../core/result/uncertainty.ts'
import { printedUnits } from './as-written.ts'
import { plainNumber } from './numbers.ts'

/** A laboratory's own text stands as it is. */
export function basisWords(basis: UncertaintyBasis): string {
  switch (basis.code) {
    case 'stated-with-figure':
      return 'stated by the laboratory with the figure'
    case 'stated':
      return basis.params.basis
    case 'repeated-batches':
      return `pooled from the laboratory’s earlier repeated batches of one lot, ${scatter(basis.params)}`
    case 'control-batches':
      return `pooled from the laboratory’s earlier control batches, ${scatter(basis.params)}; test batches taken to scatter alike`
  }
}

function scatter({ cvPercent, df }: { readonly cvPercent: number; readonly df: number }): string {
  return `${plainNumber(cvPercent, 1)} % between batches with ${df} degrees of freedom${df < FEW_DF ? ', which are few' : ''}`
}

/** One line without a full stop, for instance "8.0 points clear of the limit, 2.9 standard uncertainties". */
export function doubtWords({ margin, u, unit, decimals, clear, batches }: DoubtOfOutcome): string {
  const amount = (value: number) =>
    `${plainNumber(value, decimals)} ${unit === '%' ? 'points' : printedUnits(unit)}`.trim()
  const distance = `${amount(Math.abs(margin))} ${margin < 0 ? 'beyond the limit' : 'clear of the limit'}`
  if (u === 0) return distance
  const times = Math.abs(margin) / u
  const multiple = `${plainNumber(times, 1)} standard uncertainties`
  if (clear) return `${distance}, ${multiple}`
  const measured = times < 1 ? `less than its uncertainty of ${amount(u)}` : multiple
  return `${distance}, ${measured}; ${batches === null ? 'no number of batches decides' : `the mean of ${batches} batches would decide`}`
}
