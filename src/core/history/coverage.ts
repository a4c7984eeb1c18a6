/** How far the tests of a source reach. */

/** What was produced and sampled since the test before, for one property. */
export interface Coverage {
  /** Lot of the test before; absent for a source's first. */
  readonly since?: string
  /**
   * Hours from that test's sample, or from the beginning of the source's first lot, to this lot's end of
   * sampling.
   */
  readonly hours: number
  /** Mass produced in that time, this lot included. */
  readonly tonnes: number
  /** Tests of this lot; the mass and time are shared among them. */
  readonly tests: number
}
