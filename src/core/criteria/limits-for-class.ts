/** What a limit says for one class: a limit may be a quantity for every class, or one for each. */
import { kept } from '../measure/kept.ts'
import type { Quantity } from '../measure/units.ts'
import { EVERY_CLASS, type Limit, type Operator, partsOfClass } from './criterion.ts'

/** A limit as it holds for one class; one that only asks for a report holds nothing. */
export interface ClassLimit {
  readonly operator: Exclude<Operator, 'report'>
  /** Two for `between`, else one. */
  readonly quantities: readonly Quantity[]
}

/** A limit with its own digits, as a reason states it. */
export interface StatedLimit {
  readonly operator: Operator
  /** "70.0 %", one for each quantity. */
  readonly written: readonly string[]
}

/**
 * The quantities that hold for a class, or for a category it is made of.
 * @param lotClass "F" or "N/2"; null where no class is known
 * @returns undefined where the limit does not speak of the class
 */
export function quantitiesFor(limit: Limit, lotClass: string | null): readonly Quantity[] | undefined {
  if (Object.hasOwn(limit.byClass, EVERY_CLASS)) return limit.byClass[EVERY_CLASS]
  const named =
    lotClass === null ? undefined : partsOfClass(lotClass).find((part) => Object.hasOwn(limit.byClass, part))
  return named === undefined ? undefined : limit.byClass[named]
}

const classLimits = new WeakMap<readonly Limit[], Map<string | null, readonly ClassLimit[]>>()

/**
 * The limits that a value is held to for a class; those that do not speak of it are left out.
 * @param lotClass "F" or "N/2"; null where no class is known
 * @returns the same objects each time, since every lot of a class shares them
 */
export function limitsForClass(limits: readonly Limit[], lotClass: string | null): readonly ClassLimit[] {
  const byClass = kept(classLimits, limits, () => new Map<string | null, readonly ClassLimit[]>())
  return kept(byClass, lotClass, () => limitsOf(limits, lotClass))
}

function limitsOf(limits: readonly Limit[], lotClass: string | null): ClassLimit[] {
  return limits.flatMap((limit) => {
    const quantities = quantitiesFor(limit, lotClass)
    return quantities === undefined || limit.operator === 'report'
      ? []
      : [{ operator: limit.operator, quantities }]
  })
}

/**
 * Limits as a reason states them for a class; of a limit that does not speak of it, the first class's.
 * @param lotClass "F" or "N/2"; null where no class is known
 */
export function statedLimits(limits: readonly Limit[], lotClass: string | null): StatedLimit[] {
  return limits.map((limit) => {
    const quantities = quantitiesFor(limit, lotClass) ?? Object.values(limit.byClass)[0] ?? []
    return stated({ operator: limit.operator, quantities })
  })
}

/** A limit whose quantities are known. */
interface Quantified {
  readonly operator: Operator
  readonly quantities: readonly Quantity[]
}

const statedByLimit = new WeakMap<Quantified, StatedLimit>()

/**
 * A limit as a reason states it: in its own digits.
 * @returns the same object each time for the same limit
 */
export function statedLimit(limit: Quantified): StatedLimit {
  return kept(statedByLimit, limit, () => stated(limit))
}

function stated({ operator, quantities }: Quantified): StatedLimit {
  return { operator, written: quantities.map((quantity) => quantity.written) }
}
