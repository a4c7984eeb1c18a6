/** What modules note by name for all others: pages load theirs apart from the commands (slot.ts), so that only globalThis is shared. */

type Slots = Record<symbol, Map<string, unknown> | undefined>

/** @param of what is noted, the same wherever it is asked for */
export function sharedNames<Value>(of: string): Map<string, Value> {
  const slots = globalThis as unknown as Slots
  const slot = Symbol.for(of)
  slots[slot] ??= new Map()
  // Only who names the same has put it there.
  return slots[slot] as Map<string, Value>
}
