/** A comparison is made in the unit that the limit is written in, since its decimals belong to that unit. */
import type { ClassLimit } from '../criteria/limits-for-class.ts'
import { KINDS, type Quantity, type Unit, writtenNumber } from '../measure/units.ts'
import { toSignificant } from '../measure/rounding.ts'

const numbers = new WeakMap<Quantity, number>()

/**
 * The limit's number exactly as written.
 * @returns in the limit's written unit
 */
export function limitNumber(limit: Quantity): number {
  const known = numbers.get(limit)
  if (known !== undefined) return known
  const written = Number(writtenNumber(limit))
  numbers.set(limit, written)
  return written
}

/**
 * A stored value in the unit that the limit is written in.
 * @param stored in the stored unit of the limit's kind
 * @returns in the limit's written unit, unrounded
 * @throws RangeError for a unit that is none of the kind's
 */
export function inUnitOf(limit: Quantity, stored: number): number {
  const unit = writtenUnit(limit)
  return (stored - (unit.offset ?? 0)) / unit.factor
}

/**
 * A value in the limit's written unit, as stored.
 * @param written in the limit's written unit
 * @returns in the stored unit, to 14 significant digits, as `readQuantity` gives it
 * @throws RangeError for a unit that is none of the kind's
 */
export function storedFrom(limit: Quantity, written: number): number {
  const unit = writtenUnit(limit)
  return toSignificant(written * unit.factor + (unit.offset ?? 0), 14)
}

/**
 * Decimals in the stored unit that show a step of the limit's written unit.
 * @param decimals of that step
 * @returns none or more
 * @throws RangeError for a unit that is none of the kind's
 */
export function storedDecimals(limit: Quantity, decimals: number): number {
  return Math.max(0, decimals + Math.ceil(-Math.log10(writtenUnit(limit).factor)))
}

/** The unit that a limit's numbers are stored in. */
export function storedUnitOf({ quantities }: Pick<ClassLimit, 'quantities'>): string {
  return KINDS[quantities[0]?.kind ?? 'ratio'].stored
}

/**
 * Whether a limit's numbers are those of the stored unit.
 * @throws RangeError for a unit that is none of the kind's
 */
export function isWrittenAsStored(limit: Quantity): boolean {
  const { factor, offset } = writtenUnit(limit)
  return factor === 1 && offset === undefined
}

function writtenUnit(limit: Quantity): Unit {
  const unit = KINDS[limit.kind].units.find((candidate) => candidate.symbol === limit.unit)
  if (unit === undefined)
    throw new RangeError(`writtenUnit needs a unit of ${limit.kind}, got "${limit.unit}"`)
  return unit
}
