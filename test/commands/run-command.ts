/** Runs a command of the program as a user does, in a process of its own. */
import { type ChildProcess, execFile } from 'node:child_process'
import { cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const ROOT = resolve(import.meta.dirname, '../..')

/**
 * What Node makes of the program's modules, kept by their text: compiling is a third of the time of a command that
 * starts some hundred times here.
 */
const COMPILED = join(tmpdir(), 'puteoli-tests-compiled')

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
  const options = { maxBuffer: 1 << 28, env: { ...process.env, NODE_COMPILE_CACHE: COMPILED } }
  const child = execFile(process.execPath, [path, ...args], options, (error, out, text) =>
    end({ status: error === null ? 0 : Number(error.code), out, error: text }),
  )
  return { child, ended }
}

export function run(command: string, ...args: readonly string[]): Promise<Ended> {
  return start(command, ...args).ended
}

/** A copy of the good records of test/diagnostics/base. */
export function contentCopy(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'commands-')), 'content')
  cpSync(join(ROOT, 'test/diagnostics/base'), folder, { recursive: true })
  return folder
}
