/** Builds the demo's public site and starts a browser, once for all test files that read the site. */
import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { ROOT } from '../../src/commands/program.ts'
import { startBrowserServer } from './browser.ts'
import { ADDRESS, failureFile } from './built-site.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the demo's public site, there once it is built: to be read, never written. */
    demoFolder: string
    browserAddress: string
  }
}

/**
 * The build runs beside the first tests, which need no site: the runner waits for what is awaited here.
 * @returns what ends both again
 */
export default async function demoAndBrowser(project: TestProject): Promise<() => Promise<void>> {
  const folder = join(mkdtempSync(join(tmpdir(), 'site-')), 'out')
  const build = join(ROOT, 'src/commands/build.ts')
  const building = execFile(
    process.execPath,
    [build, '--out', folder, '--address', ADDRESS],
    (error, _out, complaints) => {
      if (error !== null && !building.killed) writeFileSync(failureFile(folder), complaints)
    },
  )
  const ended = new Promise((done) => building.once('close', done))
  const browser = await startBrowserServer()
  project.provide('demoFolder', folder)
  project.provide('browserAddress', browser.wsEndpoint())
  return async () => {
    building.kill()
    await Promise.all([ended, browser.close()])
    rmSync(dirname(folder), { recursive: true, force: true })
  }
}
