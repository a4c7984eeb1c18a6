/** How a standard deviation goes with the level of what is measured. */
import { mean, sum } from '../../statistics/descriptive.ts'
import { lineThrough } from '../../statistics/least-squares.ts'

/** One material: its mean and a standard deviation, in one unit. */
export interface PrecisionLevel {
  readonly mean: number
  readonly deviation: number
}

/** s constant; s = b m; s = a + b m; log s = c + d log m. */
export type LevelLaw = 'constant' | 'proportional' | 'linear' | 'power'

export interface LevelFit {
  readonly law: LevelLaw
  /** a or c: in the unit, of the power law a logarithm to base 10; 0 where the law has none. */
  readonly intercept: number
  /** b or d; 0 of a constant. */
  readonly slope: number
  /** Root mean square of the logarithm of s over the law's s: about the share by which levels miss the law. */
  readonly misfit: number
}

/** With fewer levels nearly any of the laws runs through them: own choice. */
export const FEW_LEVELS = 5
const FEWEST_FOR_LINE = 3
const ROUNDS = 200
const SMALLEST_STEP = 1e-10

/**
 * The four laws of a standard deviation over the level.
 * @param levels of one round robin, means above zero
 * @returns those that can be fitted, the simplest first; none for fewer than two levels, and where a deviation is nought
 * Notes: 1. of a straight line the weights are 1/ŝ², begun with the deviations found and repeated until nothing moves, which the
 * standard's third round comes close to; 2. a line that falls to nought at one of the levels is left out; 3. nothing here chooses a law.
 * Source: ISO 5725-2:1994, 7.5, its relationships I, II and III and the weights of II (from memory); its example from memory and
 * numpy are the checks.
 */
export function levelFits(levels: readonly PrecisionLevel[]): LevelFit[] {
  const deviations = levels.map(({ deviation }) => deviation)
  if (levels.length < 2 || deviations.some((one) => one <= 0)) return []
  const ratios = levels.map((level) => level.deviation / level.mean)
  const laws: (Law | null)[] = [
    { law: 'constant', intercept: mean(deviations), slope: 0 },
    { law: 'proportional', intercept: 0, slope: mean(ratios) },
    ...(levels.length < FEWEST_FOR_LINE ? [] : [lineFit(levels), powerFit(levels)]),
  ]
  return laws.flatMap((law) => (law === null ? [] : [{ ...law, misfit: misfitOf(law, levels) }]))
}

type Law = Omit<LevelFit, 'misfit'>

/**
 * The standard deviation that a law gives at a level.
 * @param law as fitted
 * @param level mean, above zero
 * @returns in the unit of the mean
 */
export function deviationAt({ law, intercept, slope }: Law, level: number): number {
  return law === 'power' ? 10 ** (intercept + slope * Math.log10(level)) : intercept + slope * level
}

function lineFit(levels: readonly PrecisionLevel[]): Law | null {
  let weights = levels.map(({ deviation }) => deviation ** -2)
  let line = { intercept: 0, slope: 0 }
  for (let round = 0; round < ROUNDS; round += 1) {
    const t = (of: (level: PrecisionLevel) => number) =>
      sum(levels.map((level, place) => (weights[place] ?? 0) * of(level)))
    // ISO 5725-2, T1 to T5.
    const [t1, t2, t3] = [t(() => 1), t((one) => one.mean), t((one) => one.mean ** 2)]
    const [t4, t5] = [t((one) => one.deviation), t((one) => one.mean * one.deviation)]
    const scale = t1 * t3 - t2 ** 2
    if (!(1e-12 * t1 * t3 < scale)) return null
    const next = { intercept: (t3 * t4 - t2 * t5) / scale, slope: (t1 * t5 - t2 * t4) / scale }
    const fitted = levels.map((one) => next.intercept + next.slope * one.mean)
    if (fitted.some((one) => one <= 0)) return null
    const moved = Math.max(...fitted.map((one, place) => Math.abs(one * Math.sqrt(weights[place] ?? 0) - 1)))
    weights = fitted.map((one) => one ** -2)
    line = next
    if (moved <= SMALLEST_STEP) break
  }
  return { law: 'linear', ...line }
}

function powerFit(levels: readonly PrecisionLevel[]): Law | null {
  const xs = levels.map((one) => Math.log10(one.mean))
  if (new Set(xs).size < 2) return null
  const line = lineThrough(
    xs,
    levels.map(({ deviation }) => Math.log10(deviation)),
  )
  return { law: 'power', intercept: line.meanY - line.slope * line.meanX, slope: line.slope }
}

function misfitOf(law: Law, levels: readonly PrecisionLevel[]): number {
  return Math.sqrt(mean(levels.map((one) => Math.log(one.deviation / deviationAt(law, one.mean)) ** 2)))
}
