/** What single sources give to things made of several, kept from build to build. */
import { LastUsed } from '../../core/measure/last-used.ts'
import { sharedPlainText, sharedPlainValue } from '../shape/plain-text.ts'

/** Texts that were made of sources before, by the same program. */
export interface KeptParts {
  /** Undefined where nothing is kept of that name, or of a source that rested on something else. */
  readonly get: (part: PartOfSource) => string | undefined
  readonly put: (part: PartOfSource, text: string) => void
}

export interface PartOfSource {
  readonly source: string
  /** All that it rests on, as text without a line break: digests for the most part. */
  readonly restsOn: string
  readonly name: string
}

/** A part, made when it is first asked for: a plain value (`Edition.ofSource` asks the compiler whether it is). */
export type PartsOfSources = <Part>(
  part: Omit<PartOfSource, 'restsOn'> & { readonly restsOn: () => string },
  make: () => Part,
) => Part

/**
 * @param kept everything is made anew without it
 * Note: with it, what was just made is read from its text as well, so that nobody can tell one from the other.
 */
export function partsOfSources(kept?: KeptParts): PartsOfSources {
  // What is kept can be read again; all else cannot.
  const made = new LastUsed<MadePart>(kept === undefined ? Number.POSITIVE_INFINITY : READ_AT_ONCE)
  return <Part>({ source, name, restsOn }: Parameters<PartsOfSources>[0], make: () => Part): Part => {
    if (kept === undefined)
      return made.of(`${source} ${name}`, lengthOf, () => ({ part: make(), length: 0 })).part as Part
    const part = { source, name, restsOn: restsOn() }
    return made.of(`${source} ${name} ${part.restsOn}`, lengthOf, () => {
      const text = textOf(kept, part, make)
      return { part: sharedPlainValue(text), length: text.length }
    }).part as Part
  }
}

/** Characters of the texts of parts that stay read: those that many pages ask for are short. */
const READ_AT_ONCE = 20_000_000

interface MadePart {
  readonly part: unknown
  /** Of its text. */
  readonly length: number
}

function lengthOf({ length }: MadePart): number {
  return length
}

function textOf(kept: KeptParts, part: PartOfSource, make: () => unknown): string {
  const known = kept.get(part)
  if (known !== undefined) return known
  const text = sharedPlainText(make())
  kept.put(part, text)
  return text
}
