/** A site of which no more than one source is held at a time, held against one whose lots are all held. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { type BuildOptions, buildSite } from '../../src/commands/build-site.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { loadRecords } from '../../src/records/load.ts'
import { EDITS, type EditedSite } from '../torture/edited-site.ts'
import { fileDigests } from './file-digests.ts'
import { run } from './run-command.ts'

/** Sources in the order in which they were computed; one whose lots follow one another stands once. */
const computed: string[] = []

vi.mock('../../src/edition/certificate/lot-entry.ts', async (original) => {
  const { lotEntry } = await original<typeof import('../../src/edition/certificate/lot-entry.ts')>()
  return {
    lotEntry: (...given: Parameters<typeof lotEntry>) => {
      const [, { state }, place] = given
      if (place === 0) computed.push(state.id)
      return lotEntry(...given)
    },
  }
})

let site: EditedSite

const SOURCES = [
  'quellan-ash',
  'skarnmere-ash',
  'skarnmere-reclaimed',
  'tarn-hollow-limestone',
  'tarn-hollow-tuff',
]

const ONE = { results: 0, whole: 0 }

async function built(out: string, options: Partial<BuildOptions>) {
  const { records } = loadRecords(site.content)
  const fixed = { asOf: readMoment(site.asOf), threads: 0, accept: ['*'] }
  return buildSite(records, { audience: 'public', ...fixed, ...options, out })
}

/** In turn at the one place, all held at the other. @returns how often each source was computed in turn */
async function bothBuilt(options: Partial<BuildOptions>) {
  computed.length = 0
  const inTurn = await built(site.out, { ...options, held: ONE })
  const times = Map.groupBy(computed, (id) => id)
  await built(site.anew, { ...options, fresh: true })
  expect(new Map(fileDigests(site.out).sort())).toEqual(new Map(fileDigests(site.anew).sort()))
  return { inTurn, times: new Map([...times].map(([id, all]) => [id, all.length])) }
}

beforeAll(async () => {
  const top = mkdtempSync(join(tmpdir(), 'in-turn-'))
  site = { content: join(top, 'content'), out: join(top, 'out'), anew: join(top, 'anew'), asOf: '2026-04-10' }
  const made = await run('demo', '--lots', '40', '--sources', '5', '--out', site.content)
  expect(made).toMatchObject({ status: 0, error: '' })
})

describe('a site of one source after the other', () => {
  const options = { audience: 'public' } as const

  it('has the bytes of one whose sources are all held, and computes each of them three times at most', async () => {
    const { inTurn, times } = await bothBuilt(options)
    expect(inTurn.drawn).toHaveLength(inTurn.pages)
    expect([...times.keys()].sort()).toEqual(SOURCES)
    expect(Math.max(...times.values())).toBeLessThanOrEqual(3)
  })

  it('computes nothing again of records that are as they were', async () => {
    const { inTurn, times } = await bothBuilt(options)
    expect(inTurn).toMatchObject({ drawn: [], made: [] })
    expect(times.size).toBe(0)
  })

  it('computes one source of which a reading has changed', async () => {
    site = EDITS['a reading']?.(site, (count) => count - 1) ?? site
    const { inTurn, times } = await bothBuilt(options)
    expect(inTurn.drawn.length).toBeGreaterThan(0)
    expect(times.size).toBe(1)
  })

  it('has the same bytes where a thread helps to draw all of it', async () => {
    const { inTurn } = await bothBuilt({ ...options, threads: 1, fresh: true })
    expect(inTurn.drawn).toHaveLength(inTurn.pages)
  })

  it('asks for all that files of several sources take, though rows were kept by a build of another audience', async () => {
    for (const folder of [site.out, site.anew]) rmSync(folder, { recursive: true })
    const { times } = await bothBuilt({ audience: 'internal' })
    expect(Math.max(...times.values())).toBeLessThanOrEqual(3)
  })
})
