/**
 * Runs cases one after another in a thread of its own, so that one that never ends can be told and given up.
 * Its data: the kind, the seed, the first number, and three shared numbers.
 */
import { parentPort, workerData } from 'node:worker_threads'
import { caseRunner, type ReadingKind } from './kinds.ts'

export interface ReadingWork {
  readonly kind: ReadingKind
  readonly seed: number
  readonly from: number
  readonly shared: Int32Array
}

/** Places in the shared numbers: the case at work, whether to stop, whether the thread has ended. */
export const AT_WORK = 0
export const STOP = 1
export const ENDED = 2

export interface CaseFaults {
  readonly number: number
  readonly faults: readonly string[]
}

if (parentPort !== null) {
  const { kind, seed, from, shared } = workerData as ReadingWork
  const run = caseRunner(kind)
  let number = from
  for (; Atomics.load(shared, STOP) === 0; number += 1) {
    Atomics.store(shared, AT_WORK, number)
    const faults = run(seed, number)
    if (faults.length > 0) parentPort.postMessage({ number, faults } satisfies CaseFaults)
  }
  Atomics.store(shared, AT_WORK, number)
  // A folder of its own is removed when the thread ends.
  process.exit(0)
}
