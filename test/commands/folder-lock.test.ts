import { existsSync, mkdtempSync, readFileSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, expect, it, vi } from 'vitest'
import { withLock } from '../../src/commands/folder-lock.ts'

const GONE = 2 ** 30
const lockOf = (pid: number) => JSON.stringify({ pid, host: hostname() })

function lockedFolder(): { readonly folder: string; readonly lock: string } {
  const folder = mkdtempSync(join(tmpdir(), 'lock-'))
  const lock = join(folder, '.issue-lock')
  writeFileSync(lock, lockOf(GONE))
  return { folder, lock }
}

afterEach(() => {
  vi.restoreAllMocks()
})

it('takes a dead lock over and leaves nothing of it behind', () => {
  const { folder, lock } = lockedFolder()
  expect(withLock(folder, () => readFileSync(lock, 'utf8'))).toBe(lockOf(process.pid))
  expect(existsSync(lock)).toBe(false)
  expect(existsSync(`${lock}.takeover`)).toBe(false)
})

it('leaves the lock of a command alone that took the dead one over meanwhile', () => {
  const { folder, lock } = lockedFolder()
  const live = lockOf(process.ppid)
  vi.spyOn(process, 'kill').mockImplementation((pid) => {
    if (pid !== GONE) return true
    // Between the look at the dead owner and what follows from it, another command gets to work.
    writeFileSync(lock, live)
    throw Object.assign(new Error('no such process'), { code: 'ESRCH' })
  })
  expect(() => withLock(folder, () => 'worked')).toThrow('Another command is writing in this content folder.')
  expect(readFileSync(lock, 'utf8')).toBe(live)
})

it('waits for a command that is taking the lock over, and names what one that was killed left', () => {
  const { folder, lock } = lockedFolder()
  writeFileSync(`${lock}.takeover`, lockOf(GONE))
  expect(() => withLock(folder, () => 'worked')).toThrow(`delete ${lock}.takeover and ${lock}`)
  expect(readFileSync(lock, 'utf8')).toBe(lockOf(GONE))
})

it.each(['', '{"pid":1'])(
  'takes over a lock at whose writing a command was killed, once that is past: %j',
  (text) => {
    const { folder, lock } = lockedFolder()
    writeFileSync(lock, text)
    expect(() => withLock(folder, () => 'worked')).toThrow(
      'Another command is writing in this content folder.',
    )
    const before = new Date(Date.now() - 10_000)
    utimesSync(lock, before, before)
    expect(withLock(folder, () => 'worked')).toBe('worked')
    expect(existsSync(lock)).toBe(false)
  },
)
