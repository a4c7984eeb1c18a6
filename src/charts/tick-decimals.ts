/** How finely the ticks of an axis are written. */

/** Decimals that tell the labels of an axis apart: none for whole numbers, two at most. */
export function tickDecimals(ticks: readonly { readonly value: number }[]): number {
  const digits = ticks.map(({ value }) => (String(value).split('.')[1] ?? '').length)
  return Math.min(2, Math.max(0, ...digits))
}
