/** Cumulative heat per gram of material, from a table of power or of heat over time. */
import { isValue, readAt, tableFault, type TablePoint } from './reading-table.ts'
import type { ReferenceFault } from './reference-fault.ts'

export interface HeatTest {
  /** x in h; y in mW (power) or J (heat), of the sample, or of one gram of it with `sampleG` 1. */
  readonly readings: readonly TablePoint[]
  readonly of: 'power' | 'heat'
  /** Mass of paste that the readings belong to, g. */
  readonly sampleG: number
  /** Share of the material in that paste, above 0 to 1. */
  readonly share: number
  /** One reading of the baseline holds throughout; between two it drifts on a straight line. None for a table of heat. */
  readonly baseline: readonly TablePoint[]
  readonly startHours: number
  readonly atHours: number
}

export interface CumulativeHeat {
  readonly value: number
  /** J of the sample between start and end, baseline taken off. */
  readonly sampleJ: number
  /** g of material in the sample. */
  readonly materialG: number
  /** J that the baseline took off; null for a table of heat. */
  readonly baselineJ: number | null
  /** Trapezoids summed; 0 for a table of heat. */
  readonly intervals: number
}

/** One mW over one hour, J: exact. */
const JOULE_PER_MILLIWATT_HOUR = 3.6

/**
 * Heat released from the start to a time.
 * @returns J per gram of material, with its steps; a fault where the table, the times or the blanks do not allow it
 * Notes: 1. a value below zero stays, for an inert material may read so; 2. nothing is read outside the table; 3. a drift is
 * not carried beyond its two blank readings.
 * Source: isothermal calorimetry, ASTM C1897 method A in outline (from memory).
 */
export function cumulativeHeat(test: HeatTest): CumulativeHeat | ReferenceFault {
  const { readings, of, sampleG, share, startHours, atHours } = test
  const unsound = tableFault(readings, 'time')
  if (unsound !== null) return unsound
  if (atHours <= startHours) return { fault: 'ends-before-start', start: startHours, at: atHours }
  const [start, end] = [readAt(readings, startHours, 'start'), readAt(readings, atHours, 'at')]
  if (!isValue(start)) return start
  if (!isValue(end)) return end
  const materialG = sampleG * share
  if (of === 'heat') {
    // q = (Q(t) − Q(t₀)) / (m w).
    const sampleJ = end - start
    return { value: sampleJ / materialG, sampleJ, materialG, baselineJ: null, intervals: 0 }
  }
  const within = [
    { x: startHours, y: start },
    ...readings.filter(({ x }) => startHours < x && x < atHours),
    { x: atHours, y: end },
  ]
  const baseline = baselineAlong(test)
  if ('fault' in baseline) return baseline
  const grossJ = JOULE_PER_MILLIWATT_HOUR * trapezoids(within)
  const baselineJ = JOULE_PER_MILLIWATT_HOUR * trapezoids(baseline.ends)
  // q = 3.6 Σ ½ (P − B)ᵢ + (P − B)ᵢ₊₁) Δt / (m w), P in mW, t in h.
  const sampleJ = grossJ - baselineJ
  return { value: sampleJ / materialG, sampleJ, materialG, baselineJ, intervals: within.length - 1 }
}

/**
 * Area under a table by the trapezoid rule.
 * @returns unit of y times unit of x
 */
export function trapezoids(points: readonly TablePoint[]): number {
  return points.slice(1).reduce((area, { x, y }, place) => {
    const before = points[place] ?? { x, y }
    // ½ (y₁ + y₂)(x₂ − x₁).
    return area + ((before.y + y) / 2) * (x - before.x)
  }, 0)
}

/** The baseline at start and end, between which it is straight. */
function baselineAlong({
  baseline,
  startHours,
  atHours,
}: HeatTest): { readonly ends: readonly TablePoint[] } | ReferenceFault {
  const [first, second] = baseline
  if (first === undefined) return { fault: 'few-rows', what: 'table', rows: 0, least: 1 }
  if (second === undefined)
    return {
      ends: [
        { x: startHours, y: first.y },
        { x: atHours, y: first.y },
      ],
    }
  if (second.x <= first.x) return { fault: 'blanks-alike' }
  const outside = [startHours, atHours].find((x) => x < first.x || second.x < x)
  if (outside !== undefined)
    return { fault: 'outside-blanks', asked: outside, first: first.x, last: second.x }
  const at = (x: number) => first.y + ((second.y - first.y) * (x - first.x)) / (second.x - first.x)
  return {
    ends: [
      { x: startHours, y: at(startHours) },
      { x: atHours, y: at(atHours) },
    ],
  }
}
