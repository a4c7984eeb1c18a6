/** npm run demo: writes the invented scenario and issues its certificates. */
import { createHash } from 'node:crypto'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { InvalidArgumentError } from 'commander'
import { defined } from '../core/measure/defined.ts'
import { readMoment } from '../core/measure/moment.ts'
import { ALTERED, PLANTED_LATER } from '../demo/planted.ts'
import { AS_OF, SEED } from '../demo/scenario.ts'
import { type DemoIssue, scenarioFiles } from '../demo/scenario-files.ts'
import type { IssueRequest } from '../edition/certificate/issue.ts'
import { carryOutPlan } from '../edition/certificate/issue-plan.ts'
import { withRevisionLine } from '../records/edit/revision-line.ts'
import { CommandFailure, command, EXIT, PROGRAM, ROOT, run } from './program.ts'
import { progress } from './progress.ts'
import { readGoodContent } from './read-content.ts'

/**
 * Folders that the scenario writes; conditions, criteria and methods are written by hand and copied along.
 */
const WRITTEN = ['producers', 'laboratories', 'sources', 'controls', 'lots', 'studies', 'issued']
const BY_HAND = ['conditions', 'criteria', 'methods']

/** Folders already made, and shared parts already written. */
const made = new Set<string>()
const written = new Set<string>()

await run(() => {
  const options = command('demo', 'Write the invented demo scenario: records, then issued certificates.')
    .option(
      '--lots <number>',
      'number of lots of the first five sources alone; 300 of all sources without it',
      wholeNumber,
    )
    .option('--sources <number>', 'number of sources that --lots are spread over, for measuring', wholeNumber)
    .option('--seed <number>', 'random seed', wholeNumber, SEED)
    .option('--out <folder>', 'content folder to write; the demo’s own without it')
    .parse()
    .opts<{ content: string; lots?: number; sources?: number; seed: number; out?: string }>()
  if (options.sources !== undefined && options.lots === undefined)
    throw new CommandFailure('--sources needs a number of lots.', EXIT.wrongUse, 'add --lots N')
  const { seed, lots, sources } = options
  const folder = resolve(options.out ?? options.content)
  prepare(folder, options.out !== undefined)
  const issues: DemoIssue[] = []
  let files = 0
  for (const file of scenarioFiles(defined({ seed, lots, sources }), (issue) => {
    issues.push(issue)
  })) {
    write(join(folder, file.path), file.text)
    files += 1
  }
  // What became known later is on record when the certificates are issued, and counts from its own day.
  if (options.lots === undefined) plantLater(folder)
  const issued = issueAll(folder, issues)
  if (options.lots === undefined) alterAfterIssue(folder)
  process.stdout.write(`${files} records and ${issued} issued certificates in ${folder}\n`)
  return EXIT.well
})

function wholeNumber(text: string): number {
  if (!/^\d{1,7}$/.test(text) || Number(text) < 1)
    throw new InvalidArgumentError('a whole number from 1 was expected.')
  return Number(text)
}

function prepare(folder: string, elsewhere: boolean): void {
  if (elsewhere && existsSync(folder) && readdirSync(folder).length > 0)
    throw new CommandFailure(`${folder} is not empty.`, EXIT.wrongUse, 'choose another folder with --out')
  for (const name of WRITTEN) rmSync(join(folder, name), { recursive: true, force: true })
  if (elsewhere)
    for (const name of BY_HAND)
      cpSync(resolve(ROOT, 'content', name), join(folder, name), { recursive: true })
}

function write(path: string, text: string): void {
  const parent = dirname(path)
  if (!made.has(parent)) mkdirSync(parent, { recursive: true })
  made.add(parent)
  writeFileSync(path, text)
}

function issueAll(folder: string, issues: readonly DemoIssue[]): number {
  const records = readGoodContent(folder, 'The scenario could not be read back.')
  let count = 0
  const issuing = { program: PROGRAM, saltOf: inventedSalt }
  const telling = progress()
  for (const { request, revision } of carryOutPlan(records, issues, readMoment(AS_OF), issuing)) {
    telling.at(`Issuing certificate ${count + 1} of ${issues.length}`)
    for (const [digest, text] of revision.parts)
      writeOnce(join(folder, 'issued', 'parts', `${digest}.json`), text)
    write(join(folder, 'issued', request.lot, `${revision.document.revision}.json`), revision.text)
    const record = join(folder, 'lots', `${request.lot}.yaml`)
    writeFileSync(record, withRevisionLine(readFileSync(record, 'utf8'), revision.recordLine))
    count += 1
  }
  telling.end()
  return count
}

/** The scenario has nothing to hide, and the same scenario is to give the same bytes. */
function inventedSalt({ lot, date, reason }: IssueRequest): string {
  return createHash('sha256').update(`${lot} ${date.text} ${reason}`).digest('base64url').slice(0, 22)
}

/** Parts that many documents share are written with the first of them. */
function writeOnce(path: string, text: string): void {
  if (written.has(path)) return
  written.add(path)
  write(path, text)
}

function plantLater(folder: string): void {
  for (const { source, place, inControl, edit } of PLANTED_LATER) {
    const lot = plantedLot(folder, source, place)
    const control = /control: (\S+)/.exec(readFileSync(lot, 'utf8'))?.[1]
    const path = inControl === true ? join(folder, 'controls', `${control}.yaml`) : lot
    const before = readFileSync(path, 'utf8')
    const after = edit(before)
    if (after === before) throw new RangeError(`plantLater needs a text that it can edit, got ${path}`)
    writeFileSync(path, after)
  }
}

function plantedLot(folder: string, source: string, place: number): string {
  const name = readdirSync(join(folder, 'lots', source)).sort()[place]
  if (name === undefined) throw new RangeError(`plantedLot needs a lot of ${source}, got place ${place}`)
  return join(folder, 'lots', source, name)
}

/** The planted alteration: a residue made finer in a record whose certificate had been issued. */
function alterAfterIssue(folder: string): void {
  const path = plantedLot(folder, ALTERED.source, ALTERED.place)
  writeFileSync(path, readFileSync(path, 'utf8').replace(ALTERED.from, ALTERED.to))
}
