/** Runs a command of the program as its user would, and may kill it. */
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const ROOT = resolve(import.meta.dirname, '../..')

/** Milliseconds after which a command counts as hanging. */
const LONGEST = 300_000

export interface Ended {
  /** Null where it was killed. */
  readonly status: number | null
  readonly output: string
  /** Milliseconds it ran. */
  readonly took: number
}

/** When to kill a command: after a time, or a time after a file has come. */
export interface Kill {
  readonly after: number
  readonly onceThereIs?: string
}

let kills = 0

/** How many commands this process killed while they ran. */
export function killsSoFar(): number {
  return kills
}

/** @param name of the command, such as `issue` */
export async function runCommand(name: string, options: readonly string[], kill?: Kill): Promise<Ended> {
  const begun = performance.now()
  const child = spawn(process.execPath, [resolve(ROOT, `src/commands/${name}.ts`), ...options], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let output = ''
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (piece: string) => {
      output += piece
    })
  const ended = new Promise<number | null>((done) => child.once('close', (status) => done(status)))
  let over = false
  void ended.then(() => {
    over = true
  })
  const limit = setTimeout(() => child.kill('SIGKILL'), LONGEST)
  if (kill !== undefined) {
    const seen = kill.onceThereIs
    while (seen !== undefined && !over && !existsSync(seen)) await pause(1)
    await Promise.race([ended, pause(kill.after)])
    if (child.kill('SIGKILL') && !over) kills += 1
  }
  const status = await ended
  clearTimeout(limit)
  return { status, output, took: performance.now() - begun }
}

/** A trace, or an end that nobody asked for. */
export function commandFaults(
  what: string,
  { status, output, took }: Ended,
  expected: readonly number[],
): string[] {
  const trace = /^\s+at .+:\d+:\d+\)?$/m.test(output)
  return [
    ...(trace ? [`${what} ends in a trace: ${firstError(output)}`] : []),
    ...(took < LONGEST ? [] : [`${what} does not end`]),
    ...(trace || (status !== null && expected.includes(status))
      ? []
      : [`${what} ends with status ${status}: ${output.slice(-300)}`]),
  ]
}

function firstError(output: string): string {
  return /^\w*Error.*$/m.exec(output)?.[0] ?? output.slice(0, 200)
}
