/** How well a result is known from one batch to the next. */
import type { ReasonOf } from './reason.ts'

/** What a standard uncertainty rests on. */
export type UncertaintyBasis = ReasonOf<{
  /** Stated with a finished figure itself. */
  readonly 'stated-with-figure': Readonly<Record<string, never>>
  /** The laboratory's own text. */
  readonly stated: { readonly basis: string }
  /** Pooled from the laboratory's earlier repeated batches of one lot; scatter between batches in per cent. */
  readonly 'repeated-batches': { readonly cvPercent: number; readonly df: number }
  /** Pooled from its earlier control batches, test batches taken to scatter alike. */
  readonly 'control-batches': { readonly cvPercent: number; readonly df: number }
}>

/**
 * Standard uncertainty of a result in its stored unit, between batches of one laboratory; `df` degrees of
 * freedom where known.
 */
export interface Uncertainty {
  readonly u: number
  readonly df?: number
  readonly basis: UncertaintyBasis
}
