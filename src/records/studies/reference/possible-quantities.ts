/** Quantities of a reference test that nobody can compute with: bounds, and masses or volumes of nothing or less. */
import type { Quantity } from '../../../core/measure/units.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import { below } from '../../yaml/pointer.ts'

/** What may be nothing. */
const MAY_BE_ZERO = ['water', 'other', 'sample-volume', 'volume-error', 'start', 'ignition-loss']

/** @param node of a loaded record, and `pointer` to it */
export function checkQuantities(node: unknown, pointer: string, report: FileReport): void {
  if (typeof node !== 'object' || node === null) return
  if (isQuantity(node)) checkQuantity(node, pointer, report)
  else for (const [key, value] of Object.entries(node)) checkQuantities(value, below(pointer, key), report)
}

function isQuantity(node: object): node is Quantity {
  return 'kind' in node && 'written' in node
}

function checkQuantity(quantity: Quantity, pointer: string, report: FileReport): void {
  const { kind, value, written, censored } = quantity
  const key = pointer.slice(pointer.lastIndexOf('/') + 1)
  if (censored !== undefined)
    report.at(
      pointer,
      'quantity-bound',
      `"${written}" is a bound, and a study computes with its readings`,
      'write the reading itself',
    )
  else if (kind !== 'temperature' && (value < 0 || (value === 0 && !MAY_BE_ZERO.includes(key))))
    report.at(pointer, 'quantity-range', `"${written}" is not above zero`, 'check the reading')
  else if (kind === 'temperature' && !isFurnaceTemperature(value))
    report.at(pointer, 'quantity-range', `"${written}" is no temperature of a furnace`, 'check the reading')
  else if (kind === 'fraction' && 100 < value)
    report.at(pointer, 'quantity-range', `"${written}" is more than the whole`, 'check the reading')
}

/** °C: from a drying bench to the end of a thermobalance. */
function isFurnaceTemperature(celsius: number): boolean {
  return 1 <= celsius && celsius <= 1500
}
