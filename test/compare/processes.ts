/** Running other programs, and leaving nothing behind when this one ends or is interrupted. */
import { type ChildProcess, spawn, type StdioOptions } from 'node:child_process'

const running = new Set<ChildProcess>()
const cleanups: (() => void)[] = []

/** The work is done at the end of this process, however it ends; the latest first. */
export function atEnd(cleanup: () => void): void {
  cleanups.push(cleanup)
}

/** Makes an interrupted process end in order: children first, then what `atEnd` was told. */
export function endInOrder(): void {
  process.on('exit', () => {
    if (running.size > 0) stopAll()
    for (const cleanup of cleanups.toReversed()) cleanup()
  })
  for (const [signal, status] of [
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)
    process.on(signal, () => process.exit(status))
}

/**
 * Runs a program to its end.
 * @param stdio where its output goes
 * @returns its exit status; 1 where a signal ended it
 */
export async function runProgram(
  program: string,
  options: readonly string[],
  folder: string,
  stdio: StdioOptions,
): Promise<number> {
  const child = spawn(program, options, { cwd: folder, stdio, detached: true })
  running.add(child)
  try {
    return await new Promise((resolve, reject) => {
      child.once('error', reject)
      child.once('close', (status) => resolve(status ?? 1))
    })
  } finally {
    running.delete(child)
  }
}

/** Returns when the children can no longer write into folders that are about to be removed. */
function stopAll(): void {
  for (const child of running) stop(child)
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 500)
}

/** Stops a child with its own children: npm starts a shell, which starts the program. */
function stop(child: ChildProcess): void {
  if (child.pid === undefined) return
  try {
    process.kill(-child.pid, 'SIGKILL')
  } catch {
    // It has ended by itself in the meantime.
  }
}
