/** One command at a time writes into a content folder. */
import { closeSync, existsSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { CommandFailure, EXIT } from './program.ts'

interface Owner {
  readonly pid: number
  readonly host: string
}

/**
 * Runs some work while no other command may write into the folder.
 * @throws CommandFailure where another command is at work there
 */
export function withLock<T>(contentDir: string, work: () => T): T {
  const path = join(contentDir, '.issue-lock')
  take(path)
  try {
    return work()
  } finally {
    rmSync(path, { force: true })
  }
}

function take(path: string): void {
  if (created(path)) return
  // The owner of a lock that was killed is gone: its lock is taken away, once.
  const turn = `${path}.takeover`
  if (isStale(path)) takeAway(path, turn)
  if (created(path)) return
  throw new CommandFailure(
    'Another command is issuing in this content folder.',
    EXIT.failed,
    `wait for it to end; if none is running, delete ${existsSync(turn) ? `${turn} and ` : ''}${path}`,
  )
}

/**
 * One command at a time takes a lock away, and looks at it again in its turn: meanwhile another may have done so
 * and be at work under a lock of its own.
 */
function takeAway(path: string, turn: string): void {
  if (!created(turn)) return
  try {
    if (isStale(path)) rmSync(path, { force: true })
  } finally {
    rmSync(turn, { force: true })
  }
}

function created(path: string): boolean {
  try {
    const file = openSync(path, 'wx')
    writeFileSync(file, JSON.stringify({ pid: process.pid, host: hostname() } satisfies Owner))
    closeSync(file)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw new CommandFailure(
      `${path} cannot be written: ${(error as Error).message}`,
      EXIT.failed,
      'check the permissions of the content folder',
    )
  }
}

function isStale(path: string): boolean {
  try {
    const { pid, host } = JSON.parse(readFileSync(path, 'utf8')) as Owner
    return host === hostname() && !isRunning(pid)
  } catch {
    // Being written by another command, or gone by now: the next try tells.
    return false
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}
