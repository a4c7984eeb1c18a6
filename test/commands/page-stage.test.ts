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

/** Length of a path at which another 9 signs are allowed, and 22 are not: Linux takes 4095. */
const DEEPEST = 4080

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

it.each(['a#b', 'a?b', 'a%20b', 'a\\b', 'a\nb'])('refuses a path that Astro cannot build in: %j', (name) => {
  const beside = join(mkdtempSync(join(tmpdir(), 'stage-')), name)
  mkdirSync(beside)
  expect(() => makeStage(beside, true)).toThrow(
    /^Pages cannot be built in ".*Astro cannot work with ".*" in a path\.\nfix: /,
  )
  expect(readdirSync(beside)).toEqual([])
})

it('names the folder that it cannot write to, not the pattern of a name in it', () => {
  // So deep that the system takes the path of the folder, and no longer one in it.
  let beside = mkdtempSync(join(tmpdir(), 'stage-'))
  while (beside.length < DEEPEST) beside = join(beside, 'n'.repeat(Math.min(200, DEEPEST - beside.length)))
  mkdirSync(beside, { recursive: true })
  expect(() => makeStage(beside, true)).toThrow(
    `${beside}/.puteoli cannot be written: its name is too long.\n`,
  )
})
