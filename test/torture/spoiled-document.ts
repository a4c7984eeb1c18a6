/**
 * Spoiled issued documents whose digests are on record: nobody but a forger writes such, and none may end a command
 * in a trace. The parts of a document are spoiled like the rest.
 */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import type { Chance } from '../../src/demo/chance.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { checkReport } from '../../src/edition/writers/check-report.ts'
import { dataFiles } from '../../src/edition/writers/outputs.ts'
import { diagnosticsText } from '../../src/records/diagnostics/diagnostic-text.ts'
import { digestOf } from '../../src/records/issued/digest.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase, LOT } from '../records/issued/issue-base.ts'
import type { RunCase } from './kinds.ts'
import { slowness, TODAY, traceOf } from './read-spoiled.ts'
import { ODD_VALUES } from './spoil/odd-values.ts'
import { spoiledValue } from './spoil/spoil-values.ts'
import { oneOf } from './spoil/spoil-text.ts'
import { chanceFor } from './spoiled-record.ts'

const DOCUMENT = `issued/${LOT}/1.json`
const RECORD = `lots/${LOT}.yaml`

/** Runs cases in a folder of its own, which is put back after each. */
export function spoiledDocumentFaults(): RunCase {
  const folder = join(mkdtempSync(join(tmpdir(), 'torture-documents-')), 'content')
  process.on('exit', () => rmSync(dirname(folder), { recursive: true, force: true }))
  cpSync(resolve(import.meta.dirname, '../diagnostics/base'), folder, { recursive: true })
  issueBase(folder)
  const sound = new Map(
    [
      DOCUMENT,
      RECORD,
      ...readdirSync(join(folder, 'issued/parts')).map((name) => `issued/parts/${name}`),
    ].map((path) => [path, readFileSync(join(folder, path), 'utf8')] as const),
  )
  return (seed, number) => {
    const written = spoil(folder, sound, chanceFor(seed, number))
    const faults = readingFaults(folder)
    for (const path of written) rmSync(join(folder, path))
    for (const [path, text] of sound) writeFileSync(join(folder, path), text)
    return faults
  }
}

/** Writes a spoiled document, or one with a spoiled part, and puts its digest on record. @returns what is new */
function spoil(folder: string, sound: ReadonlyMap<string, string>, chance: Chance): string[] {
  let text = sound.get(DOCUMENT) ?? ''
  const first = digestOf(text)
  const parts: string[] = []
  if (chance.whole(0, 1) === 0) {
    const part = oneOf(
      [...text.matchAll(/"(?:part|private)":"(sha256-[0-9a-f]+)"/g)].map((match) => match[1] ?? ''),
      chance,
    )
    const spoiledPart = spoiledJson(sound.get(`issued/parts/${part}.json`) ?? '', chance)
    const digest = digestOf(spoiledPart)
    parts.push(`issued/parts/${digest}.json`)
    writeFileSync(join(folder, `issued/parts/${digest}.json`), spoiledPart)
    text = text.replaceAll(part, digest)
  } else text = spoiledJson(text, chance)
  mkdirSync(dirname(join(folder, DOCUMENT)), { recursive: true })
  writeFileSync(join(folder, DOCUMENT), text)
  writeFileSync(join(folder, RECORD), (sound.get(RECORD) ?? '').replaceAll(first, digestOf(text)))
  return parts.filter((path) => !sound.has(path))
}

function spoiledJson(text: string, chance: Chance): string {
  const way = chance.whole(0, 9)
  if (way === 0) return text.slice(0, chance.whole(0, text.length))
  if (way === 1) return JSON.stringify(oneOf(ODD_VALUES, chance))
  if (way === 2) return `${'['.repeat(100_000)}${']'.repeat(100_000)}`
  return JSON.stringify(spoiledValue(JSON.parse(text) as object, chance).value)
}

function readingFaults(folder: string): string[] {
  const begun = process.cpuUsage()
  try {
    const { records, diagnostics } = loadRecords(folder, TODAY)
    diagnosticsText(diagnostics, folder)
    const edition = computeEdition(records, { program: 'torture', today: TODAY })
    JSON.parse([...checkReport(edition, diagnostics)].join(''))
    // A site is built, and its certificates drawn, only where no record has a fault.
    if (diagnostics.every(({ severity }) => severity === 'warning'))
      for (const audience of ['internal', 'public'] as const) draw(forAudience(edition, audience))
    return slowness(begun)
  } catch (error) {
    return [traceOf(error)]
  }
}

function draw(edition: Edition): void {
  for (const id of edition.lots.keys()) {
    const lot = edition.lot(id)
    if (lot.revisions.length > 0) lot.certificate()
    for (const { number } of lot.revisions) lot.revisionCertificate(number)
  }
  for (const { pieces } of dataFiles(edition)) [...(pieces() ?? [])].join('')
}
