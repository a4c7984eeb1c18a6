/**
 * npm run bench: time and peak memory of reading, computing and building on generated lots, each beside its
 * floor, measured in the same run. Every figure is a process of its own; whole-process peak memory is the
 * operating system's (getrusage).
 */
import { execFileSync, spawnSync, type SpawnSyncReturns } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { performance } from 'node:perf_hooks'
import { checksAndHistories } from './bench-checks.ts'
import {
  aWeekLater,
  buildFloor,
  check,
  judging,
  oneLotChanged,
  oneLotLess,
  oneNewLot,
  wholeBuild,
  yamlFloor,
} from './bench-parts.ts'
import { copying, eleventy, getPeers } from './bench-peers.ts'
import { studies } from './bench-studies.ts'
import { type Measure, progress, table } from './bench-table.ts'
import { command, EXIT, ROOT, run } from './program.ts'

const SELF = resolve(ROOT, 'src/commands/bench.ts')

/** A part of its own: it has no lots. */
const STUDIES = 'studies'
/** Writes the same pages with another program. */
const PEER = 'eleventy'
/** In this order: the builds after the first one, and what stands beside it, need what it wrote. */
const PARTS = [
  'yaml-floor',
  'check',
  'checks-and-history',
  'judge',
  'build',
  'build-again',
  'build-one-lot-changed',
  'build-one-lot-less',
  'build-one-new-lot',
  'build-a-week-later',
  'build-floor',
  PEER,
  'copy',
  STUDIES,
]

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
  const ofLots = parts.filter((name) => name !== STUDIES)
  if (parts.includes(PEER)) getPeers()
  const measures = [
    ...(ofLots.length === 0 ? [] : options.sizes.split(',')).flatMap((lots) =>
      measureSize(Number(lots), options.sources, ofLots),
    ),
    ...(parts.includes(STUDIES) ? [measurePart(STUDIES, 0, '', '')] : []),
  ]
  mkdirSync(resolve(options.out, '..'), { recursive: true })
  writeFileSync(options.out, `${JSON.stringify({ format: 1, node: process.version, measures }, null, 2)}\n`)
  process.stdout.write(table(measures))
  return measures.some(({ failed }) => failed !== undefined) ? EXIT.failed : EXIT.well
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
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 1 << 26 },
  )
  const seconds = (performance.now() - started) / 1000
  process.stderr.write(child.stderr)
  if (child.status !== 0) return failedPart({ what: name, lots, seconds, peakMB: 0 }, child)
  const line = child.stdout.trim().split('\n').at(-1) ?? '{}'
  const { peakMB = 0, ...detail } = JSON.parse(line) as Record<string, number>
  const measure = { what: name, lots, seconds, peakMB, detail }
  process.stderr.write(progress(measure))
  return measure
}

/** The others are measured all the same. */
function failedPart(measure: Measure, { status, signal, stderr }: SpawnSyncReturns<string>): Measure {
  const told = stderr
    .trim()
    .split('\n')
    .find((line) => /memory|heap|cannot|error/i.test(line))
  const failed = { ...measure, failed: told?.trim() ?? `it ended with ${signal ?? `status ${status}`}` }
  process.stderr.write(progress(failed))
  return failed
}

async function part(name: string, folder: string, site: string): Promise<number> {
  const detail = await (
    {
      'yaml-floor': yamlFloor,
      check,
      'checks-and-history': checksAndHistories,
      judge: judging,
      build: wholeBuild,
      'build-again': wholeBuild,
      'build-one-lot-changed': oneLotChanged,
      'build-one-lot-less': oneLotLess,
      'build-one-new-lot': oneNewLot,
      'build-a-week-later': aWeekLater,
      'build-floor': buildFloor,
      [PEER]: eleventy,
      copy: copying,
      [STUDIES]: studies,
    }[name] ?? unknownPart
  )(folder, site)
  process.stdout.write(`${JSON.stringify({ ...detail, peakMB: process.resourceUsage().maxRSS / 1024 })}\n`)
  return EXIT.well
}

function unknownPart(): never {
  throw new RangeError('bench needs a known --part')
}
