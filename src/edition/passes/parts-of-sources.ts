/** What single sources give to things made of several, kept from build to build. */
import type { Edition } from '../shape/edition.ts'
import { plainText, plainValue } from '../shape/plain-text.ts'

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

/**
 * @param restsOn digest of all that a source is made of
 * @param kept everything is made anew without it
 * Note: with it, what was just made is read from its text as well, so that nobody can tell one from the other.
 */
export function partsOfSources(restsOn: (source: string) => string, kept?: KeptParts): Edition['ofSource'] {
  const made = new Map<string, unknown>()
  return <Part>(source: string, name: string, make: () => Part, beside = ''): Part => {
    const key = `${source} ${name} ${beside}`
    if (!made.has(key))
      made.set(
        key,
        kept === undefined
          ? make()
          : plainValue(textOf(kept, { source, name, restsOn: `${restsOn(source)} ${beside}` }, make)),
      )
    return made.get(key) as Part
  }
}

function textOf(kept: KeptParts, part: PartOfSource, make: () => unknown): string {
  const known = kept.get(part)
  if (known !== undefined) return known
  const text = plainText(make())
  kept.put(part, text)
  return text
}
