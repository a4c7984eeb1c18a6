/**
 * What builds before made of single sources, kept beside the output: a file for each source, under the digest of all that
 * it rests on and of the program. It may be deleted, old, spoiled, or left by a build that was killed: what does not carry
 * the digest asked for is not there.
 */
import { readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { kept } from '../core/measure/kept.ts'
import type { KeptParts } from '../edition/passes/parts-of-sources.ts'
import { digestOf } from '../records/issued/digest.ts'
import { WORK } from './page-stage.ts'
import { programDigest } from './program-digest.ts'
import { writeWhole } from './write-whole.ts'

/** Texts by name, and the digest that they were made under. */
interface SourceFile {
  readonly restsOn: string
  readonly texts: ReadonlyMap<string, string>
}

export interface KeptSources extends KeptParts {
  /** Writes what was asked for, for the next build. @returns lines for the reader of the command */
  readonly write: () => string[]
}

/**
 * @param final the site that is replaced; it need not be there
 * @param fresh makes everything anew
 */
export function keptSources(final: string, fresh: boolean): KeptSources | undefined {
  const program = programDigest()
  if (program === null) return undefined
  const fileOf = (source: string) =>
    join(dirname(final), WORK, `sources-of-${basename(final)}`, `${source}.txt`)
  const before = new Map<string, SourceFile>()
  const asked = new Map<string, SourceFile & { readonly texts: Map<string, string> }>()
  const changed = new Set<string>()
  const askedOf = (source: string, restsOn: string) =>
    kept(asked, source, () => ({ restsOn, texts: new Map<string, string>() }))
  return {
    get: ({ source, restsOn, name }) => {
      const file = kept(before, source, () => (fresh ? NOTHING : readSource(fileOf(source), program)))
      const text = file.restsOn === restsOn ? file.texts.get(name) : undefined
      if (text !== undefined) askedOf(source, restsOn).texts.set(name, text)
      return text
    },
    put: ({ source, restsOn, name }, text) => {
      askedOf(source, restsOn).texts.set(name, text)
      changed.add(source)
    },
    write: () =>
      [...changed].flatMap((source) => written(fileOf(source), program, asked.get(source) ?? NOTHING)),
  }
}

const NOTHING: SourceFile = { restsOn: '', texts: new Map() }

/** Three kinds of line: a digest of all that follows, what it was made under, then a name and its text in turn. */
function readSource(path: string, program: string): SourceFile {
  try {
    const whole = readFileSync(path, 'utf8')
    const end = whole.indexOf('\n')
    const rest = whole.slice(end + 1)
    if (whole.slice(0, end) !== digestOf(rest)) return NOTHING
    const [madeBy, restsOn = '', ...lines] = rest.split('\n')
    if (madeBy !== program) return NOTHING
    const texts = new Map<string, string>()
    for (let place = 0; place + 1 < lines.length; place += 2)
      texts.set(lines[place] ?? '', lines[place + 1] ?? '')
    return { restsOn, texts }
  } catch {
    return NOTHING
  }
}

function written(path: string, program: string, { restsOn, texts }: SourceFile): string[] {
  const rest = [program, restsOn, ...[...texts].flat(), ''].join('\n')
  try {
    writeWhole(path, `${digestOf(rest)}\n${rest}`, 'check the permissions and the free space of the folder')
    return []
  } catch (error) {
    return [`The next build will compute every lot: ${(error as Error).message}`]
  }
}
