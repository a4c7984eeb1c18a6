/**
 * Ends a command in words where the memory that Node.js may take for objects runs short: at its very end the process would
 * be killed with a trace of the engine.
 */
import { totalmem } from 'node:os'
import { getHeapStatistics, setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { CommandFailure, EXIT } from './program.ts'

/** From this share on the engine ends a process whose time goes into collecting what nobody needs any more. */
const ENOUGH = 0.8

interface Machine {
  /** Bytes that objects which last take, with what nobody needs any more, and that these may take. */
  readonly heap: () => { readonly used: number; readonly limit: number }
  /** Takes away what nobody needs any more. */
  readonly collect: () => void
  /** Bytes of memory that this process may have. */
  readonly memory: () => number
}

/**
 * To be called again and again while a command takes memory.
 * @returns throws CommandFailure once memory runs short
 */
export function memoryWatch(machine: Machine = THIS_MACHINE): () => void {
  // Above it, what is used may be too much, or nobody's any more.
  let suspicious = 0
  return () => {
    const { used, limit } = machine.heap()
    const most = ENOUGH * limit
    if (used <= Math.max(most, suspicious)) return
    machine.collect()
    const needed = machine.heap().used
    if (most < needed) throw shortage(limit, machine.memory())
    suspicious = (needed + limit) / 2
  }
}

/** The same of a thread that has ended because of it; each may take as much as any other. */
export function memoryShortage(): CommandFailure {
  return shortage(THIS_MACHINE.heap().limit, THIS_MACHINE.memory())
}

function shortage(limit: number, memory: number): CommandFailure {
  const wanted = Math.ceil((2 * limit) / MEGABYTE)
  return new CommandFailure(
    `The memory that Node.js may take, ${megabytes(limit)}, is not enough for these records.`,
    EXIT.failed,
    wanted * MEGABYTE < memory
      ? `set NODE_OPTIONS=--max-old-space-size=${wanted}, then run the command again (this machine has ${megabytes(memory)})`
      : `run the command on a machine with more memory (this one has ${megabytes(memory)}), with NODE_OPTIONS=--max-old-space-size=${wanted}`,
  )
}

const MEGABYTE = 1024 * 1024

function megabytes(bytes: number): string {
  return `${Math.round(bytes / MEGABYTE)} MB`
}

/** What Node.js 24 adds for new objects to what --max-old-space-size says, and keeps for them. */
const FOR_NEW_OBJECTS = 192 * MEGABYTE

const THIS_MACHINE: Machine = {
  heap: () => {
    const { used_heap_size: used, heap_size_limit: limit } = getHeapStatistics()
    return { used, limit: limit - FOR_NEW_OBJECTS }
  },
  collect: () => {
    setFlagsFromString('--expose-gc')
    ;(runInNewContext('gc') as () => void)()
  },
  memory: () => {
    // Of a container; none is told as 0 or as more than there is.
    const allowed = process.constrainedMemory()
    return allowed > 0 ? Math.min(allowed, totalmem()) : totalmem()
  },
}
