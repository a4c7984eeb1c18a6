/** What single sources give to things made of several, kept from build to build. */
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
  const made = new Map<string, unknown>()
  return <Part>({ source, name, restsOn }: Parameters<PartsOfSources>[0], make: () => Part): Part => {
    if (kept === undefined) return remembered(made, `${source} ${name}`, make)
    const part = { source, name, restsOn: restsOn() }
    return remembered(made, `${source} ${name} ${part.restsOn}`, () =>
      sharedPlainValue(textOf(kept, part, make)),
    )
  }
}

function remembered<Part>(made: Map<string, unknown>, key: string, make: () => unknown): Part {
  if (!made.has(key)) made.set(key, make())
  return made.get(key) as Part
}

function textOf(kept: KeptParts, part: PartOfSource, make: () => unknown): string {
  const known = kept.get(part)
  if (known !== undefined) return known
  const text = sharedPlainText(make())
  kept.put(part, text)
  return text
}
