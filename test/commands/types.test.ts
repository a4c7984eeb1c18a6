/** The types of the whole program, checked beside other tests: alone, the checker keeps one processor and leaves the rest idle. */
import { execFile } from 'node:child_process'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')
const SLOW_MS = 600_000

/** @returns what the checker said; empty where it found nothing */
function checked(): Promise<string> {
  return new Promise((done) => {
    execFile('npm', ['run', '--silent', 'types'], { cwd: ROOT }, (fault, stdout, stderr) =>
      done(fault === null ? '' : `${stdout}${stderr}${fault.message}`),
    )
  })
}

describe('npm run types', () => {
  it('finds no error', { timeout: SLOW_MS }, async () => {
    expect(await checked()).toBe('')
  })
})
