/**
 * Where a control batch stands among the batches before it. One rule for whoever asks: the page of a lot, the chart of
 * a laboratory and the check on batches far off.
 */
import { kept } from '../measure/kept.ts'
import { isBounded } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'

/** A control batch with what was measured on it. */
export interface StandingBatch {
  readonly id: string
  readonly laboratory: string
  /** Lot of its cement. */
  readonly cement: string
  readonly results: readonly Result[]
}

/** How a batch stands by one property at one age. */
export interface ControlStanding {
  readonly result: Result
  readonly cement: string
  /** Mean of the earlier batches, in their unit, and how many they are. */
  readonly mean: number
  readonly batches: number
  /** Own value less that mean, per cent of the mean. */
  readonly percent: number
  /** What batches scatter by; null while too few went before to say. */
  readonly scatter: BatchScatter | null
}

export interface BatchScatter {
  /** Standard deviation of batches about the mean of their cement, per cent of it. */
  readonly percent: number
  readonly degreesOfFreedom: number
  /** Own distance from the mean in standard deviations of such a distance. */
  readonly deviations: number
}

/** As many as a uniformity clause looks back: own choice. */
const LOOK_BACK = 10
/** Fewer batches of one cement, or fewer degrees of freedom of the scatter, do not show what is usual: own choices. */
const FEWEST = 4
const FEWEST_DEGREES = 8

/**
 * Each valid result of each control batch among those before it.
 * @param batches of any laboratories, in any order
 * @returns by the batch's id, in the order of its results; none where no batch of its cement went before
 * Notes: 1. before it are batches of the same laboratory, condition and cement lot whose value of that property and age
 * was tested on an earlier day, so that what is said of a batch never changes: of two tested on one day neither is before
 * the other; 2. a cement that paired batches join is another cement here: the pairs tell how far apart the two are, and
 * not that they are one level; 3. the last ten give the mean, since the level of a laboratory wanders; 4. all give the
 * scatter, by logarithms, since it goes with the level and is known the better the more there are; 5. a value known
 * only within bounds is neither held against others nor one of them.
 */
export function controlStandings(batches: Iterable<StandingBatch>): Map<string, ControlStanding[]> {
  const standings = new Map<string, ControlStanding[]>()
  for (const own of measuredByTest(batches)) {
    const sums: Sums = { squares: 0, degrees: 0, cements: new Map() }
    for (const ofDay of Map.groupBy(own, ({ result }) => result.tested.day).values()) {
      for (const one of ofDay) {
        const standing = standingOf(one, sums)
        if (standing !== null) kept(standings, one.id, (): ControlStanding[] => []).push(standing)
      }
      for (const one of ofDay) add(one, sums)
    }
  }
  return standings
}

/**
 * The index, had its control stood at the mean of the batches before it.
 * @param index per cent, against the control of the standing
 * @returns per cent
 */
export function indexAtMean(
  index: number,
  { result, mean: centre }: Pick<ControlStanding, 'mean'> & { readonly result: Pick<Result, 'value'> },
): number {
  // From index = 100 A/B: the same A over another B.
  return (index * result.value) / centre
}

interface Measured {
  readonly id: string
  readonly cement: string
  readonly result: Result
}

/** By laboratory, condition, property and age, in order of the day of the test. */
function measuredByTest(batches: Iterable<StandingBatch>): Measured[][] {
  const byTest = new Map<string, Map<string, Measured>>()
  for (const { id, laboratory, cement, results } of batches)
    for (const result of results) {
      const { valid, value, condition, age, property } = result
      if (!valid || value <= 0 || isBounded(result) || age === undefined) continue
      const key = [laboratory, condition, property, age.hours].join('|')
      // A test made again counts in place of the one before it.
      kept(byTest, key, (): Map<string, Measured> => new Map()).set(id, { id, cement, result })
    }
  return [...byTest.values()].map((own) =>
    [...own.values()].sort((a, b) => a.result.tested.day - b.result.tested.day),
  )
}

/** Batches so far: those of a cement, and squared distances of logarithms from the means of their cements. */
interface Sums {
  squares: number
  degrees: number
  readonly cements: Map<string, { n: number; meanLog: number; readonly recent: number[] }>
}

function standingOf(
  { cement, result }: Measured,
  { squares, degrees, cements }: Sums,
): ControlStanding | null {
  const before = cements.get(cement)
  if (before === undefined) return null
  const { n, recent } = before
  const centre = mean(recent)
  const batches = recent.length
  const head = { result, cement, mean: centre, batches, percent: 100 * (result.value / centre - 1) }
  if (n < FEWEST || degrees < FEWEST_DEGREES || squares === 0) return { ...head, scatter: null }
  const deviation = Math.sqrt(squares / degrees)
  const deviations = Math.log(result.value / centre) / (deviation * Math.sqrt(1 + 1 / batches))
  return { ...head, scatter: { percent: 100 * deviation, degreesOfFreedom: degrees, deviations } }
}

/** Welford 1962, Technometrics 4, 419-420: the squares about a mean grow by n/(n + 1) of the squared distance from it. */
function add({ cement, result }: Measured, sums: Sums): void {
  const own = kept(sums.cements, cement, () => ({ n: 0, meanLog: 0, recent: [] as number[] }))
  const distance = Math.log(result.value) - own.meanLog
  if (0 < own.n) {
    sums.squares += (distance ** 2 * own.n) / (own.n + 1)
    sums.degrees += 1
  }
  own.n += 1
  own.meanLog += distance / own.n
  own.recent.push(result.value)
  if (LOOK_BACK < own.recent.length) own.recent.shift()
}
