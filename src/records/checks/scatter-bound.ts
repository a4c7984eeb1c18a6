/** A standard deviation against what results of its property can scatter by. */
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import { KINDS, type Quantity } from '../../core/measure/units.ts'
import type { FileReport } from '../diagnostics/report.ts'

/**
 * Values between two bounds have no larger standard deviation than half the distance between the bounds (Popoviciu, 1935).
 * @param deviation in the unit of the property, of a percentage in points
 */
export function checkScatterBound(
  key: PropertyKey,
  deviation: Quantity,
  pointer: string,
  report: FileReport,
): void {
  const [low, high] = property(key).bounds
  const largest = (high - low) / 2
  if (deviation.value <= largest) return
  report.at(
    pointer,
    'quantity-range',
    `results of ${key} cannot scatter by ${deviation.written}`,
    `check the number and its unit: at most ${largest} ${KINDS[deviation.kind].stored} was expected`,
  )
}
