/** How well a result is known from one batch to the next. */

/**
 * Standard uncertainty of a result in its stored unit, between batches of one laboratory; `df` degrees of
 * freedom where known.
 */
export interface Uncertainty {
  readonly u: number
  readonly df?: number
  readonly basis: string
}
