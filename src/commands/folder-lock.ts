/** One command at a time writes into a folder: a file names its owner, and one whose owner is gone is taken over. */
import { closeSync, existsSync, openSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { CommandFailure, EXIT } from './program.ts'
import { faultWords } from './system-faults.ts'

interface Owner {
  readonly pid: number
  readonly host: string
}

/**
 * Runs some work while no other command may write into a content folder.
 * @throws CommandFailure where another command is at work there
 */
export function withLock<T>(contentDir: string, work: () => T): T {
  const release = lockContent(contentDir)
  try {
    return work()
  } finally {
    release()
  }
}

/** The lock of `withLock`, for work that goes on. @returns gives it back */
export function lockContent(contentDir: string): () => void {
  return takeLock(join(contentDir, '.issue-lock'), 'Another command is writing in this content folder.')
}

/**
 * Takes a lock.
 * @param path of the lock's file
 * @param taken what is told where another command has it
 * @returns gives it back
 * @throws CommandFailure where another command has it, or the file cannot be written
 */
export function takeLock(path: string, taken: string): () => void {
  const release = () => rmSync(path, { force: true })
  if (created(path)) return release
  // The owner of a lock that was killed is gone: its lock is taken away, once.
  const turn = `${path}.takeover`
  if (isAbandoned(path)) takeAway(path, turn)
  if (created(path)) return release
  throw new CommandFailure(
    taken,
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
    if (isAbandoned(path)) rmSync(path, { force: true })
  } finally {
    rmSync(turn, { force: true })
  }
}

function created(path: string): boolean {
  try {
    writeOwner(path)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw new CommandFailure(
      `${path} cannot be written: ${faultWords(error)}.`,
      EXIT.failed,
      'check the permissions and the free space of the folder',
    )
  }
}

/** Writes who works here into a new file. @throws the system's error where the file is there already */
export function writeOwner(path: string): void {
  const file = openSync(path, 'wx')
  try {
    writeFileSync(file, JSON.stringify({ pid: process.pid, host: hostname() } satisfies Owner))
  } catch (error) {
    rmSync(path, { force: true })
    throw error
  } finally {
    closeSync(file)
  }
}

/** A file without its owner's name is being written, which takes no time, or was when its command was killed. */
const MADE_THIS_MOMENT_MS = 5000

/** Whether the command that wrote a file of `writeOwner` has ended without taking it away. */
export function isAbandoned(path: string): boolean {
  try {
    const owner = ownerIn(readFileSync(path, 'utf8'))
    if (owner === null) return statSync(path).mtimeMs + MADE_THIS_MOMENT_MS < Date.now()
    return owner.host === hostname() && !isRunning(owner.pid)
  } catch {
    // No such file, or gone by now: the next try tells.
    return false
  }
}

/** Null for a text that is not whole. */
function ownerIn(text: string): Owner | null {
  try {
    return JSON.parse(text) as Owner
  } catch {
    return null
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
