/** Masses of one batch of mortar. */
import { CONTROL } from '../study-reading.ts'
import type { PlannedCondition } from './programme.ts'

/** g; null where the condition does not say it, or where it is found at the mixer. */
export interface BatchMasses {
  readonly cement: number | null
  /** 0 for the control. */
  readonly material: number | null
  /** null at constant flow, but for a control whose water is fixed. */
  readonly water: number | null
  readonly sand: number | null
}

/**
 * What is weighed in for a batch.
 * @param material code, or `control`
 * @param condition with masses in g, replacement in % of the cementitious mass
 * @returns unrounded
 * Note: replacement by mass alone: one by volume has no replacement here.
 */
export function batchMasses(material: string, condition: PlannedCondition): BatchMasses {
  const { cementitiousG, sandG, replacementPercent } = condition
  const isControl = material === CONTROL
  const share = isControl ? 0 : replacementPercent
  const replaced = cementitiousG === null || share === null ? null : (cementitiousG * share) / 100
  return {
    cement: cementitiousG === null || replaced === null ? null : cementitiousG - replaced,
    material: replaced,
    water: waterG(isControl, condition),
    sand: sandG,
  }
}

function waterG(
  isControl: boolean,
  { flow, waterRatio, controlWaterG, cementitiousG }: PlannedCondition,
): number | null {
  if (flow === 'constant-flow' && !isControl) return null
  if (isControl && controlWaterG !== null) return controlWaterG
  return waterRatio === null || cementitiousG === null ? null : waterRatio * cementitiousG
}
