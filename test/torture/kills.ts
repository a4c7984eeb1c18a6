/**
 * Kills: a site of five lots whose issue and build are ended at random moments (SIGKILL), or run two at once.
 * Whatever the moment, nothing that was issued is lost or half written, and the site is the old one or the new one.
 */
import { createHash } from 'node:crypto'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative, resolve } from 'node:path'
import type { Chance } from '../../src/demo/chance.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase } from '../records/issued/issue-base.ts'
import { TODAY } from './read-spoiled.ts'
import { commandFaults, type Ended, runCommand } from './run-command.ts'
import { chanceFor } from './spoiled-record.ts'

const BASE = resolve(import.meta.dirname, '../diagnostics/base')
const MORE_LOTS = ['T-2', 'T-3', 'T-4']
const LOTS = ['T-1', ...MORE_LOTS, 'T-9'].map((name) => `tuff/${name}`)

/** Writes five lots, two of them issued; the other three are drafts. */
function writeContent(folder: string): void {
  cpSync(BASE, folder, { recursive: true })
  const text = readFileSync(join(folder, 'lots/tuff/T-1.yaml'), 'utf8')
  for (const name of MORE_LOTS)
    writeFileSync(join(folder, `lots/tuff/${name}.yaml`), text.replace('BL-1', `BL-${name}`))
  issueBase(folder)
}

let top: string | undefined

/** A folder for this process, removed at its end. */
function workFolder(): string {
  if (top !== undefined) return top
  const made = mkdtempSync(join(tmpdir(), 'torture-kills-'))
  process.on('exit', () => rmSync(made, { recursive: true, force: true }))
  writeContent(join(made, 'template'))
  top = made
  return made
}

function freshContent(name = 'one'): string {
  const folder = join(workFolder(), name)
  rmSync(folder, { recursive: true, force: true })
  cpSync(join(workFolder(), 'template'), folder, { recursive: true })
  return folder
}

const issueOptions = (content: string, reason: string) => [
  '--content', content, ...draftsOf(content), '--by', 'A. Mason', '--function', 'manager', '--reason', reason,
] // biome-ignore format: a command line reads best in one

/** Lots without a revision: the others have nothing new to say, and one of those refuses a whole issue. */
function draftsOf(content: string): string[] {
  return LOTS.filter((lot) => !/^revisions:/m.test(readFileSync(join(content, `lots/${lot}.yaml`), 'utf8')))
}

/** Milliseconds of a whole run, measured anew by each that was not killed. */
const whole: Record<string, number> = { issue: 2500, build: 20_000 }

/** Half of the kills at any moment of the run, half of them while files are written. */
function killOf(name: string, chance: Chance, sign: string) {
  return chance.whole(0, 1) === 0
    ? { after: chance.uniform() * (whole[name] ?? 0) }
    : { after: chance.uniform() * (name === 'issue' ? 60 : (whole[name] ?? 0) / 2), onceThereIs: sign }
}

let content: string | undefined

/**
 * Kills an issue of all lots, on top of what earlier cases left, or its resuming where something was left. In one case
 * of five everything has to be well in the end, and the next begins anew.
 */
export async function killedIssue(seed: number, number: number): Promise<readonly string[]> {
  const chance = chanceFor(seed, number)
  if (content === undefined || !isOpen(content)) content = freshContent()
  const lock = join(content, '.issue-lock')
  const options = isInterrupted(content)
    ? ['--content', content, '--resume']
    : issueOptions(content, `reason ${number}`)
  await runCommand('issue', options, killOf('issue', chance, lock))
  const faults = contentFaults('after a kill', content, INTERRUPTED)
  if (chance.whole(0, 4) > 0 && faults.length === 0) return faults
  faults.push(...(await endedFaults(content, number)))
  content = undefined
  return faults
}

/** Whether a kill can still interrupt something there. */
function isOpen(folder: string): boolean {
  return draftsOf(folder).length > 0 || isInterrupted(folder)
}

/** Resumes and issues what is left, undisturbed: every lot has its certificate then. */
async function endedFaults(folder: string, number: number): Promise<string[]> {
  const resumed = await runCommand('issue', ['--content', folder, '--resume'])
  const faults = [
    ...commandFaults('issue --resume', resumed, [0]),
    ...contentFaults('after resuming', folder, []),
  ]
  if (draftsOf(folder).length > 0) {
    const again = await runCommand('issue', issueOptions(folder, `last reason ${number}`))
    whole['issue'] = again.took
    faults.push(...commandFaults('issue after it', again, [0]))
  }
  return [
    ...faults,
    ...draftsOf(folder).map((lot) => `at the end: ${lot} was never issued`),
    ...contentFaults('at the end', folder, []),
  ]
}

function isInterrupted(folder: string): boolean {
  return loadRecords(folder, TODAY).diagnostics.some(({ code }) => code === 'issued-unrecorded')
}

/** What may stand open after an interrupted issue, until it is resumed. */
const INTERRUPTED = ['issued-unrecorded', 'issued-part-unused']

/** What is wrong with a content folder: faults that may not be there, and what was issued and is lost. */
function contentFaults(when: string, content: string, allowed: readonly string[]): string[] {
  const { records, diagnostics, fatal } = loadRecords(content, TODAY)
  const told = diagnostics.filter(({ code }) => !allowed.includes(code))
  const template = join(workFolder(), 'template')
  const lost = filesOf(join(template, 'issued')).filter(
    (path) => !sameFile(join(template, 'issued', path), join(content, 'issued', path)),
  )
  const changed = LOTS.filter((lot) => !isContinued(template, content, `lots/${lot}.yaml`))
  return [
    ...(fatal === undefined ? [] : [`${when}: ${fatal.message}`]),
    ...told.map(({ code, message }) => `${when}: ${code}: ${message}`),
    ...(records.lots.size === LOTS.length || told.length > 0 ? [] : [`${when}: ${records.lots.size} lots`]),
    ...lost.map((path) => `${when}: issued/${path} was lost or changed`),
    ...changed.map((lot) => `${when}: the record of ${lot} was changed beyond its new line`),
  ]
}

const sameFile = (a: string, b: string) => existsSync(b) && readFileSync(a).equals(readFileSync(b))

/** A record without its lines of revisions is what it was without them. */
function isContinued(before: string, after: string, path: string): boolean {
  const [was, is] = [before, after].map((folder) =>
    readFileSync(join(folder, path), 'utf8')
      .replace(/^ {2}- \{ number: .*\n/gm, '')
      .replace(/\n*revisions:\n*$/, '\n'),
  )
  return was === is
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .sort()
}

/** Digest of all that a site's readers can get; the builder's own marks are not among it. */
function siteDigest(folder: string): string | null {
  if (!existsSync(folder)) return null
  const hash = createHash('sha256')
  for (const path of filesOf(folder).filter((name) => !name.startsWith('.')))
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(folder, path)))
      .update('\0')
  return hash.digest('hex')
}

interface Sites {
  readonly out: string
  readonly contents: readonly [string, string]
  readonly digests: readonly [string, string]
}

let sites: Promise<Sites> | undefined

const buildOptions = (content: string, out: string) => ['--content', content, '--out', out, '--as-of', '2026-04-10'] // biome-ignore format: one line

/** Two contents that give other sites: lots withdrawn in the second, so that nothing is refused either way. */
async function makeSites(): Promise<Sites> {
  const out = join(workFolder(), 'out')
  const contents = ['template', 'other'].map((name) => join(workFolder(), name)) as [string, string]
  cpSync(contents[0], contents[1], { recursive: true })
  const producer = join(contents[1], 'producers/hill.yaml')
  writeFileSync(producer, readFileSync(producer, 'utf8').replace('Mill 2', 'Mill 3'))
  const digests: string[] = []
  for (const [place, content] of contents.entries()) {
    const alone = join(workFolder(), `site-${place}`)
    const ended = await runCommand('build', buildOptions(content, alone))
    if (ended.status !== 0) throw new Error(`The site to be tortured cannot be built: ${ended.output}`)
    whole['build'] = ended.took
    digests.push(siteDigest(alone) ?? '')
  }
  if (digests[0] === digests[1]) throw new Error('The two sites to be told apart are equal.')
  cpSync(join(workFolder(), 'site-0'), out, { recursive: true })
  return { out, contents, digests: digests as [string, string] }
}

/** Builds one of two sites in the place of the other and kills it; every third time the next run has to work. */
export async function killedBuild(seed: number, number: number): Promise<readonly string[]> {
  sites ??= makeSites()
  const { out, contents, digests } = await sites
  const chance = chanceFor(seed, number)
  const place = chance.whole(0, 1) as 0 | 1
  const options = buildOptions(contents[place], out)
  const killed = await runCommand('build', options, killOf('build', chance, `${out}.next`))
  const faults = [
    ...(killed.status === null ? [] : commandFaults('build', killed, [0])),
    ...siteFaults('after a kill', { out, digests }),
  ]
  if (chance.whole(0, 2) > 0) return faults
  const next = await runCommand('build', options)
  whole['build'] = next.took
  faults.push(...commandFaults('the build after a kill', next, [0]))
  if (siteDigest(out) !== digests[place])
    faults.push('the build after a kill leaves another site than it should')
  return [...faults, ...leftoverFaults(out)]
}

function siteFaults(when: string, { out, digests }: Pick<Sites, 'out' | 'digests'>): string[] {
  const digest = siteDigest(out)
  if (digest !== null)
    return digests.includes(digest) ? [] : [`${when} the site is neither the old nor the new one`]
  // Between the two renamings of a swap the whole sites lie beside the place.
  const beside = [`${out}.old`, `${out}.next`].map(siteDigest)
  return beside.some((one) => one !== null && digests.includes(one)) ? [] : [`${when} there is no whole site`]
}

function leftoverFaults(out: string): string[] {
  const left = [`${out}.next`, `${out}.old`].filter(existsSync)
  return left.map((path) => `${path.slice(out.length)} is left beside the site`)
}

/** Two issues, then two builds, begun within moments of each other. */
export async function twoAtOnce(seed: number, number: number): Promise<readonly string[]> {
  const chance = chanceFor(seed, number)
  const content = freshContent('two')
  const issues = await Promise.all(
    ['one', 'another'].map((reason) => runCommand('issue', issueOptions(content, reason))),
  )
  const faults = [...bothFaults('issue', issues), ...contentFaults('after two issues at once', content, [])]
  if (chance.whole(0, 3) > 0) return faults
  sites ??= makeSites()
  const { out, contents, digests } = await sites
  const builds = await Promise.all(contents.map((one) => runCommand('build', buildOptions(one, out))))
  return [
    ...faults,
    ...bothFaults('build', builds),
    ...siteFaults('after two builds at once', { out, digests }),
  ]
}

/** At least one of two does its work; the other may do so too, or say why not. */
function bothFaults(what: string, ended: readonly Ended[]): string[] {
  return [
    ...ended.flatMap((one) => commandFaults(`one ${what} of two`, one, [0, 1])),
    ...(ended.some(({ status }) => status === 0) ? [] : [`neither ${what} of two did its work`]),
  ]
}
