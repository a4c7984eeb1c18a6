import { existsSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
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
  const stage = makeStage()
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
