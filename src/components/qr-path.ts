/** A QR code as one path, so that the page holds a drawing and no image file. */
import { encode } from 'uqr'

export interface QrPath {
  readonly size: number
  readonly path: string
}

/**
 * Light modules around the code that a reader needs (four, as the QR standard asks; from memory,
 * unconfirmed).
 */
const BORDER = 4

/** @returns side of the square in modules, border included, and the path of its dark modules */
export function qrPath(text: string): QrPath {
  // Any mask can be read; a fixed one spares trying all eight for each of thousands of pages.
  const { size, data } = encode(text, { ecc: 'M', border: BORDER, maskPattern: 2 })
  return {
    size,
    path: data
      .flatMap((row, y) => darkRuns(row).map(([x, length]) => `M${x} ${y}h${length}v1h-${length}z`))
      .join(''),
  }
}

function darkRuns(row: readonly boolean[]): [number, number][] {
  const runs: [number, number][] = []
  row.forEach((dark, x) => {
    const last = runs.at(-1)
    if (!dark) return
    if (last !== undefined && last[0] + last[1] === x) last[1] += 1
    else runs.push([x, 1])
  })
  return runs
}
