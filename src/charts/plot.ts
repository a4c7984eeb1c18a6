/** What all charts share: the room around a plot, and how finely a place on it is written. */

/** Edges of the field within which values are drawn, in pixels. */
export interface Plot {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Room for the labels of the value axis, and at the other end. */
export const LEFT = 46
export const RIGHT = 12

/** A pixel with few decimals: the same digits on every machine. */
export function rounded(pixel: number, decimals = 2): number {
  const parts = 10 ** decimals
  return Math.round(pixel * parts) / parts
}
