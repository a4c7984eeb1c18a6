/**
 * The marks of points that are not plainly valid. Each state has its own outline, so that a chart is read in
 * grey as well.
 */
import type { PointStatus } from './points.ts'

interface Middle {
  readonly x: number
  readonly y: number
}

/** Half the width of a mark in a small drawing, in pixels. */
const SMALL_DIAMOND = 4

/** A diamond: a result that is not valid, a limit that is not met. @param half half its width, pixels */
export function diamond(x: number, y: number, half: number): string {
  return `M${x} ${y - half}l${half} ${half}-${half} ${half}-${half}-${half}Z`
}

/** An arrow at the end of a line: the value lies beyond it. */
export function beyondArrow(x: number, y: number, to: 'left' | 'right'): string {
  const ahead = to === 'right' ? 1 : -1
  return `M${x - 3 * ahead} ${y - 4.5} ${x + 5 * ahead} ${y} ${x - 3 * ahead} ${y + 4.5}Z`
}

/** The path of an open mark in a short history; empty for a valid point, whose dot is drawn with all others. */
export function historyMark({ x, y, shape }: Middle & { readonly shape: PointStatus }): string {
  switch (shape) {
    case 'not-valid':
      return diamond(x, y, SMALL_DIAMOND)
    case 'withdrawn':
      return `M${x - 3} ${y - 3}l6 6m0-6l-6 6`
    case 'pending':
      return `M${x - 3.5} ${y + 3}h7l-3.5-6.5Z`
    case 'valid':
      return ''
  }
}
