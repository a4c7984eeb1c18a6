/**
 * A value that is known only within bounds, and what follows from such values: "< 0.5 %" is anything from nothing
 * to that bound, and a sum that it enters lies within as wide a range.
 */
import { property, type PropertyKey } from '../measure/properties.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { Quantity } from '../measure/units.ts'

/** What a value may be, in its stored unit; null where nothing bounds it on that side. */
export interface Bounds {
  readonly low: number | null
  readonly high: number | null
  /** Ends that the value itself cannot take: what is "< 0.5 %" is less than 0.5. */
  readonly open?: 'low' | 'high' | 'both'
}

/** A number from the written figures, and what the value may be where it is known only within bounds. */
export interface Known {
  readonly value: number
  /** The value is less than the number; without bounds nothing is known of its other end. */
  readonly censored?: 'below'
  readonly bounds?: Bounds
}

/** An end of what a value may be; an infinite one where nothing bounds it. */
export interface BoundEnd {
  readonly at: number
  /** The value itself cannot be there. */
  readonly open: boolean
}

/** Everything that a value may be; one point for a value that is known. */
export interface Extent {
  readonly low: BoundEnd
  readonly high: BoundEnd
}

/** Whether a value is known only within bounds. */
export function isBounded({ censored, bounds }: Pick<Known, 'censored' | 'bounds'>): boolean {
  return censored !== undefined || bounds !== undefined
}

/**
 * What a result written as below a bound may be.
 * @param key property, whose physical bounds end it on the other side
 * @returns in the stored unit; undefined for a plain value
 * Notes: 1. nothing that a laboratory weighs or measures lies below zero; 2. where a property may have either sign,
 * as an expansion, laboratories mean the magnitude: "< 0.01 %" says that the bar hardly moved either way (common
 * practice, no source).
 */
export function reportedBounds(
  key: PropertyKey,
  { value, censored }: Pick<Quantity, 'value' | 'censored'>,
): Bounds | undefined {
  if (censored === undefined) return undefined
  const [least] = property(key).bounds
  if (0 <= least) return { low: Math.min(0, value), high: value, open: 'high' }
  return 0 < value
    ? { low: Math.max(least, -value), high: value, open: -value < least ? 'high' : 'both' }
    : { low: least, high: value, open: 'high' }
}

/** Everything that a value may be, in its unit. */
export function extentOf({ value, censored, bounds }: Known): Extent {
  if (bounds !== undefined)
    return {
      low: { at: bounds.low ?? Number.NEGATIVE_INFINITY, open: isOpen(bounds, 'low') },
      high: { at: bounds.high ?? Number.POSITIVE_INFINITY, open: isOpen(bounds, 'high') },
    }
  const end = { at: value, open: censored !== undefined }
  return { low: censored === undefined ? end : { at: Number.NEGATIVE_INFINITY, open: true }, high: end }
}

function isOpen({ open }: Bounds, end: 'low' | 'high'): boolean {
  return open === end || open === 'both'
}

/**
 * An extent as bounds.
 * @returns undefined where it is one point: the value is known
 */
export function boundsOf({ low, high }: Extent): Bounds | undefined {
  if (low.at === high.at) return undefined
  const open = low.open && high.open ? 'both' : low.open ? 'low' : high.open ? 'high' : undefined
  return { low: finite(low.at), high: finite(high.at), ...(open === undefined ? {} : { open }) }
}

function finite(at: number): number | null {
  return Number.isFinite(at) ? withoutDust(at) : null
}

/** Part of a sum: a value and what it is multiplied by. */
export interface Term {
  readonly factor: number
  readonly of: Known
}

/**
 * What a sum of values may be.
 * @param terms values in one unit with their factors, of either sign
 * @param constant in that unit
 * @returns undefined where each of the values is known
 * Source: interval arithmetic.
 */
export function boundsOfSum(terms: readonly Term[], constant = 0): Bounds | undefined {
  if (!terms.some(({ of }) => isBounded(of))) return undefined
  const [lows, highs] = [terms.map((term) => scaled(term, 'low')), terms.map((term) => scaled(term, 'high'))]
  return boundsOf({ low: added(lows, constant), high: added(highs, constant) })
}

/** A negative factor takes the other end. */
function scaled({ factor, of }: Term, which: keyof Extent): BoundEnd {
  const extent = extentOf(of)
  const { at, open } = 0 <= factor ? extent[which] : extent[which === 'low' ? 'high' : 'low']
  return { at: factor * at, open }
}

function added(ends: readonly BoundEnd[], constant: number): BoundEnd {
  return { at: ends.reduce((sum, { at }) => sum + at, constant), open: ends.some(({ open }) => open) }
}

/**
 * What the product of two values may be.
 * @param one,other neither below zero
 * @returns undefined where both are known
 * Source: interval arithmetic.
 */
export function boundsOfProduct(one: Known, other: Known): Bounds | undefined {
  if (!isBounded(one) && !isBounded(other)) return undefined
  const [a, b] = [extentOf(one), extentOf(other)]
  return boundsOf({ low: multiplied(a.low, b.low), high: multiplied(a.high, b.high) })
}

/** An end at nothing is reached as soon as one of the values may be nothing. */
function multiplied(a: BoundEnd, b: BoundEnd): BoundEnd {
  const [first, second] = [Math.max(0, a.at), Math.max(0, b.at)]
  const isReached = [a, b].some(({ at, open }) => at <= 0 && !open)
  return { at: first === 0 || second === 0 ? 0 : first * second, open: !isReached && (a.open || b.open) }
}

/**
 * What a quotient of two values may be.
 * @param over of either sign
 * @param under not below zero
 * @returns undefined where both are known; no bound on a side where the divisor may be nothing
 * Source: interval arithmetic.
 */
export function boundsOfQuotient(over: Known, under: Known): Bounds | undefined {
  if (!isBounded(over) && !isBounded(under)) return undefined
  const [a, b] = [extentOf(over), extentOf(under)]
  return boundsOf({
    low: divided(a.low, 0 <= a.low.at ? b.high : b.low),
    high: divided(a.high, 0 <= a.high.at ? b.low : b.high),
  })
}

function divided(over: BoundEnd, under: BoundEnd): BoundEnd {
  if (over.at === 0) return { at: 0, open: over.open }
  const at = under.at <= 0 ? Math.sign(over.at) * Number.POSITIVE_INFINITY : over.at / under.at
  return { at, open: over.open || under.open }
}
