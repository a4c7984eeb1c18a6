/** What waits for its time. */
const timers = new Map<() => void, ReturnType<typeof setTimeout>>()

/** Calls once nothing has asked for it for so long. */
export function soon(call: () => void, afterMs: number): void {
  notSoon(call)
  timers.set(
    call,
    setTimeout(() => atOnce(call), afterMs),
  )
}

/** Calls now what waits for its time; nothing where it does not wait. */
export function atOnce(call: () => void): void {
  if (!timers.has(call)) return
  notSoon(call)
  call()
}

/** Takes back what was asked for. */
export function notSoon(call: () => void): void {
  clearTimeout(timers.get(call))
  timers.delete(call)
}
