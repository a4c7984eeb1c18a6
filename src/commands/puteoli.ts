#!/usr/bin/env node
/**
 * The one command of the installed program: runs sub-commands.ts on the Node.js that its package brings, for
 * results to the last digit depend on it and Astro refuses older ones. Whatever Node.js starts this must be able
 * to read it, so that it imports nothing else at once.
 */
import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Signals of which a terminal sends the first two to every process in it. */
const SIGNALS = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 } as const

const running = process.versions.node
const own = ownNode()

if (isCurrentFolderGone()) {
  process.stderr.write(
    'The current folder no longer exists.\nfix: change to a folder that exists, then run the command again\n',
  )
  process.exitCode = 1
} else if (own === null || own.version === running || !existsSync(own.binary)) {
  if (own === null || major(running) >= major(own.version)) await import('./sub-commands.ts')
  else {
    process.stderr.write(
      `This is Node.js ${running}, and Node.js ${own.version}, which the package "node" installs, is missing.\nfix: install again with install scripts allowed, or use Node.js ${major(own.version)} or newer\n`,
    )
    process.exitCode = 1
  }
} else runOn(own.binary)

/** Every command looks for its records from there as soon as it is read. */
function isCurrentFolderGone(): boolean {
  try {
    process.cwd()
    return false
  } catch {
    return true
  }
}

/** The Node.js of the package "node", which this one depends on; its installation may have been left out. */
function ownNode(): { readonly version: string; readonly binary: string } | null {
  try {
    const path = createRequire(import.meta.url).resolve('node/package.json')
    const { version, bin } = JSON.parse(readFileSync(path, 'utf8')) as {
      version: string
      bin: { node: string }
    }
    return { version, binary: join(dirname(path), bin.node) }
  } catch {
    return null
  }
}

function major(version: string): number {
  return Number.parseInt(version, 10)
}

/** Ends as the other process does; it alone answers to a signal, by taking away what it left half done. */
function runOn(binary: string): void {
  const self = fileURLToPath(import.meta.url)
  const child = spawn(binary, [...process.execArgv, self, ...process.argv.slice(2)], { stdio: 'inherit' })
  for (const signal of Object.keys(SIGNALS) as (keyof typeof SIGNALS)[])
    process.on(signal, () => child.kill(signal))
  child.on('error', (error) => {
    process.stderr.write(
      `${binary} cannot be run: ${error.message}\nfix: install again, or use Node.js ${own?.version}\n`,
    )
    process.exitCode = 1
  })
  child.on('exit', (status, signal) => {
    process.exitCode = status ?? 128 + (SIGNALS[signal as keyof typeof SIGNALS] ?? 0)
  })
}
