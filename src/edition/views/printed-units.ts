/** Quantities with their units as the signs of print, for sentences on a page. */
import { isTime } from '../../core/measure/texts-of-times.ts'
import { unitSign } from '../../words/units.ts'

/**
 * A copy of plain data in which every quantity is written with the sign of its unit: "1.95 g/cm3" becomes
 * "1.95 g/cm³". Differences keep their "percentage points".
 * @param data a tree of plain values, such as a clause with its limits
 */
export function withPrintedUnits<T>(data: T): T {
  return printed(data) as T
}

function printed(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(printed)
  if (typeof data !== 'object' || data === null || isTime(data)) return data
  const copy = Object.fromEntries(Object.entries(data).map(([key, value]) => [key, printed(value)]))
  return isQuantity(data) ? { ...copy, ...signed(data) } : copy
}

interface WrittenQuantity {
  readonly unit: string
  readonly written: string
}

function isQuantity(data: object): data is WrittenQuantity {
  return (
    'unit' in data && typeof data.unit === 'string' && 'written' in data && typeof data.written === 'string'
  )
}

function signed({ unit, written }: WrittenQuantity): WrittenQuantity {
  if (unit === 'percentage points' || !written.endsWith(` ${unit}`)) return { unit, written }
  return { unit: unitSign(unit), written: `${written.slice(0, -unit.length)}${unitSign(unit)}` }
}
