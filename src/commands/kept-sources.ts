/**
 * What builds before made of single sources, kept beside the output: a file for each part, under all that it rests on and
 * the digest of the program. Any of them may be deleted, old, spoiled, or left by a build that was killed: what does not
 * say that it rests on what is asked for is not there.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { KeptParts, PartOfSource } from '../edition/passes/parts-of-sources.ts'
import { digestOf } from '../records/issued/digest.ts'
import { keptText, withDigest } from './kept-text.ts'
import { WORK } from './page-stage.ts'
import { programDigest } from './program-digest.ts'
import { faultWords } from './system-faults.ts'

export interface KeptSources extends KeptParts {
  /** Whether other threads may take what this one has put. */
  readonly isShared: boolean
  /** Whether something of a source was made anew, so that it has been computed. */
  readonly isComputed: (source: string) => boolean
  /**
   * Takes away what was kept of sources that are gone.
   * @param sources ids of those that there are
   * @returns lines for the reader of the command, where something could not be kept for the next build
   */
  readonly end: (sources: Iterable<string>) => string[]
}

/**
 * @param final the site that is replaced; it need not be there
 * @param fresh makes everything anew: what is kept is taken away
 * @returns undefined where nothing says by which program parts are made
 */
export function keptSources(final: string, fresh: boolean): KeptSources | undefined {
  const program = programDigest()
  if (program === null) return undefined
  const folder = join(dirname(final), WORK, `sources-of-${basename(final)}`)
  const pathOf = ({ source, name }: PartOfSource) =>
    join(folder, source, `${digestOf(name).slice(-DIGITS)}.txt`)
  const headOf = ({ restsOn, name }: PartOfSource) => `${program} ${restsOn} ${name}`
  const isShared = !fresh || isEmptied(folder)
  const computed = new Set<string>()
  let failed: string | undefined
  return {
    isShared,
    isComputed: (source) => computed.has(source),
    get: (part) => (isShared ? readPart(pathOf(part), headOf(part)) : undefined),
    put: (part, text) => {
      computed.add(part.source)
      failed ??= written(pathOf(part), `${headOf(part)}\n${text}`)
    },
    end: (sources) => {
      removeOthers(folder, new Set(sources))
      return failed === undefined ? [] : [`The next build will compute every lot: ${failed}`]
    },
  }
}

/** Of a digest, enough to tell the parts of a source apart; a part says its name itself. */
const DIGITS = 16

function removeOthers(folder: string, sources: ReadonlySet<string>): void {
  try {
    for (const name of readdirSync(folder))
      if (!sources.has(name)) rmSync(join(folder, name), { recursive: true, force: true })
  } catch {
    // Nothing was kept, or it is closed to us: it is in nobody's way.
  }
}

function isEmptied(folder: string): boolean {
  try {
    rmSync(folder, { recursive: true, force: true })
    return true
  } catch {
    return false
  }
}

/** The first line says what the rest is. */
function readPart(path: string, head: string): string | undefined {
  const text = keptText(path)
  return text?.startsWith(`${head}\n`) === true ? text.slice(head.length + 1) : undefined
}

/** What went wrong; a part that is half written says another digest than its own. */
function written(path: string, rest: string): string | undefined {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, withDigest(rest))
    return undefined
  } catch (error) {
    return `${path} cannot be written: ${faultWords(error)}.`
  }
}
