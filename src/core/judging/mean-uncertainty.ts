/** The uncertainty of a mean of several results, of which some share a control batch. */
import { property } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import type { UncertaintyParts } from './against-limits.ts'

/** A result with its own uncertainty; undefined where none is known. */
export interface UncertainResult {
  readonly result: Pick<Result, 'property' | 'control'>
  readonly u: Uncertainty | undefined
}

/**
 * The standard uncertainty of the mean of several results of one property.
 * @param results at least one
 * @returns in the unit of the results, with the part that one more batch would have and the fewest degrees of
 * freedom; empty where any of them has no uncertainty
 * Notes: 1. an index has half of its variance from the test mortar and half from the control, which results
 * against one batch of it share: of n indices against m controls evenly shared u √(1/2n + 1/2m); 2. indices that
 * name no control are taken to share one, which never makes the uncertainty too small; 3. other results are
 * independent: u/√n.
 * Source: JCGM 100:2008, 5.2.2, equation (13), with full correlation of what is shared; equal scatter of both
 * mortars is that of `indexScatter`.
 */
export function meanUncertainty(results: readonly UncertainResult[]): {
  readonly uncertainty?: Uncertainty
  readonly parts?: UncertaintyParts
} {
  const known = results.flatMap(({ result, u }) => (u === undefined ? [] : [{ ...result, ...u }]))
  const [first] = known
  if (first === undefined || known.length < results.length) return {}
  const n = known.length
  const squares = known.reduce((sum, { u }) => sum + u * u, 0)
  // JCGM 100:2008, 5.2.2, equation (13): variances of independent parts, and the square of a sum of shared ones.
  const shared = [...byControl(known).values()].reduce(
    (sum, alike) => sum + alike.reduce((part, { u }) => part + u, 0) ** 2,
    0,
  )
  const variance = property(first.property).nature === 'index' ? (squares + shared) / 2 : squares
  const freedoms = known.flatMap(({ df }) => (df === undefined ? [] : [df]))
  return {
    uncertainty: {
      u: Math.sqrt(variance) / n,
      basis: first.basis,
      ...(freedoms.length === 0 ? {} : { df: Math.min(...freedoms) }),
    },
    parts: { ofBatch: Math.sqrt(squares / n), ofReference: 0 },
  }
}

/** Results by the control batch they rest on; those that name none together. */
export function byControl<Of extends { readonly control?: string }>(
  results: readonly Of[],
): Map<string, Of[]> {
  return Map.groupBy(results, ({ control }) => control ?? '')
}
