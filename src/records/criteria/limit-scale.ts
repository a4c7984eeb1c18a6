/** What the limits of a clause are written in, and between which values one can be met by some results and not by others. */
import type { Deviation, Operator } from '../../core/criteria/criterion.ts'
import { property, type PropertyKey } from '../../core/measure/properties.ts'
import type { QuantityKind } from '../../core/measure/units.ts'

type Bounds = readonly [low: number, high: number]

export interface LimitScale {
  readonly kind: QuantityKind
  /** In the stored unit of the kind. */
  readonly bounds: Bounds
  /** What is held to the limit: "density", "a deviation of density". */
  readonly of: string
}

/** In per cent: no tolerance around a reference is wider. Own choice. */
const WIDEST_RELATIVE = 10_000

/** Limits on the value of a property itself. */
export function valueScale(key: PropertyKey): LimitScale {
  const { kind, bounds } = property(key)
  return { kind, bounds, of: key }
}

/**
 * Limits of a clause: a deviation of a percentage is in points, a relative one in per cent, any other in the property's
 * own unit; none is larger than the property's whole range.
 */
export function limitScale(key: PropertyKey, deviation: Deviation | undefined): LimitScale {
  if (deviation === undefined) return valueScale(key)
  const { kind, bounds } = property(key)
  const [low, high] = bounds
  const of = `a deviation of ${key}`
  if (deviation.relative)
    return { kind: 'fraction', bounds: [low < 0 ? -WIDEST_RELATIVE : -100, WIDEST_RELATIVE], of }
  const range: Bounds = [low - high, high - low]
  if (kind === 'fraction') return { kind: 'points', bounds: range, of }
  return { kind: kind === 'temperature' ? 'temperature-difference' : kind, bounds: range, of }
}

/** A magnitude has no sign. */
export function boundsUnder(operator: Operator, { bounds: [low, high] }: LimitScale): Bounds {
  return operator === 'magnitude-at-most' ? [0, Math.max(Math.abs(low), Math.abs(high))] : [low, high]
}
