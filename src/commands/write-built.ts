/**
 * npm pack: writes built/, the program as it is installed. Node.js takes the types out of no file below node_modules, so
 * each module is written without them and named .js, and what imports it names it so. Everything else keeps its
 * place, as seen from the root, so that paths to schemas and content are the same.
 */
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import ts from 'typescript'
import { validatorsScript } from '../records/schema/ready-validators.ts'
import { EXIT, ROOT, run } from './program.ts'

const SRC = resolve(ROOT, 'src')
const BUILT = resolve(ROOT, 'built')

/** What a user starts, and what Astro reads; developers' commands are not among what these import. */
const STARTED = ['commands/puteoli.ts', 'commands/astro-config.ts']

await run(() => {
  rmSync(BUILT, { recursive: true, force: true })
  for (const path of shipped()) write(path)
  // Nothing is kept in the package once it is installed, so that each start would make them.
  writeFileSync(join(BUILT, 'records/schema/validators.cjs'), validatorsScript())
  // As npm gives it when it installs the package; a folder that npm only links to is started as well.
  chmodSync(join(BUILT, 'commands/puteoli.js'), 0o755)
  return EXIT.well
})

/** Paths below src/: whole rooms, but of the commands only what users can reach, and no demo. */
function shipped(): string[] {
  const commands = reached(STARTED)
  return readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(SRC, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => !path.endsWith('.d.ts') && !path.startsWith('demo/'))
    .filter((path) => !path.startsWith('commands/') || commands.has(path))
    .sort()
}

/** Modules that these import, in however many steps, and they themselves. */
function reached(started: readonly string[]): Set<string> {
  const found = new Set<string>()
  const left = [...started]
  for (let path = left.pop(); path !== undefined; path = left.pop()) {
    if (found.has(path)) continue
    found.add(path)
    for (const { fileName } of ts.preProcessFile(textOf(path)).importedFiles)
      if (fileName.startsWith('.')) left.push(join(dirname(path), fileName).split(sep).join('/'))
  }
  return found
}

function textOf(path: string): string {
  return readFileSync(join(SRC, path), 'utf8')
}

function write(path: string): void {
  const to = join(BUILT, path)
  mkdirSync(dirname(to), { recursive: true })
  if (path.endsWith('.ts')) writeFileSync(to.replace(/\.ts$/, '.js'), withoutTypes(textOf(path)))
  else if (path.endsWith('.astro')) writeFileSync(to, namingBuilt(textOf(path)))
  else cpSync(join(SRC, path), to)
}

function withoutTypes(text: string): string {
  return ts.transpileModule(text, {
    compilerOptions: {
      module: ts.ModuleKind.ESNext,
      target: ts.ScriptTarget.ES2023,
      verbatimModuleSyntax: true,
      rewriteRelativeImportExtensions: true,
      removeComments: true,
    },
  }).outputText
}

/** A component keeps its types, which Astro takes out, and names the modules as they are now. */
function namingBuilt(text: string): string {
  return text.replace(/((?:from|import)\s*'\.[^']*)\.ts'/g, "$1.js'")
}
