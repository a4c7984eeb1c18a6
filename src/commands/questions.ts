/** Questions to a person at a terminal, each with the answer that Enter gives. */
import { createInterface } from 'node:readline/promises'
import type { Readable, Writable } from 'node:stream'
import { CommandFailure, EXIT } from './program.ts'

export interface Terminal {
  readonly input: Readable & { readonly isTTY?: boolean }
  readonly output: Writable
}

export const TERMINAL: Terminal = { input: process.stdin, output: process.stdout }

export interface Question {
  readonly text: string
  /** What Enter gives. */
  readonly otherwise: string
  /** What is wrong with an answer; undefined where nothing is. */
  readonly fault?: (answer: string) => string | undefined
}

export interface Asking {
  /** The answer, which has no fault. */
  ask(question: Question): Promise<string>
  end(): void
}

/** @throws CommandFailure (wrong use) where the input ends before a question is answered */
export function askingAt({ input, output }: Terminal): Asking {
  const lines = createInterface({ input, output, terminal: input.isTTY === true })
  let isOpen = false
  const closed = new Promise<never>((_, reject) => {
    lines.once('close', () => {
      if (isOpen) output.write('\n')
      reject(
        new CommandFailure(
          'The questions were not answered to their end; nothing was written.',
          EXIT.wrongUse,
          'answer them, or give --yes and options',
        ),
      )
    })
  })
  // Nobody may be waiting when the input ends in good time.
  closed.catch(() => undefined)
  const ask = async ({ text, otherwise, fault }: Question): Promise<string> => {
    isOpen = true
    const given = await Promise.race([lines.question(`${text} [${otherwise}] `), closed])
    isOpen = false
    const answer = given.trim() === '' ? otherwise : given.trim()
    const wrong = fault?.(answer)
    if (wrong === undefined) return answer
    output.write(`${wrong}\n`)
    return ask({ text, otherwise, ...(fault === undefined ? {} : { fault }) })
  }
  return { ask, end: () => lines.close() }
}

/** What Enter would give, for those who cannot or do not want to be asked. */
export const UNASKED: Asking = {
  ask: ({ otherwise }) => Promise.resolve(otherwise),
  end: () => undefined,
}
