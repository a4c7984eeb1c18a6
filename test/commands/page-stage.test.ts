import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { makeStage } from '../../src/commands/page-stage.ts'
import { ROOT } from '../../src/commands/program.ts'

const PARENT = join(ROOT, 'node_modules')

function left(name: string, owner?: number): string {
  const folder = join(PARENT, `.pages-test-${name}`)
  mkdirSync(folder, { recursive: true })
  if (owner !== undefined)
    writeFileSync(join(folder, 'owner'), JSON.stringify({ pid: owner, host: hostname() }))
  return folder
}

it('makes a stage with the permissions of any folder, and sweeps those of builds that were killed', () => {
  const gone = left('gone', 2 ** 30)
  const running = left('running', process.ppid)
  const old = left('old')
  utimesSync(old, new Date(0), new Date(0))
  const made = left('made')
  const stage = makeStage(tmpdir())
  try {
    expect([gone, running, old, made].map((folder) => existsSync(folder))).toEqual([false, true, false, true])
    expect(statSync(stage.site).mode & 0o777).toBe(0o777 & ~process.umask())
    expect(readdirSync(stage.site)).toEqual([])
  } finally {
    stage.remove()
    for (const folder of [running, made]) rmSync(folder, { recursive: true })
  }
  expect(existsSync(stage.site)).toBe(false)
})

it('of an installed program lies beside the output, finds the same packages, and leaves nothing there', () => {
  const beside = mkdtempSync(join(tmpdir(), 'stage-'))
  const [stage, other] = [makeStage(beside, true), makeStage(beside, true)]
  expect(readdirSync(beside)).toEqual(['.puteoli'])
  expect(statSync(stage.site).mode & 0o777).toBe(0o777 & ~process.umask())
  const found = createRequire(join(stage.site, 'page.mjs')).resolve('astro/package.json')
  expect(found).toBe(realpathSync(join(ROOT, 'node_modules/astro/package.json')))
  expect(existsSync(join(stage.place.root, 'astro.config.mjs'))).toBe(true)
  stage.remove()
  expect(existsSync(stage.site)).toBe(false)
  expect(existsSync(other.site)).toBe(true)
  other.remove()
  expect(readdirSync(beside)).toEqual([])
})
