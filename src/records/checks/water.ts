/** Mixing water against the cementitious material of its batch. */
import { toSignificant } from '../../core/measure/rounding.ts'
import type { Quantity } from '../../core/measure/units.ts'
import type { FileReport } from '../diagnostics/report.ts'

/** Water to cementitious material by mass: what the schema of conditions allows for a stated w/cm. */
const RATIO = { low: 0.1, high: 2 } as const

/**
 * Reports water that no mortar could be made with.
 * @param pointer of the water
 */
export function checkWater(
  water: Quantity | undefined,
  batch: { readonly cementitious: Quantity } | undefined,
  pointer: string,
  report: FileReport,
): void {
  if (water === undefined || batch === undefined) return
  const ratio = water.value / batch.cementitious.value
  if (RATIO.low <= ratio && ratio <= RATIO.high) return
  report.at(
    pointer,
    'quantity-range',
    `${water.written} of water on ${batch.cementitious.written} of cementitious material is a w/cm of ${toSignificant(ratio, 3)}`,
    `check both masses: a w/cm between ${RATIO.low} and ${RATIO.high} was expected`,
  )
}
