/** Where long runs go on, and what they found so far: kept in .torture/, which no commit takes up. */
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'

const FILE = resolve(import.meta.dirname, '../../.torture/state.json')

/** Faults kept of each kind; the rest is only counted. */
const KEPT = 50

export interface FoundFault {
  readonly kind: string
  readonly seed: number
  readonly number: number
  readonly fault: string
}

export interface TortureState {
  readonly seed: number
  /** The next case of each kind, which is also how many were run. */
  readonly next: Record<string, number>
  /** Commands killed while they ran. */
  kills: number
  /** Counts of faults by kind. */
  readonly faultCounts: Record<string, number>
  readonly faults: FoundFault[]
}

export function newState(seed: number): TortureState {
  return { seed, next: {}, kills: 0, faultCounts: {}, faults: [] }
}

/** The state of the last run; a new one where there is none, or it was of another seed. */
export function readState(seed: number | undefined): TortureState {
  try {
    const state = JSON.parse(readFileSync(FILE, 'utf8')) as TortureState
    if (seed === undefined || state.seed === seed) return state
  } catch {
    // No run yet, or one that was interrupted while it wrote its first state.
  }
  return newState(seed ?? 1)
}

export function writeState(state: TortureState): void {
  mkdirSync(dirname(FILE), { recursive: true })
  writeFileSync(`${FILE}.next`, `${JSON.stringify(state, null, 1)}\n`)
  renameSync(`${FILE}.next`, FILE)
}

/** Takes up a case's faults. @returns whether a fault of its kind and words is new */
export function addFaults(
  state: TortureState,
  kind: string,
  number: number,
  faults: readonly string[],
): boolean {
  const known = new Set(state.faults.map(({ fault }) => fault))
  const fresh = faults.filter((fault) => !known.has(fault))
  state.faultCounts[kind] = (state.faultCounts[kind] ?? 0) + faults.length
  const kept = state.faults.filter((found) => found.kind === kind).length
  for (const fault of fresh.slice(0, Math.max(0, KEPT - kept)))
    state.faults.push({ kind, seed: state.seed, number, fault })
  return fresh.length > 0
}
