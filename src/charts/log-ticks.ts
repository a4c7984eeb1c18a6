/** Ticks of a logarithmic axis, as many as there is room for. */

/** Steps within a decade, from the finest to the coarsest. */
const STEPS = [
  [
    1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9,
    9.5,
  ],
  [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9],
  [1, 1.5, 2, 3, 5, 7],
  [1, 2, 5],
  [1, 3],
  [1],
] as const

/**
 * Round values from one end to the other.
 * @param from,to ends of the axis, above zero
 * @param room least share of the axis between two ticks
 */
export function logTicks(from: number, to: number, room: number): number[] {
  const length = Math.log(to / from)
  const first = Math.floor(Math.log10(from))
  const decades = Array.from({ length: Math.ceil(Math.log10(to)) - first + 1 }, (_, place) => first + place)
  const all = STEPS.map((steps) =>
    decades
      // Through text, so that 0.3 is not 0.30000000000000004.
      .flatMap((power) => steps.map((step) => Number(`${step}e${power}`)))
      .filter((value) => from <= value && value <= to),
  )
  const fits = (ticks: readonly number[]) =>
    ticks.every((tick, place) => place === 0 || room <= Math.log(tick / (ticks[place - 1] ?? tick)) / length)
  return all.find(fits) ?? []
}
