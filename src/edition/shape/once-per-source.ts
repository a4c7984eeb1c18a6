/** What is made of one source after the other and read when all have been computed. */
import { kept } from '../../core/measure/kept.ts'
import type { Edition } from './edition.ts'

/** Of a source: made when it is first asked for, and kept. */
export type PerSource<Value> = (edition: Edition, source: string) => Value

/**
 * A value for each source, which is asked for while the source is held and read later without it.
 * @param make reads this source and its lots, and what all sources share; of one edition alone
 */
export function oncePerSource<Value extends object>(make: PerSource<Value>): PerSource<Value> {
  const made = new Map<string, Value>()
  return (edition, source) => kept(made, source, () => make(edition, source))
}
