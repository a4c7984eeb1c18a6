/** What an uncertainty rests on, and how far it leaves a value from its limit, in words. */
import type { DoubtOfOutcome } from '../core/criteria/verdict.ts'
import { FEW_DF } from '../core/doubt/pooled-repeatability.ts'
import type { UncertaintyBasis } from '../core/result/uncertainty.ts'
import { decimalsOfStep } from '../core/measure/rounding.ts'
import { property, type PropertyKey } from '../core/measure/properties.ts'
import { printedUnits } from './as-written.ts'
import { number, numberWords, plainNumber, plural } from './numbers.ts'

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

/**
 * A difference or a scatter in the unit of its values, of per cents in points.
 * @param decimals at least; more where the first digit that is not zero lies behind them
 */
export function differenceWords(value: number, decimals: number, unit: string): string {
  const shown = value === 0 ? decimals : Math.max(decimals, -Math.floor(Math.log10(Math.abs(value))))
  return numberWords(value, Math.min(shown, MOST_DECIMALS), unit === '%' ? 'points' : unit)
}

const MOST_DECIMALS = 6

/** More batches of one lot than anybody makes: own choice. */
const MOST_BATCHES = 20

/**
 * One line without a full stop, for instance "8.5 points above 74.5 % (the limit before rounding), 2.9 standard
 * uncertainties".
 * @param of what the value is of: each batch of an index has a control of its own
 */
export function doubtWords(doubt: DoubtOfOutcome, of: { readonly property?: PropertyKey }): string {
  const { margin, u, unit, clear, batches } = doubt
  if (u === 0) return distanceWords(doubt)
  const times = Math.abs(margin) / u
  const multiple = `${plainNumber(times, 1)} standard uncertainties`
  if (clear) return `${distanceWords(doubt)}, ${multiple}`
  const measured =
    times < 1 ? `less than its uncertainty of ${differenceWords(u, doubt.decimals, unit)}` : multiple
  return `${distanceWords(doubt)}, ${measured}; ${batchesWords(batches, of)}`
}

function distanceWords({ margin, end, step, side, unit, decimals }: DoubtOfOutcome): string {
  const place =
    step === 0
      ? 'the limit'
      : `${number(end, decimalsOfStep(step / 2))} ${printedUnits(unit)}`.trimEnd() + BEFORE
  if (margin === 0) return `on ${place}`
  const above = (side === 'low') === 0 < margin
  return `${differenceWords(Math.abs(margin), decimals, unit)} ${above ? 'above' : 'below'} ${place}`
}

const BEFORE = ' (the limit before rounding)'

function batchesWords(
  batches: number | null,
  { property: key }: { readonly property?: PropertyKey },
): string {
  if (batches === null) return 'no number of batches decides'
  if (MOST_BATCHES < batches) return 'more batches than can be made would be needed to decide'
  const own = key !== undefined && property(key).nature === 'index' ? ', each with its own control,' : ''
  return `the mean of ${plural(batches, 'batch', 'batches')}${own} would decide`
}
