/**
 * What single sources give to files made of several. Each such part has its name where it is made, so that a source whose
 * lots are not held for long can be asked for everything at once.
 */
import type { Edition } from './edition.ts'
import type { IfPlain } from './plain-text.ts'
import { sharedNames } from './shared-names.ts'

const named = () => sharedNames<(edition: never, source: string) => void>('puteoli.parts of sources')

type Asked = Pick<Edition, 'ofSource'>

/**
 * @param name of the part, one for each way of making it
 * @param make reads this source and its lots, what all sources share, and nothing of other sources
 * @returns asks an edition for it
 */
export function partOfSource<From extends Asked, Part>(
  name: string,
  make: (edition: From, source: string) => Part & IfPlain<Part>,
): (edition: From, source: string) => Part {
  const ask = (edition: From, source: string) =>
    edition.ofSource<Part>(source, name, () => make(edition, source))
  named().set(name, ask)
  return ask
}

/**
 * The same where a source gives several of one name, such as one for each year.
 * @param makes each with what tells it from the others
 * @returns asks for one after the other
 */
export function partsOfSource<From extends Asked, Part>(
  name: string,
  makes: (
    edition: From,
    source: string,
  ) => Iterable<readonly [key: string, make: () => Part & IfPlain<Part>]>,
): (edition: From, source: string) => Generator<Part> {
  function* ask(edition: From, source: string): Generator<Part> {
    for (const [key, make] of makes(edition, source))
      yield edition.ofSource<Part>(source, `${name} ${key}`, make)
  }
  named().set(name, (edition: From, source) => [...ask(edition, source)])
  return ask
}

/**
 * Asks a source for all that files of several sources may take from it, while its lots are held. That it was asked is kept as
 * well, so that nothing is read again of a source that is as it was.
 */
export function askForParts(edition: Edition, source: string): void {
  edition.ofSource(source, 'every part', () => {
    for (const ask of named().values()) ask(edition as never, source)
    return true
  })
}
