/** Threads that draw pages of a large site beside the one that writes it. */
import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { DrawnPage } from './draw-pages.ts'
import type { AskedPage, ThreadAnswer, ThreadWork } from './draw-thread.ts'
import { memoryShortage } from './memory-watch.ts'
import { posted } from './posted.ts'
import { CommandFailure, INSTALLED } from './program.ts'

/** With fewer pages for each, a thread takes longer to begin than it spares. */
const PAGES_A_THREAD = 1500

interface Machine {
  /** Threads that can run at once. */
  readonly parallel: number
  /** Bytes that objects of this thread take; another one takes no more. */
  readonly used: number
  /** Bytes of memory that are free. */
  readonly free: number
}

/** @param pages that are to be drawn @returns how many threads shorten the build, beside the one that asks */
export function threadsThatPay(pages: number, { parallel, used, free }: Machine = thisMachine()): number {
  return Math.min(parallel - 1, Math.floor(pages / PAGES_A_THREAD), Math.floor(free / used))
}

function thisMachine(): Machine {
  return {
    parallel: availableParallelism(),
    used: process.memoryUsage().heapUsed,
    free: process.availableMemory(),
  }
}

/** @param count of threads; the work is copied once, and only where there are some */
export function drawThreads(count: number, work: () => ThreadWork): DrawThread[] {
  if (count < 1) return []
  const data = posted(work())
  return Array.from({ length: count }, () => new DrawThread(data))
}

interface Waiting {
  readonly answer: (answer: ThreadAnswer) => void
  readonly fail: (fault: unknown) => void
}

export class DrawThread {
  readonly #worker: Worker
  /** Those that wait for an answer, the first one first. */
  readonly #waiting: Waiting[] = []
  #ended: { readonly fault: unknown } | undefined

  constructor(work: SharedArrayBuffer) {
    this.#worker = new Worker(new URL(`./draw-thread.${INSTALLED ? 'js' : 'ts'}`, import.meta.url), {
      workerData: work,
    })
    this.#worker.on('message', (answer: ThreadAnswer) => {
      if ('failure' in answer) this.#end(new CommandFailure(answer.failure.message, answer.failure.status))
      else this.#waiting.shift()?.answer(answer)
    })
    this.#worker.on('error', (error: NodeJS.ErrnoException) =>
      this.#end(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? memoryShortage() : error),
    )
    this.#worker.on('exit', () => this.#end(new RangeError('a thread ended before its pages were drawn')))
  }

  /** @returns each page in its order @throws what a page throws, or what ended the thread */
  async draw(pages: readonly AskedPage[]): Promise<readonly DrawnPage[]> {
    const answer = await this.#ask(pages)
    return 'drawn' in answer ? answer.drawn : []
  }

  /** @returns lines for the reader of the command */
  async notes(): Promise<readonly string[]> {
    const answer = await this.#ask(null)
    return 'notes' in answer ? answer.notes : []
  }

  async stop(): Promise<void> {
    await this.#worker.terminate()
  }

  #ask(asked: readonly AskedPage[] | null): Promise<ThreadAnswer> {
    return new Promise((answer, fail) => {
      if (this.#ended !== undefined) return fail(this.#ended.fault)
      this.#waiting.push({ answer, fail })
      this.#worker.postMessage(asked)
    })
  }

  /** The first fault is the one that is told. */
  #end(fault: unknown): void {
    this.#ended ??= { fault }
    for (const { fail } of this.#waiting.splice(0)) fail(this.#ended.fault)
  }
}
