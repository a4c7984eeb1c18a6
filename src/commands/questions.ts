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
  /** The answers that there are, where they are few. */
  readonly known?: readonly string[]
  /** What is wrong with an answer; undefined where nothing is. */
  readonly fault?: (answer: string) => string | undefined
}

/** A known answer in whichever letters, "y" and "n" for yes and no; any other answer as it is. */
export function meantAnswer(answer: string, known: readonly string[] = []): string {
  const given = answer.toLowerCase()
  const isShort = known.includes('yes') && (given === 'y' || given === 'n')
  const letters = isShort ? { y: 'yes', n: 'no' }[given] : given
  return known.find((one) => one === answer) ?? known.find((one) => one.toLowerCase() === letters) ?? answer
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
  const ask = async (question: Question): Promise<string> => {
    const { text, otherwise, known, fault } = question
    isOpen = true
    const given = await Promise.race([lines.question(`${text} [${otherwise}] `), closed])
    isOpen = false
    const answer = given.trim() === '' ? otherwise : meantAnswer(given.trim(), known)
    const wrong = fault?.(answer)
    if (wrong === undefined) return answer
    output.write(`${wrong}\n`)
    return ask(question)
  }
  return { ask, end: () => lines.close() }
}

/** What Enter would give, for those who cannot or do not want to be asked. */
export const UNASKED: Asking = {
  ask: ({ otherwise }) => Promise.resolve(otherwise),
  end: () => undefined,
}
