/** A limit strip as it is drawn: paths and circles, the mark in the shape of its outcome. */
import type { Outcome } from '../core/criteria/outcome.ts'
import { limitStrip, type StripInput, type StripModel } from './limit-strip.ts'
import { beyondArrow, diamond } from './marks.ts'

export interface StripDrawing {
  readonly width: number
  readonly height: number
  readonly line: string
  readonly allowed: {
    readonly x: number
    readonly y: number
    readonly width: number
    readonly height: number
  }
  /** The interval with its two ends; null without an uncertainty. */
  readonly interval: string | null
  readonly limits: readonly string[]
  /** null where there is no value yet. */
  readonly mark:
    | { readonly form: 'path'; readonly path: string }
    | { readonly form: 'dot' | 'ring'; readonly x: number; readonly y: number; readonly radius: number }
    | null
}

/** Height of the line above the lower edge, and of what stands about it to each side. */
const MIDDLE = 8
const HALF_ALLOWED = 3
const HALF_INTERVAL = 3.5
const HALF_LIMIT = 7
const DOT = 4
const RING = 3.6
const HALF_DIAMOND = 5.5
/** The line stops short of the edges. */
const END = 2

/** @returns null where there is no limit to draw */
export function stripDrawing(input: StripInput, outcome: Outcome): StripDrawing | null {
  const strip = limitStrip(input)
  if (strip === null) return null
  const { width, height, allowed, interval, limits, mark } = strip
  return {
    width,
    height,
    line: `M${END} ${MIDDLE}H${width - END}`,
    allowed: { x: allowed.x, y: MIDDLE - HALF_ALLOWED, width: allowed.width, height: 2 * HALF_ALLOWED },
    interval: interval === null ? null : intervalPath(interval),
    limits: limits.map((x) => `M${x} ${MIDDLE - HALF_LIMIT}V${MIDDLE + HALF_LIMIT}`),
    mark: mark === null ? null : drawnMark(mark, outcome),
  }
}

function intervalPath({ from, to }: { readonly from: number; readonly to: number }): string {
  const [top, bottom] = [MIDDLE - HALF_INTERVAL, MIDDLE + HALF_INTERVAL]
  return `M${from} ${top}V${bottom}M${from} ${MIDDLE}H${to}M${to} ${top}V${bottom}`
}

function drawnMark({ x, beyond }: NonNullable<StripModel['mark']>, outcome: Outcome): StripDrawing['mark'] {
  if (beyond !== null) return { form: 'path', path: beyondArrow(x, MIDDLE, beyond) }
  switch (outcome) {
    case 'meets':
    case 'meets-by-approval':
      return { form: 'dot', x, y: MIDDLE, radius: DOT }
    case 'does-not-meet':
      return { form: 'path', path: diamond(x, MIDDLE, HALF_DIAMOND) }
    default:
      return { form: 'ring', x, y: MIDDLE, radius: RING }
  }
}
