/** Withdrawn lots by the lot that replaces them. */
import { kept } from '../../core/measure/kept.ts'
import type { Edition, ListedLot } from './edition.ts'
import { noteRead, withoutTrace } from './trace.ts'

const replacements = new WeakMap<Edition['lots'], ReadonlyMap<string | undefined, readonly ListedLot[]>>()

/**
 * Rows of the lots that a lot replaces; found once for an edition's lots.
 * Note: it is a dependency of its own ("replacing/ID"), so that not every page of a lot rests on all rows.
 */
export function replacedLots({ lots }: Pick<Edition, 'lots'>, id: string): readonly ListedLot[] {
  noteRead(`replacing/${id}`)
  return withoutTrace(() => {
    const found = kept(replacements, lots, () => Map.groupBy(lots.values(), ({ replacedBy }) => replacedBy))
    return found.get(id) ?? []
  })
}
