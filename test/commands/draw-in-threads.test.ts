/** A site that several threads draw, held against one that is drawn by one. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import { type BuiltSite, buildSite } from '../../src/commands/build-site.ts'
import { drawThreads, threadsThatPay } from '../../src/commands/draw-threads.ts'
import { CommandFailure, EXIT } from '../../src/commands/program.ts'
import { programDigest } from '../../src/commands/program-digest.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { loadRecords } from '../../src/records/load.ts'
import { EDITS, type EditedSite, newSite } from '../torture/edited-site.ts'
import { fileDigests } from './file-digests.ts'

let site: EditedSite

const recordsOf = () => loadRecords(site.content).records

/** Builds it with two threads that help, and beside it with none. */
async function bothBuilt(): Promise<Record<'together' | 'alone', BuiltSite>> {
  const built = (out: string, threads: number) =>
    buildSite(recordsOf(), { out, threads, asOf: readMoment(site.asOf), audience: 'public', accept: ['*'] })
  return { together: await built(site.out, 2), alone: await built(site.anew, 0) }
}

const drawnOf = ({ drawn }: BuiltSite) => [...drawn].sort()
const files = (folder: string) => new Map(fileDigests(folder).sort())

beforeAll(async () => {
  site = await newSite()
})

/** Each case goes on where the one before ended. */
describe('a site that is drawn in threads', { timeout: 600_000 }, () => {
  it('has the bytes of one that is not, file for file', async () => {
    const { together, alone } = await bothBuilt()
    expect(drawnOf(together)).toHaveLength(together.pages)
    expect(together.drawnLines).toEqual(alone.drawnLines)
    expect(together.notes).toEqual(alone.notes)
    expect(files(site.out)).toEqual(files(site.anew))
  })

  it('has a next build draw and make nothing', async () => {
    const { together } = await bothBuilt()
    expect(together).toMatchObject({ drawn: [], made: [] })
    expect(files(site.out)).toEqual(files(site.anew))
  })

  it('keeps the pages whose view is the same, but for one that somebody has altered', async () => {
    for (const edit of ['a control', 'a day later']) site = EDITS[edit]?.(site, (count) => count - 1) ?? site
    const kept = await bothBuilt()
    expect(drawnOf(kept.together)).toEqual(drawnOf(kept.alone))
    expect(drawnOf(kept.together).filter((path) => path.startsWith('lots/')).length).toBeLessThan(34)
    for (const edit of ['a published page altered by hand', 'a day later'])
      site = EDITS[edit]?.(site, (count) => count - 1) ?? site
    const { together, alone } = await bothBuilt()
    expect(drawnOf(together).filter((path) => !drawnOf(alone).includes(path))).toHaveLength(1)
    expect(files(site.out)).toEqual(files(site.anew))
  })
})

/** A program with one page, which cannot be drawn. */
function faultyProgram(): string {
  const entry = join(mkdtempSync(join(tmpdir(), 'faulty-program-')), 'entry.mjs')
  writeFileSync(
    entry,
    `export const app = {
      manifest: { routes: [{ routeData: { prerender: true, pathname: '/', fallbackRoutes: [] } }] },
      routeCache: { clearAll: () => {}, get: () => undefined },
      setInternals: () => {},
      setOptions: () => {},
      render: async () => { throw new RangeError('a page that throws') },
    }`,
  )
  return entry
}

describe('a thread that draws', () => {
  const begun = (program: string | null) => {
    const question = { audience: 'public', today: readMoment('2026-04-10') } as const
    const drawing = { entry: faultyProgram(), styles: {} }
    const final = join(mkdtempSync(join(tmpdir(), 'draw-thread-')), 'site')
    const work = { records: recordsOf(), question, final, program: program ?? '', drawing }
    const [thread] = drawThreads(1, () => work)
    if (thread === undefined) throw new Error('No thread has begun.')
    return thread
  }
  const asked = [{ file: 'index.html', viewBefore: null }]

  it('ends with what a page throws, for all that is asked', async () => {
    const thread = begun(programDigest())
    const fault = expect.objectContaining({ message: 'a page that throws' })
    const answers = await Promise.allSettled([thread.draw(asked), thread.draw(asked)])
    expect(answers).toEqual([1, 2].map(() => ({ status: 'rejected', reason: fault })))
    await expect(thread.notes()).rejects.toEqual(fault)
    await thread.stop()
  })

  it('draws nothing with another program than the one that began it', async () => {
    const thread = begun('another')
    // It has failed before anything is asked of it.
    await pause(3000)
    await expect(thread.draw(asked)).rejects.toEqual(
      new CommandFailure(
        'The program was changed while it built the site.\nfix: build it again',
        EXIT.failed,
      ),
    )
    await thread.stop()
  })

  it('says so where it was stopped', async () => {
    const thread = begun(programDigest())
    const drawing = expect(thread.draw(asked)).rejects.toThrow(/^a thread ended before its pages were drawn/)
    await thread.stop()
    await drawing
  })
})

describe('threadsThatPay', () => {
  const machine = { parallel: 8, used: 1000, free: 100_000 }
  it('has none help with few pages, and more with more, one less than can run at once', () => {
    expect(threadsThatPay(1000, machine)).toBe(0)
    expect(threadsThatPay(3000, machine)).toBe(2)
    expect(threadsThatPay(300_000, machine)).toBe(7)
    expect(threadsThatPay(300_000, { ...machine, parallel: 1 })).toBe(0)
  })
  it('has no more help than there is memory for', () => {
    expect(threadsThatPay(300_000, { ...machine, free: 2500 })).toBe(2)
    expect(threadsThatPay(300_000, { ...machine, free: 900 })).toBe(0)
  })
})
