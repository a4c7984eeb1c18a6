/** Memory that runs short is told in words. */
import { describe, expect, it, vi } from 'vitest'
import { memoryWatch } from '../../src/commands/memory-watch.ts'
import { copyWithManyLots, noTrace, run } from './run-command.ts'

const MB = 1024 * 1024

/** A machine whose objects take so many megabytes of a hundred, of which some are nobody's any more. */
function machine(used: number, live: number, memory = 8000) {
  let now = used
  const collect = vi.fn(() => {
    now = live
  })
  return { heap: () => ({ used: now * MB, limit: 100 * MB }), collect, memory: () => memory * MB }
}

describe('memoryWatch', () => {
  it('lets a command go on while little is used, and collects nothing', () => {
    const own = machine(80, 10)
    memoryWatch(own)()
    expect(own.collect).not.toHaveBeenCalled()
  })

  it('lets it go on where most of what is used is nobody’s any more', () => {
    const own = machine(95, 40)
    expect(memoryWatch(own)).not.toThrow()
    expect(own.collect).toHaveBeenCalledTimes(1)
  })

  it('does not collect again and again near the limit', () => {
    let used = 95
    const own = { ...machine(0, 0), heap: () => ({ used: used * MB, limit: 100 * MB }) }
    own.collect = vi.fn(() => {
      used = 79
    })
    const watch = memoryWatch(own)
    watch()
    for (used of [82, 85, 88]) watch()
    expect(own.collect).toHaveBeenCalledTimes(1)
  })

  it('ends it where all of it is needed, with what to set', () => {
    expect(memoryWatch(machine(90, 81))).toThrow(
      'The memory that Node.js may take, 100 MB, is not enough for these records.\nfix: set NODE_OPTIONS=--max-old-space-size=200, then run the command again (this machine has 8000 MB)',
    )
  })

  it('does not ask for more than the machine has', () => {
    expect(memoryWatch(machine(90, 81, 180))).toThrow(
      'fix: run the command on a machine with more memory (this one has 180 MB), with NODE_OPTIONS=--max-old-space-size=200',
    )
  })

  it('ends check in words, where the engine would end it with a trace', async () => {
    const content = copyWithManyLots(1200)
    vi.stubEnv('NODE_OPTIONS', '--max-old-space-size=60')
    const short = await run('check', '--content', content)
    vi.unstubAllEnvs()
    noTrace(short)
    expect(short.status).toBe(1)
    expect(short.error).toMatch(
      /^The memory that Node\.js may take, 60 MB, is not enough for these records\.\nfix: set NODE_OPTIONS=--max-old-space-size=120, [^\n]*\n$/,
    )
    const enough = await run('check', '--content', content)
    expect(enough.error).not.toContain('memory')
  })
})
