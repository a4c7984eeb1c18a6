import { afterEach, expect, it, vi } from 'vitest'
import { progress } from '../../src/commands/progress.ts'

afterEach(() => vi.unstubAllEnvs())

/** What is written where the command is at two things at given milliseconds, then ends. */
function written(isTTY: boolean, ...times: readonly [number, number]): string {
  vi.stubEnv('CI', process.env['CI'] === 'yes' ? 'yes' : '')
  let [text, now] = ['', 0]
  const telling = progress({ isTTY, write: (more) => (text += more) }, () => now)
  for (const [place, time] of times.entries()) {
    now = time
    telling.at(`thing ${place}`)
  }
  telling.end()
  telling.end()
  return text
}

it('progress says on one line what is done after the first second, and takes it away', () => {
  expect(written(true, 900, 1000)).toBe('\r\u001b[Kthing 1 ...\r\u001b[K')
  expect(written(true, 1000, 5000)).toBe('\r\u001b[Kthing 0 ...\r\u001b[Kthing 1 ...\r\u001b[K')
})

it('progress is silent in short work, away from a terminal, and in CI', () => {
  expect(written(true, 10, 999)).toBe('')
  expect(written(false, 1000, 5000)).toBe('')
  vi.stubEnv('CI', 'yes')
  expect(written(true, 1000, 5000)).toBe('')
})
