/** Runs the program of one tree and keeps everything it writes in a folder. */
import { closeSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { runProgram } from './processes.ts'
import { lanes, type Run } from './runs.ts'

/**
 * @param tree folder of the project, packages installed
 * @param folder where results go
 */
export async function capture(tree: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true })
  await Promise.all(
    lanes(folder).map(async (lane) => {
      for (const run of lane) await captureRun(run, tree, folder)
    }),
  )
}

/** What a run printed and how it ended; its files lie in a folder of its name. */
export interface Captured {
  readonly status: number
  readonly out: string
  readonly err: string
}

export function captured(run: Run, folder: string): Captured {
  const read = (ending: string) => readFileSync(join(folder, `${run.name}.${ending}`), 'utf8')
  return { status: Number(read('status')), out: read('out'), err: read('err') }
}

async function captureRun(run: Run, tree: string, folder: string): Promise<void> {
  const [script = '', ...options] = run.script
  const paths = ['out', 'err'].map((ending) => join(folder, `${run.name}.${ending}`))
  const outputs = paths.map((path) => openSync(path, 'w'))
  const status = await runProgram('npm', ['run', '--silent', script, '--', ...options], tree, [
    'ignore',
    ...outputs,
  ])
  outputs.forEach(closeSync)
  for (const path of paths) makePlacesAlike(path, tree, folder)
  writeFileSync(join(folder, `${run.name}.status`), `${status}`)
}

/** The two trees lie in different folders, which must not count as a difference. */
function makePlacesAlike(path: string, tree: string, folder: string): void {
  const text = readFileSync(path, 'utf8')
  const alike = text.replaceAll(folder, '<results>').replaceAll(tree, '<project>')
  if (alike !== text) writeFileSync(path, alike)
}
