/** A stretch of time in which cases of one kind are read, in a thread that is given up where a case never ends. */
import { setTimeout as pause } from 'node:timers/promises'
import { Worker } from 'node:worker_threads'
import { AT_WORK, type CaseFaults, ENDED, type ReadingWork, STOP } from './reading-worker.ts'

/** Seconds after which a case is given up; reading one takes milliseconds, making a thread ready some seconds. */
const GIVEN_UP = 60

export interface Slice {
  readonly next: number
  readonly found: readonly CaseFaults[]
}

/** @param seconds how long cases are begun */
export async function readingSlice(work: Omit<ReadingWork, 'shared'>, seconds: number): Promise<Slice> {
  const shared = new Int32Array(new SharedArrayBuffer(12))
  Atomics.store(shared, AT_WORK, work.from)
  const found: CaseFaults[] = []
  const worker = new Worker(new URL('./reading-worker.ts', import.meta.url), {
    workerData: { ...work, shared } satisfies ReadingWork,
  })
  worker.on('message', (faults: CaseFaults) => found.push(faults))
  let died: string | undefined
  worker.on('error', (error) => {
    died = `the thread died: ${error.message}`
  })
  const ended = new Promise<void>((done) =>
    worker.once('exit', () => {
      Atomics.store(shared, ENDED, 1)
      done()
    }),
  )
  const outcome = await Promise.race([ended, watched(shared, seconds)])
  if (outcome === 'stuck') {
    await worker.terminate()
    died = `did not end within ${GIVEN_UP} s`
  } else await ended
  const at = Atomics.load(shared, AT_WORK)
  if (died === undefined) return { next: at, found }
  return { next: at + 1, found: [...found, { number: at, faults: [died] }] }
}

/** Tells the thread to stop after its time, and looks whether it is still at work. */
async function watched(shared: Int32Array, seconds: number): Promise<'stuck' | 'stopped'> {
  let [last, since] = [-1, 0]
  for (let second = 0; ; second += 1) {
    if (second >= seconds) Atomics.store(shared, STOP, 1)
    await pause(1000, undefined, { ref: false })
    if (Atomics.load(shared, ENDED) === 1) return 'stopped'
    const at = Atomics.load(shared, AT_WORK)
    since = at === last ? since + 1 : 0
    last = at
    if (since >= GIVEN_UP) return 'stuck'
  }
}
