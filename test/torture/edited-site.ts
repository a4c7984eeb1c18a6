/**
 * A small site whose records are edited again and again: after each edit the build that draws what changed has to give
 * the bytes of one that draws every page.
 */
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, relative } from 'node:path'
import { type BuildOptions, type BuiltSite, buildSite } from '../../src/commands/build-site.ts'
import { writeRevision } from '../../src/commands/write-revision.ts'
import { defined } from '../../src/core/measure/defined.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import type { HeldLots } from '../../src/edition/compute.ts'
import { carryOutPlan } from '../../src/edition/certificate/issue-plan.ts'
import { loadRecords, type Records } from '../../src/records/load.ts'
import { run } from '../commands/run-command.ts'
import { chanceFor } from './spoiled-record.ts'

export interface EditedSite {
  readonly content: string
  /** Where it is built in the place of itself. */
  readonly out: string
  /** Where it is drawn anew. */
  readonly anew: string
  readonly asOf: string
  /** Path of the record of a lot that was taken out, to be put in again. */
  readonly takenOut?: string
}

/** Chooses one of several. */
export type Choose = (count: number) => number

const LOTS = 12

/** The day of the records, after which nothing may be written in them. */
const AS_OF = '2026-04-10'

export async function newSite(): Promise<EditedSite> {
  const top = mkdtempSync(join(tmpdir(), 'edited-'))
  const content = join(top, 'content')
  const made = await run('demo', '--lots', String(LOTS), '--sources', '2', '--out', content)
  if (made.status !== 0) throw new Error(`The records to be edited cannot be written: ${made.error}`)
  return { content, out: join(top, 'out'), anew: join(top, 'anew'), asOf: AS_OF }
}

type Edit = (site: EditedSite, choose: Choose) => EditedSite

/** What may happen to a site from one build to the next, one at a time. */
export const EDITS: Readonly<Record<string, Edit>> = {
  'a reading': (site, choose) => edited(site, chosenLot(site, choose), READING),
  'a control': (site, choose) => {
    const lot = readFileSync(join(site.content, chosenLot(site, choose)), 'utf8')
    return edited(site, `controls/${/control: (\S+)/.exec(lot)?.[1]}.yaml`, READING)
  },
  'the limit of a set': (site) =>
    edited(site, 'criteria/c618-19.yaml', /(?<=age: 7 d, at-least: )\d+(?= %, method: ASTM C311)/),
  'a withdrawal': withdrawn,
  'another name of a lot': renamed,
  'a lot taken out': (site, choose) => {
    if (site.takenOut !== undefined) return site
    const takenOut = chosenLot(site, choose)
    moveLot(site.content, `${site.content}-without`, takenOut)
    return { ...site, takenOut }
  },
  'a lot among earlier ones': ({ takenOut, ...site }) => {
    if (takenOut !== undefined) moveLot(`${site.content}-without`, site.content, takenOut)
    return site
  },
  'the units of the site': (site) => {
    const path = join(site.content, 'site.yaml')
    const text = readFileSync(path, 'utf8')
    writeFileSync(
      path,
      text.replace(/units: (SI|US)/, (_, units) => `units: ${units === 'SI' ? 'US' : 'SI'}`),
    )
    return site
  },
  'the notice of the site': (site) => {
    const path = join(site.content, 'site.yaml')
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace(/notice: .*/, (notice) => `${notice} again`),
    )
    return site
  },
  'a method page': (site) => {
    appendFileSync(join(site.content, 'methods/cautions.mdx'), '\nOne more sentence.\n')
    return site
  },
  'a day later': (site) => {
    const next = new Date(Date.parse(site.asOf) + 86_400_000)
    return { ...site, asOf: next.toISOString().slice(0, 10) }
  },
  'a published page altered by hand': (site, choose) => {
    const pages = filesOf(site.out).filter((path) => path.startsWith('lots/'))
    appendFileSync(join(site.out, pages[choose(pages.length)] ?? ''), '<!-- altered -->')
    return site
  },
  'a published page closed to others': (site, choose) => {
    const pages = filesOf(site.out).filter((path) => path.startsWith('lots/'))
    chmodSync(join(site.out, pages[choose(pages.length)] ?? ''), 0o600)
    return site
  },
  'a list of pages that was cut short': (site) => {
    const list = join(site.out, '../.puteoli', `files-of-${basename(site.out)}.json`)
    writeFileSync(list, readFileSync(list, 'utf8').slice(0, 900))
    return site
  },
  'a page of the spare site written anew': (site, choose) => {
    const page = pageOfSpare(site, choose)
    if (page === undefined) return site
    // Another file of that name: what the site shares with the spare is altered by another edit.
    rmSync(page)
    writeFileSync(page, 'altered')
    return site
  },
  'a page of the spare site in the way of others': (site, choose) => {
    const page = pageOfSpare(site, choose)
    if (page === undefined) return site
    const folder = dirname(page)
    rmSync(folder, { recursive: true })
    if (choose(2) === 0) writeFileSync(folder, 'a file')
    else mkdirSync(join(page, 'a folder'), { recursive: true })
    return site
  },
  'strange files in the spare site': (site, choose) => {
    const page = pageOfSpare(site, choose)
    if (page === undefined) return site
    mkdirSync(join(page, '../strange/within'), { recursive: true })
    writeFileSync(join(page, '../strange/within/file'), 'strange')
    symlinkSync(site.out, join(page, '../strange/link'))
    return site
  },
  nothing: (site) => site,
}

/** Undefined where there is none. */
function pageOfSpare(site: EditedSite, choose: Choose): string | undefined {
  const spare = join(site.out, '../.puteoli', `spare-of-${basename(site.out)}`)
  if (!existsSync(spare)) return undefined
  const pages = filesOf(spare).filter((path) => path.endsWith('index.html') && path.includes('/'))
  return join(spare, pages[choose(pages.length)] ?? '')
}

/** Builds in the place of the site before. */
/** @param held lots that are held at once; all without it */
export function builtAgain(site: EditedSite, held?: HeldLots): Promise<BuiltSite> {
  return built(site, defined({ out: site.out, held }))
}

/** Paths of files that differ, in bytes or permissions, from those of a site all of whose pages were drawn. */
export async function differences(site: EditedSite): Promise<string[]> {
  const { pages, drawn } = await built(site, { out: site.anew, fresh: true })
  if (drawn.length < pages)
    throw new Error(`${pages - drawn.length} pages were to be drawn anew and were not.`)
  const paths = new Set([...filesOf(site.out), ...filesOf(site.anew)])
  const bytes = (folder: string, path: string) =>
    existsSync(join(folder, path)) ? readFileSync(join(folder, path)) : null
  return [...paths].filter((path) => {
    const [is, wanted] = [bytes(site.out, path), bytes(site.anew, path)]
    if (is === null || wanted === null || !is.equals(wanted)) return true
    return statSync(join(site.out, path)).mode !== statSync(join(site.anew, path)).mode
  })
}

function built(site: EditedSite, options: Pick<BuildOptions, 'out' | 'fresh' | 'held'>): Promise<BuiltSite> {
  const asOf = readMoment(site.asOf)
  return buildSite(recordsOf(site), { ...options, asOf, audience: 'public', accept: ['*'] })
}

function recordsOf({ content }: EditedSite): Records {
  const { records, diagnostics } = loadRecords(content)
  const [fault] = diagnostics.filter(({ severity }) => severity === 'error')
  if (fault !== undefined) throw new Error(`An edit has made a fault: ${JSON.stringify(fault)}`)
  return records
}

/** The first reading of a record. */
const READING = /(?<=\b[a-f]: )\d[\d.]*(?= (?:ohm|kN|lbf)\b)/

/** Makes a number one higher. */
function edited(site: EditedSite, path: string, number: RegExp): EditedSite {
  const before = readFileSync(join(site.content, path), 'utf8')
  const after = before.replace(number, (value) => String((10 * Number(value) + 10) / 10))
  if (after === before) throw new Error(`${path} has nothing to edit.`)
  writeFileSync(join(site.content, path), after)
  return site
}

function moveLot(from: string, to: string, path: string): void {
  for (const own of [path, issuedFolder(path)].filter((one) => existsSync(join(from, one)))) {
    mkdirSync(dirname(join(to, own)), { recursive: true })
    renameSync(join(from, own), join(to, own))
  }
}

/** Path of a lot's record; those of a source in order of sampling. */
function chosenLot({ content }: EditedSite, choose: Choose): string {
  const lots = filesOf(join(content, 'lots')).sort()
  return `lots/${lots[choose(lots.length)]}`
}

function issuedFolder(path: string): string {
  return path.replace(/^lots/, 'issued').replace(/\.yaml$/, '')
}

function withdrawn(site: EditedSite, choose: Choose): EditedSite {
  const lot = chosenLot(site, choose).slice('lots/'.length, -'.yaml'.length)
  const records = recordsOf(site)
  if (records.lots.get(lot)?.revisions?.at(-1) === undefined) return site
  const date = readMoment(AS_OF)
  const request = {
    lot,
    date,
    by: 'R. Amadi',
    function: 'laboratory director',
    reason: 'mixed up',
    withdrawn: true,
  }
  const planning = { program: 'test', saltOf: () => 'salt' }
  for (const { revision } of carryOutPlan(records, [request], date, planning))
    writeRevision(site.content, lot, revision)
  return site
}

function renamed(site: EditedSite, choose: Choose): EditedSite {
  const before = chosenLot(site, choose)
  const after = before.replace('.yaml', '-B.yaml')
  renameSync(join(site.content, before), join(site.content, after))
  if (existsSync(join(site.content, issuedFolder(before))))
    renameSync(join(site.content, issuedFolder(before)), join(site.content, issuedFolder(after)))
  const path = join(site.content, after)
  const text = readFileSync(path, 'utf8')
  const former = before.slice('lots/'.length, -'.yaml'.length)
  writeFileSync(
    path,
    /^formerly: \[/m.test(text)
      ? text.replace('formerly: [', `formerly: [${former}, `)
      : `formerly: [${former}]\n${text}`,
  )
  return site
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
}

let current: EditedSite | undefined

/** One more edit, on top of those of earlier cases. */
export async function editedAgain(seed: number, number: number): Promise<readonly string[]> {
  const chance = chanceFor(seed, number)
  if (current === undefined) {
    current = await newSite()
    await builtAgain(current)
  }
  const names = Object.keys(EDITS)
  const what = names[chance.whole(0, names.length - 1)] ?? ''
  try {
    current = EDITS[what]?.(current, (count) => chance.whole(0, count - 1)) ?? current
    await builtAgain(current, chance.whole(0, 1) === 0 ? undefined : { results: 0, whole: 0 })
    const [first, ...more] = await differences(current)
    return first === undefined
      ? []
      : [`after ${what}, ${first} and ${more.length} others are not as drawn anew`]
  } catch (error) {
    current = undefined
    return [`after ${what}: ${(error as Error).message}`]
  }
}
