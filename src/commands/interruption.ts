/** What a command takes away when it is interrupted (Ctrl+C, the end of a terminal, a service that stops it). */

/** Exit status of a command that a signal ended: 128 and the signal's number. */
const STATUS = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const

/** The last one first, as they were built up. */
const cleanUps: (() => void)[] = []

/**
 * @param cleanUp called once where a signal ends the command
 * @returns ends the watch: without any left, a signal ends the command as it always does
 */
export function onInterruption(cleanUp: () => void): () => void {
  if (cleanUps.length === 0) for (const signal of Object.keys(STATUS)) process.on(signal, end)
  cleanUps.unshift(cleanUp)
  return () => {
    const place = cleanUps.indexOf(cleanUp)
    if (place >= 0) cleanUps.splice(place, 1)
    if (cleanUps.length === 0) for (const signal of Object.keys(STATUS)) process.off(signal, end)
  }
}

function end(signal: keyof typeof STATUS): void {
  for (const cleanUp of cleanUps.splice(0)) {
    try {
      cleanUp()
    } catch {
      // The command ends all the same; what is left is swept at the next start.
    }
  }
  process.exit(STATUS[signal])
}
