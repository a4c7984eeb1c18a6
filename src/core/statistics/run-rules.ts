/** Patterns of a control chart that chance seldom makes. */

export type RunPattern = 'beyond-limits' | 'run-of-eight' | 'six-rising-or-falling' | 'two-of-three'

export interface RunSignal {
  readonly rule: RunPattern
  /** Where the rule first holds, and where the pattern begins. */
  readonly at: number
  readonly from: number
  readonly side: 'high' | 'low'
}

const RUN = 8
const RISING = 6

/**
 * Every pattern, each run once.
 * @param deviations from the centre in standard deviations, in order
 * @returns in order of place: a point beyond three; the eighth of a run on one side; the sixth of a steady rise or
 * fall; the second of three beyond two on one side
 * Notes: 1. a value on the centre ends a run, equal values end a rise; 2. a run that goes on is one signal.
 * Source: rules of the Western Electric handbook 1956 with the run of eight, and Nelson 1984, J. Qual. Technol.
 * 16, 237-239, for six rising (both from memory).
 */
export function runSignals(deviations: readonly number[]): RunSignal[] {
  return [
    ...beyond(deviations),
    ...runsOf(deviations.map(Math.sign), RUN, 'run-of-eight', RUN - 1),
    ...runsOf(rises(deviations), RISING - 1, 'six-rising-or-falling', RISING - 1),
    ...twoOfThree(deviations),
  ].sort((a, b) => a.at - b.at)
}

/** Rules that hold at every point of a pattern from its shortest length on. */
export type HeldPattern = Exclude<RunPattern, 'two-of-three'>

/**
 * Every place at which a rule holds, so that a pattern that goes on counts for its length.
 * @param deviations as of `runSignals`
 * @returns by rule the points beyond three, the eighth of a run and those after it, the sixth of a rise or fall and
 * those after it
 */
export function heldPlaces(deviations: readonly number[]): Record<HeldPattern, number[]> {
  return {
    'beyond-limits': beyond(deviations).map(({ at }) => at),
    'run-of-eight': placesWithin(deviations.map(Math.sign), RUN),
    'six-rising-or-falling': placesWithin(rises(deviations), RISING - 1),
  }
}

function placesWithin(signs: readonly number[], length: number): number[] {
  let run = 0
  return signs.flatMap((sign, at) => {
    run = runAt(signs, at, run)
    return length <= run && sign !== 0 ? [at] : []
  })
}

/** Length of the run that a sign belongs to, by that of the sign before it; a zero is in none. */
function runAt(signs: readonly number[], at: number, before: number): number {
  const sign = signs[at]
  return sign === 0 ? 0 : sign === signs[at - 1] ? before + 1 : 1
}

function beyond(deviations: readonly number[]): RunSignal[] {
  return deviations.flatMap((deviation, at) =>
    3 < Math.abs(deviation) ? [{ rule: 'beyond-limits', at, from: at, side: sideOf(deviation) }] : [],
  )
}

/** Direction in which each point lies from the one before it; none at the first. */
function rises(deviations: readonly number[]): number[] {
  return deviations.map((deviation, place) => Math.sign(deviation - (deviations[place - 1] ?? deviation)))
}

/** @param back points from the last of a run to the first of its pattern */
function runsOf(signs: readonly number[], length: number, rule: RunPattern, back: number): RunSignal[] {
  let run = 0
  return signs.flatMap((sign, at) => {
    run = runAt(signs, at, run)
    return run === length ? [{ rule, at, from: at - back, side: sideOf(sign) }] : []
  })
}

/** The third point itself lies beyond, so that each pair is found once. */
function twoOfThree(deviations: readonly number[]): RunSignal[] {
  return deviations.flatMap((deviation, at) => {
    if (Math.abs(deviation) <= 2) return []
    const other = [at - 1, at - 2].find((place) => 2 < Math.sign(deviation) * (deviations[place] ?? 0))
    return other === undefined ? [] : [{ rule: 'two-of-three', at, from: other, side: sideOf(deviation) }]
  })
}

function sideOf(deviation: number): 'high' | 'low' {
  return 0 < deviation ? 'high' : 'low'
}
