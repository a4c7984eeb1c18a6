/**
 * The one slot through which a command hands the Edition to the pages. Astro's configuration and Astro's
 * pages load a module
 * twice, so that a module variable would be two variables; only globalThis is shared.
 */
import type { Edition } from './edition.ts'

const SLOT = Symbol.for('puteoli.edition')

export function putEdition(edition: Edition): void {
  ;(globalThis as Record<symbol, unknown>)[SLOT] = edition
}

/** @throws RangeError when no command has put an Edition, that is when Astro was started by itself. */
export function currentEdition(): Edition {
  const edition = (globalThis as Record<symbol, unknown>)[SLOT]
  if (edition === undefined)
    throw new RangeError('currentEdition needs an Edition in the slot: start with the command build or dev')
  return edition as Edition
}
