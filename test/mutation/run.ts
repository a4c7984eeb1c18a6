/**
 * npm run mutation [-- SUB-ROOM ...] [--force]: changes src/core in many small ways and looks whether a test
 * notices. Prints the score of each sub-room and writes what survived to .mutation/survivors.txt. What is known
 * from an earlier run of the same code and tests is taken from there, unless forced.
 */
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import {
  type Equivalent,
  idleEquivalents,
  type MutationReport,
  ofRooms,
  scores,
  scoreTable,
  survivorLines,
} from './score.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const OUT = join(ROOT, '.mutation')

const options = process.argv.slice(2).filter((argument) => argument.startsWith('--'))
const rooms = process.argv.slice(2).filter((argument) => !argument.startsWith('--'))
const mutate =
  rooms.length === 0 ? [] : ['--mutate', rooms.map((room) => `src/core/${room}/**/*.ts`).join(',')]
const stryker = join(ROOT, 'node_modules/@stryker-mutator/core/bin/stryker.js')
const { status } = spawnSync(
  process.execPath,
  [stryker, 'run', join(import.meta.dirname, 'stryker.json'), ...mutate, ...options],
  { cwd: ROOT, stdio: 'inherit' },
)
if (status === 0) report()
process.exitCode = status ?? 1

function report(): void {
  // The report keeps what earlier runs found elsewhere, which may be of other code.
  const found = ofRooms(JSON.parse(readFileSync(join(OUT, 'report.json'), 'utf8')) as MutationReport, rooms)
  const equivalents = JSON.parse(
    readFileSync(join(import.meta.dirname, 'equivalent.json'), 'utf8'),
  ) as Equivalent[]
  const survivors = survivorLines(found, equivalents)
  writeFileSync(join(OUT, 'survivors.txt'), survivors.map((line) => `${line}\n`).join(''))
  process.stdout.write(`\n${scoreTable(scores(found, equivalents))}\n\nSurvivors: .mutation/survivors.txt\n`)
  for (const { file, original } of idleEquivalents(found, equivalents))
    process.stdout.write(`equivalent.json names what does not survive: ${file}: ${original}\n`)
}
