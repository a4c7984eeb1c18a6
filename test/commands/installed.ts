/** The program as a user has it: packed, and installed in an empty folder without the packages of developers. */
import { execFile } from 'node:child_process'
import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, delimiter, dirname, join, relative, resolve, sep } from 'node:path'
import type { Ended } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/** As in a terminal: without what npm tells the scripts of the clone, and without the clone's own Node.js. */
const ENV: NodeJS.ProcessEnv = {
  ...Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^(npm_|INIT_CWD$|NODE_)/.test(name)),
  ),
  PATH: (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter((folder) => !folder.includes(`node_modules${sep}.bin`))
    .join(delimiter),
}

/** Runs a program in a folder. */
export function runIn(folder: string, program: string, ...args: readonly string[]): Promise<Ended> {
  return new Promise((done) => {
    const options = { cwd: folder, env: ENV, maxBuffer: 1 << 26 }
    execFile(program, args, options, (error, out, text) =>
      done({ status: error === null ? 0 : Number(error.code), out, error: text }),
    )
  })
}

/** @returns an empty folder that the program was installed in, and the paths of the files in the package */
export async function installed(): Promise<{ readonly home: string; readonly files: readonly string[] }> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'installed-')))
  const packed = await npm(ROOT, 'pack', '--json', '--pack-destination', folder)
  const [tarball] = JSON.parse(packed.slice(packed.search(/^\[/m))) as [
    { filename: string; files: { path: string }[] },
  ]
  const home = join(folder, 'home')
  await linkDependencies(home)
  // A package that the program needs and does not name would have to be fetched, which --offline forbids.
  const options = ['--offline', '--omit=dev', '--ignore-scripts', '--no-audit', '--no-fund']
  await npm(home, 'install', ...options, join(folder, tarball.filename))
  return { home, files: tarball.files.map(({ path }) => path) }
}

async function npm(folder: string, ...args: readonly string[]): Promise<string> {
  const { status, out, error } = await runIn(folder, 'npm', ...args)
  if (status !== 0) throw new Error(`npm ${args.join(' ')} ended with ${status}:\n${error}`)
  return out
}

/**
 * Puts the packages in place that the clone has and a user gets: unpacking them would take most of a minute. Those
 * that nothing needs here, such as types, npm takes out again.
 */
async function linkDependencies(home: string): Promise<void> {
  // Its status tells of packages that do not matter here.
  const { out } = await runIn(ROOT, 'npm', 'ls', '--omit=dev', '--all', '--parseable')
  const folders = [...new Set(out.trim().split('\n'))].filter((path) => path !== ROOT)
  for (const path of folders) linkFiles(path, join(home, relative(ROOT, path)))
  for (const path of new Set(folders.map(modulesAbove))) linkPrograms(path, join(home, relative(ROOT, path)))
  const lock = JSON.parse(readFileSync(join(ROOT, 'node_modules/.package-lock.json'), 'utf8')) as {
    packages: Record<string, object>
  }
  const there = Object.entries(lock.packages).filter(([path]) => existsSync(join(home, path)))
  const text = JSON.stringify({ ...lock, packages: Object.fromEntries(there) })
  writeFileSync(join(home, 'node_modules/.package-lock.json'), text)
}

/** The folder node_modules that a package lies in. */
function modulesAbove(path: string): string {
  const above = dirname(path)
  return basename(above) === 'node_modules' ? above : dirname(above)
}

function linkFiles(from: string, to: string): void {
  mkdirSync(to, { recursive: true })
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)]
    if (entry.name === 'node_modules') continue
    if (entry.isDirectory()) linkFiles(source, target)
    else if (entry.isSymbolicLink()) symlinkSync(readlinkSync(source), target)
    else linkFile(source, target)
  }
}

function linkFile(from: string, to: string): void {
  try {
    linkSync(from, to)
  } catch (error) {
    // The temporary folder lies on another disk.
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error
    copyFileSync(from, to)
  }
}

/** Programs that packages bring, of those that are there. */
function linkPrograms(from: string, to: string): void {
  const [source, target] = [join(from, '.bin'), join(to, '.bin')]
  if (!existsSync(source)) return
  mkdirSync(target, { recursive: true })
  for (const name of readdirSync(source)) {
    const link = readlinkSync(join(source, name))
    if (existsSync(join(target, link))) symlinkSync(link, join(target, name))
  }
}
