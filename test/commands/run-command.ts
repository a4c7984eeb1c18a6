/** Runs a command of the program as a user does, in a process of its own. */
import { type ChildProcess, execFile } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { expect } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')

export interface Ended {
  readonly status: number
  readonly out: string
  readonly error: string
}

export interface Running {
  readonly child: ChildProcess
  readonly ended: Promise<Ended>
}

export function start(command: string, ...args: readonly string[]): Running {
  let end: (ended: Ended) => void = () => {}
  const ended = new Promise<Ended>((done) => {
    end = done
  })
  const path = join(ROOT, 'src/commands', `${command}.ts`)
  // Astro serves no page where it finds itself within the runner of these tests.
  const { VITEST: _runner, NODE_ENV: _mode, ...env } = process.env
  const options = { maxBuffer: 1 << 28, env }
  const child = execFile(process.execPath, [path, ...args], options, (error, out, text) =>
    end({ status: error === null ? 0 : Number(error.code), out, error: text }),
  )
  return { child, ended }
}

export function run(command: string, ...args: readonly string[]): Promise<Ended> {
  return start(command, ...args).ended
}

/** Faults are told in words alone. */
export function noTrace(ended: Ended): void {
  expect(ended.error).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m)
}

/** A copy of the good records of test/diagnostics/base. */
export function contentCopy(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'commands-')), 'content')
  cpSync(join(ROOT, 'test/diagnostics/base'), folder, { recursive: true })
  return folder
}

/** Such a copy with further lots tuff/U-0, tuff/U-1 and so on, all alike. */
export function copyWithManyLots(count: number): string {
  const folder = contentCopy()
  const text = readFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'utf8')
  for (let index = 0; index < count; index++) writeFileSync(join(folder, `lots/tuff/U-${index}.yaml`), text)
  return folder
}

/** Writes a decimal comma into a record of such a copy. */
export function spoil(folder: string): void {
  const path = join(folder, 'lots/tuff/T-1.yaml')
  writeFileSync(path, readFileSync(path, 'utf8').replace('1450 t', '1450,5 t'))
}

/** Issues one lot of such a copy. @param more further lots and options */
export function issue(folder: string, ...more: readonly string[]): Promise<Ended> {
  const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'all tests done']
  return run('issue', 'tuff/T-1', '--content', folder, ...said, ...more)
}
