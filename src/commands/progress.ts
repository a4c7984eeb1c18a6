/** One line on a terminal that says what long work is at, and is gone once it ends; nothing where nobody watches. */

/** A command that takes less says nothing. */
const SILENT_MS = 1000

export interface Progress {
  /** What is done now, such as "reading the records". */
  readonly at: (what: string) => void
  /** Takes the line away, so that what is told next stands on a line of its own. */
  readonly end: () => void
}

interface Terminal {
  readonly isTTY?: boolean
  readonly write: (text: string) => unknown
}

/** Back to the start of the line, and what stands there is cleared. */
const CLEAR = '\r\u001b[K'

/**
 * @param terminal is left alone unless it is one, and where CI is set
 * @param now milliseconds since the command began
 */
export function progress(
  terminal: Terminal = process.stderr,
  now: () => number = () => performance.now(),
): Progress {
  const isWatched = terminal.isTTY === true && (process.env['CI'] ?? '') === ''
  let isShown = false
  const show = (what: string) => {
    if (!isWatched || now() < SILENT_MS) return
    terminal.write(`${CLEAR}${what} ...`)
    isShown = true
  }
  return {
    at: show,
    end: () => {
      if (isShown) terminal.write(CLEAR)
      isShown = false
    },
  }
}
