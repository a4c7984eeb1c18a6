/**
 * npm run bench: time and peak memory of reading, computing and building on generated lots, each beside its
 * floor, measured in the same run. Every figure is a process of its own; whole-process peak memory is the
 * operating system's (getrusage).
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { performance } from 'node:perf_hooks'
import { build } from 'astro'
import { JSON_SCHEMA, load } from 'js-yaml'
import { everyClause } from '../core/criteria/criterion.ts'
import { judge } from '../core/judging/verdict.ts'
import { unpackSource } from '../core/evidence/source-evidence.ts'
import { strengthInterval } from '../core/statistics/ratio-interval.ts'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { explainedIndices } from '../edition/views/resistivity-explained.ts'
import { sourceEvidenceData } from '../edition/writers/lot-data.ts'
import { loadRecords } from '../records/load.ts'
import { checksAndHistories } from './bench-checks.ts'
import { buildSite } from './build-site.ts'
import { command, EXIT, PROGRAM, ROOT, run, today } from './program.ts'

interface Measure {
  readonly what: string
  readonly lots: number
  readonly seconds: number
  readonly peakMB: number
  readonly detail?: Record<string, number>
}

const SELF = resolve(ROOT, 'src/commands/bench.ts')

/** In this order: the floor of the build needs what the build wrote. */
const PARTS = ['yaml-floor', 'check', 'checks-and-history', 'judge', 'build', 'build-floor']

/** Sets that every lot is judged under, as many as fit its material. */
const SETS = 12

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

await run(async () => {
  const options = command('bench', 'Measure reading, computing and building on generated lots.')
    .option('--sizes <numbers>', 'numbers of lots', '1000,10000')
    .option('--sources <number>', 'number of sources that the lots are spread over', '5')
    .option('--parts <names>', 'what to measure', PARTS.join(','))
    .option('--out <file>', 'JSON with all figures', resolve(ROOT, 'bench/bench.json'))
    .option('--part <name>', 'run one part in this process (used by the command itself)')
    .option('--folder <folder>', 'content folder of the part')
    .option('--site <folder>', 'built site of the part')
    .parse()
    .opts<{
      sizes: string
      sources: string
      parts: string
      out: string
      part?: string
      folder?: string
      site?: string
    }>()
  if (options.part !== undefined) return part(options.part, options.folder ?? '', options.site ?? '')
  const parts = options.parts.split(',')
  const measures = options.sizes
    .split(',')
    .flatMap((lots) => measureSize(Number(lots), options.sources, parts))
  mkdirSync(resolve(options.out, '..'), { recursive: true })
  writeFileSync(options.out, `${JSON.stringify({ format: 1, node: process.version, measures }, null, 2)}\n`)
  process.stdout.write(table(measures))
  return EXIT.well
})

function measureSize(lots: number, sources: string, parts: readonly string[]): Measure[] {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  const content = join(folder, 'content')
  try {
    execFileSync(
      process.execPath,
      [
        resolve(ROOT, 'src/commands/demo.ts'),
        ...['--lots', String(lots), '--sources', sources, '--out', content],
      ],
      { stdio: ['ignore', 'ignore', 'inherit'] },
    )
    const site = join(folder, 'site')
    return parts.map((name) => measurePart(name, lots, content, site))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function measurePart(name: string, lots: number, content: string, site: string): Measure {
  const started = performance.now()
  const child = spawnSync(
    process.execPath,
    ['--max-old-space-size=8192', '--expose-gc', SELF, '--part', name, '--folder', content, '--site', site],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1 << 26 },
  )
  const seconds = (performance.now() - started) / 1000
  if (child.status !== 0) throw new Error(`bench part ${name} ended with status ${child.status}`)
  const line = child.stdout.trim().split('\n').at(-1) ?? '{}'
  const { peakMB = 0, ...detail } = JSON.parse(line) as Record<string, number>
  process.stderr.write(`${lots} lots, ${name}: ${seconds.toFixed(1)} s, ${peakMB.toFixed(0)} MB\n`)
  return { what: name, lots, seconds, peakMB, detail }
}

async function part(name: string, folder: string, site: string): Promise<number> {
  const detail = await (
    {
      'yaml-floor': yamlFloor,
      check,
      'checks-and-history': checksAndHistories,
      judge: judging,
      build: wholeBuild,
      'build-floor': buildFloor,
    }[name] ?? unknownPart
  )(folder, site)
  process.stdout.write(`${JSON.stringify({ ...detail, peakMB: process.resourceUsage().maxRSS / 1024 })}\n`)
  return EXIT.well
}

function unknownPart(): never {
  throw new RangeError('bench needs a known --part')
}

/** Plain js-yaml on the same files, nothing else. */
function yamlFloor(folder: string): Record<string, number> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter(
    (entry) => entry.isFile() && entry.name.endsWith('.yaml'),
  )
  let bytes = 0
  const parsed = files.map((file) => {
    const text = readFileSync(join(file.parentPath, file.name), 'utf8')
    bytes += text.length
    return load(text, { schema: JSON_SCHEMA })
  })
  return { files: parsed.length, bytes }
}

/** The work of npm run check: reading and validating, then computing and judging. */
function check(folder: string): Record<string, number> {
  const started = performance.now()
  const { records, diagnostics } = loadRecords(folder, today())
  const read = performance.now()
  const edition = computeEdition(records, { program: PROGRAM, today: today() })
  return {
    readSeconds: (read - started) / 1000,
    computeSeconds: (performance.now() - read) / 1000,
    lots: edition.lots.size,
    diagnostics: diagnostics.length,
    archiveMB: sizeOf(join(folder, 'issued')) / 1e6,
  }
}

/** Judging alone, from evidence at hand: every lot under twelve sets, the way a reader's browser does it. */
function judging(folder: string): Record<string, number> {
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

async function wholeBuild(folder: string, site: string): Promise<Record<string, number>> {
  const { records } = loadRecords(folder, today())
  const built = await buildSite(records, { out: site, audience: 'public' })
  return { pages: built.pages, lots: built.edition.lots.size }
}

/**
 * A bare Astro project that writes as many pages with the same bytes, held in memory, with no component of
 * ours.
 */
async function buildFloor(_folder: string, site: string): Promise<Record<string, number>> {
  process.env['ASTRO_TELEMETRY_DISABLED'] = '1'
  const pages = readdirSync(site, { recursive: true, withFileTypes: true }).filter(
    (entry) => entry.isFile() && entry.name === 'index.html',
  )
  const texts = pages.map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))
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
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0)
}

function table(measures: readonly Measure[]): string {
  const head =
    '| lots | part | seconds | ms a lot | peak MB | against its floor |\n|---:|---|---:|---:|---:|---:|\n'
  const floors: Record<string, string> = { check: 'yaml-floor', build: 'build-floor' }
  return (
    head +
    measures
      .map((measure) => {
        const floor = measures.find(
          (other) => other.lots === measure.lots && other.what === floors[measure.what],
        )
        const ratio = floor === undefined ? '' : `${(measure.seconds / floor.seconds).toFixed(2)} x`
        const { lots, what, seconds, peakMB } = measure
        const aLot = (1000 * seconds) / lots
        const cells = [lots, what, seconds.toFixed(2), aLot.toFixed(2), peakMB.toFixed(0), ratio]
        return `| ${cells.join(' | ')} |\n`
      })
      .join('') +
    archiveLines(measures) +
    checkLines(measures) +
    judgingLines(measures)
  )
}

function archiveLines(measures: readonly Measure[]): string {
  return measures
    .flatMap(({ lots, detail }) => {
      const size = detail?.['archiveMB']
      return size === undefined
        ? []
        : [`\n${lots} lots: issued documents and their parts ${size.toFixed(1)} MB\n`]
    })
    .join('')
}

/**
 * Checks and histories beside the computing that they look at: at most half of it is the aim, and linear where the
 * microseconds a lot stay.
 */
function checkLines(measures: readonly Measure[]): string {
  return measures
    .filter(({ what }) => what === 'checks-and-history')
    .map(({ lots, detail = {} }) => {
      const [compute = 0, checks = 0, history = 0] = ['compute', 'checks', 'history'].map(
        (name) => detail[`${name}Seconds`],
      )
      const both = checks + history
      return (
        `\n${lots} lots of ${detail['sources']} sources: lots ${compute.toFixed(2)} s, ` +
        `histories ${history.toFixed(2)} s, checks ${checks.toFixed(2)} s; histories and checks take ` +
        `${(both / compute).toFixed(2)} of what the lots take, ${(both / (compute + both)).toFixed(2)} of ` +
        `all computing, ${((1e6 * both) / lots).toFixed(0)} µs a lot\n`
      )
    })
    .join('')
}

/** The cost of judging for itself, since reading and computing take most of its part's time. */
function judgingLines(measures: readonly Measure[]): string {
  return measures
    .filter(({ what }) => what === 'judge')
    .map(({ lots, detail = {} }) => {
      const seconds = (name: string) => `${detail[name]?.toFixed(2)} s`
      const judging = [
        `${detail['verdicts']} verdicts of ${detail['clauses']} clauses in ${seconds('judgeSeconds')}`,
        `${detail['microsecondsAClause']?.toFixed(1)} µs a clause`,
        `${detail['lotsTimesClausesASecond']} lots × clauses a second`,
      ].join(', ')
      const doubt =
        `intervals ${seconds('intervalSeconds')} and explanations ${seconds('explainSeconds')} ` +
        `for ${detail['indices']} indices`
      const computing = `${(detail['computeSeconds'] ?? 0).toFixed(2)} s of computing`
      return `\n${lots} lots: ${judging}; ${doubt}, beside ${computing}\n`
    })
    .join('')
}
