/** The parts that a bench measures, each in a process of its own; what it counted comes back as figures. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join, relative } from 'node:path'
import { performance } from 'node:perf_hooks'
import { JSON_SCHEMA, load } from 'js-yaml'
import { everyClause } from '../core/criteria/criterion.ts'
import { unpackSource } from '../core/evidence/source-evidence.ts'
import { momentOfDay } from '../core/measure/moment.ts'
import { judge } from '../core/judging/verdict.ts'
import { strengthInterval } from '../core/statistics/ratio-interval.ts'
import { asOfDate, computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { checkedSource } from '../edition/views/check-lots.ts'
import { explainedIndices } from '../edition/views/resistivity-explained.ts'
import { sourceEvidenceData } from '../edition/writers/lot-data.ts'
import { loadRecords } from '../records/load.ts'
import { buildSite } from './build-site.ts'
import { checkedEdition, faultsOf } from './check-edition.ts'
import { checksRunLine } from './check-summary.ts'
import { keptReadings } from './kept-readings.ts'
import { PROGRAM, ROOT, today } from './program.ts'

/** Sets that every lot is judged under, as many as fit its material. */
const SETS = 12

/** The whole number of the first reading of a record. */
const READING = /(?<=\ba: )\d+/

/** The page of the bare project. */
const FLOOR_PAGE = `---
export function getStaticPaths() {
  const texts = globalThis[Symbol.for('puteoli.bench')]
  return texts.map((text, index) => ({ params: { page: 'p' + index }, props: { text } }))
}
const { text } = Astro.props
---
<Fragment set:html={text} />
`

/** Plain js-yaml on the same files, nothing else. */
export function yamlFloor(folder: string): Record<string, number> {
  const files = filesBelow(folder).filter((path) => path.endsWith('.yaml'))
  let bytes = 0
  const parsed = files.map((file) => {
    const text = readFileSync(file, 'utf8')
    bytes += text.length
    return load(text, { schema: JSON_SCHEMA })
  })
  return { files: parsed.length, bytes }
}

/** The work of npm run check: reading and validating, then computing and judging. */
export function check(folder: string): Record<string, number> {
  const started = performance.now()
  const content = loadRecords(folder, today())
  const { records, diagnostics } = content
  const read = performance.now()
  const edition = checkedEdition(records, {}, [checkedSource(faultsOf(content), {}), checksRunLine])
  return {
    readSeconds: (read - started) / 1000,
    computeSeconds: (performance.now() - read) / 1000,
    lots: edition?.lots.size ?? 0,
    diagnostics: diagnostics.length,
    archiveMB: sizeOf(join(folder, 'issued')) / 1e6,
  }
}

/** Judging alone, from evidence at hand: every lot under twelve sets, the way a reader's browser does it. */
export function judging(folder: string): Record<string, number> {
  const { records } = loadRecords(folder, today())
  const computing = performance.now()
  const edition = computeEdition(records, { program: PROGRAM, today: today() })
  const computeSeconds = (performance.now() - computing) / 1000
  const sources = [...edition.sources.values()].map(({ id, kind }) => ({
    kind,
    evidence: unpackSource(sourceEvidenceData(edition, id)),
  }))
  const started = performance.now()
  let [verdicts, clauses] = [0, 0]
  for (const { kind, evidence } of sources) {
    const sets = [...edition.criteria.values()]
      .filter((criterion) => criterion.kinds.some((candidate) => candidate === kind))
      .slice(0, SETS)
    const size = sets.map((set) => [...everyClause(set.clauses)].length)
    evidence.lots.forEach((_, place) => {
      const known = evidence.evidenceOf(place)
      for (const [index, set] of sets.entries()) {
        judge(set, known)
        verdicts += 1
        clauses += size[index] ?? 0
      }
    })
  }
  const judgeSeconds = (performance.now() - started) / 1000
  return {
    ...doubt(edition),
    computeSeconds,
    judgeSeconds,
    verdicts,
    clauses,
    microsecondsAClause: (1e6 * judgeSeconds) / clauses,
    lotsTimesClausesASecond: Math.round(clauses / judgeSeconds),
  }
}

/**
 * What intervals and explanations cost beside computing: three specimens a mortar, as many intervals as there
 * are indices.
 */
function doubt(edition: Edition): Record<string, number> {
  const indices = [...edition.lots.keys()].flatMap((id) =>
    edition.lot(id).results.filter((result) => result.interval !== undefined),
  )
  const started = performance.now()
  let held = 0
  for (const { value } of indices)
    held += strengthInterval([value, value + 1, value - 1], [99, 100, 101])?.low ?? 0
  const intervals = performance.now()
  for (const id of edition.lots.keys()) held += explainedIndices(edition, edition.lot(id)).length
  return {
    intervalSeconds: (intervals - started) / 1000,
    explainSeconds: (performance.now() - intervals) / 1000,
    indices: indices.length,
    held: Math.round(held),
  }
}

/** The work of npm run build, in the place of an earlier site where one stands. @param later in days */
export async function wholeBuild(
  folder: string,
  site: string,
  { accept = [], later = 0 }: { readonly accept?: readonly string[]; readonly later?: number } = {},
): Promise<Record<string, number>> {
  const { before, issued, end } = keptReadings({ beside: dirname(site), content: folder })
  const { records } = loadRecords(folder, today(), { before, issued })
  const asOf = momentOfDay(asOfDate(records, { today: today() }).day + later)
  const built = await buildSite(records, { out: site, audience: 'public', asOf, accept, atOutput: end })
  return { pages: built.pages, unchanged: built.pages - built.drawn.length, lots: built.edition.lots.size }
}

/** The same after one reading of one lot, the last that has one, was made another. */
export async function oneLotChanged(folder: string, site: string): Promise<Record<string, number>> {
  const last = filesBelow(join(folder, 'lots'))
    .filter((path) => path.endsWith('.yaml'))
    .sort()
    .findLast((path) => READING.test(readFileSync(path, 'utf8')))
  if (last === undefined) throw new RangeError('oneLotChanged needs a lot with a reading, got none')
  const text = readFileSync(last, 'utf8')
  writeFileSync(
    last,
    text.replace(READING, (reading) => String(Number(reading) + 1)),
  )
  return wholeBuild(folder, site)
}

/** The same after the last lot of the last source that has a certificate was taken out. */
export async function oneLotLess(folder: string, site: string): Promise<Record<string, number>> {
  const last = filesBelow(join(folder, 'lots'))
    .sort()
    .findLast((path) => path.endsWith('.yaml') && /^revisions:/m.test(readFileSync(path, 'utf8')))
  if (last === undefined) throw new RangeError('oneLotLess needs a lot with a certificate, got none')
  moveLot(last, folder, takenOutOf(folder))
  return wholeBuild(folder, site, { accept: ['*'] })
}

/** The same after that lot was put in again: one new lot. */
export async function oneNewLot(folder: string, site: string): Promise<Record<string, number>> {
  const [last] = filesBelow(join(takenOutOf(folder), 'lots'))
  if (last === undefined) throw new RangeError('oneNewLot needs a lot that was taken out, got none')
  moveLot(last, takenOutOf(folder), folder)
  return wholeBuild(folder, site)
}

/** The same a week after, of records that are as they were. */
export function aWeekLater(folder: string, site: string): Promise<Record<string, number>> {
  return wholeBuild(folder, site, { later: 7 })
}

function takenOutOf(folder: string): string {
  return `${folder}-taken-out`
}

/** A lot with its documents; the parts that they share with others stay. @param file of its record */
function moveLot(file: string, from: string, to: string): void {
  const lot = relative(join(from, 'lots'), file).slice(0, -'.yaml'.length)
  for (const path of [`lots/${lot}.yaml`, `issued/${lot}`]) {
    mkdirSync(dirname(join(to, path)), { recursive: true })
    renameSync(join(from, path), join(to, path))
  }
}

/**
 * A bare Astro project that writes as many pages with the same bytes, held in memory, with no component of
 * ours.
 */
export async function buildFloor(_folder: string, site: string): Promise<Record<string, number>> {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  // No part but this one waits for Astro where the program that draws is kept.
  const { build } = await import('astro')
  const texts = pagesBelow(site).map((path) => readFileSync(path, 'utf8'))
  ;(globalThis as Record<symbol, unknown>)[Symbol.for('puteoli.bench')] = texts
  const root = mkdtempSync(join(ROOT, 'node_modules', '.bench-'))
  try {
    mkdirSync(join(root, 'src/pages'), { recursive: true })
    writeFileSync(join(root, 'src/pages/[page].astro'), FLOOR_PAGE)
    await build({
      root,
      configFile: false,
      outDir: join(site, '..', 'floor'),
      logLevel: 'error',
      build: { format: 'directory' },
    })
  } finally {
    rmSync(root, { recursive: true, force: true })
  }
  return {
    pages: texts.length,
    bytes: texts.reduce((sum, text) => sum + text.length, 0),
    siteMB: sizeOf(site) / 1e6,
  }
}

function sizeOf(folder: string): number {
  return filesBelow(folder).reduce((sum, path) => sum + statSync(path).size, 0)
}

export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
}

export function pagesBelow(site: string): string[] {
  return filesBelow(site).filter((path) => basename(path) === 'index.html')
}
