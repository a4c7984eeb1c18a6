/**
 * Where the control of an index stands among the batches before it, and what the index would be against their
 * mean.
 */
import { mean } from '../statistics/descriptive.ts'

/** One control batch's mean of the property that the index divides by. */
export interface ControlMean {
  readonly cement: string
  readonly value: number
}

export interface ControlStanding {
  /** Mean of the earlier batches, in their unit, and how many they are. */
  readonly mean: number
  readonly batches: number
  /** Own value less that mean, per cent of the mean. */
  readonly abovePercent: number
  /** The index, per cent, had the control stood at that mean. */
  readonly indexAtMean: number
}

/** As many as a uniformity clause looks back: own choice. */
const LOOK_BACK = 10

/**
 * Where the control of an index stands among the batches before it.
 * @param index per cent
 * @param own the control that the index was taken against; above zero
 * @param earlier valid batches tested before it, oldest first, in the same unit; of those of the same cement
 * the last ten count
 * @returns null where no batch of the same cement went before
 */
export function controlStanding(
  index: number,
  own: ControlMean,
  earlier: readonly ControlMean[],
): ControlStanding | null {
  const alike = earlier
    .filter(({ cement }) => cement === own.cement)
    .slice(-LOOK_BACK)
    .map(({ value }) => value)
  if (alike.length === 0) return null
  const centre = mean(alike)
  // From index = 100 A/B: the same A over another B.
  return {
    mean: centre,
    batches: alike.length,
    abovePercent: 100 * (own.value / centre - 1),
    indexAtMean: (index * own.value) / centre,
  }
}
