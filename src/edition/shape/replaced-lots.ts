/** Withdrawn lots by the lot that replaces them. */
import { kept } from '../../core/measure/kept.ts'
import type { Edition, ListedLot } from './edition.ts'
import { asked } from './trace.ts'

const replacements = new WeakMap<Edition['lots'], ReadonlyMap<string | undefined, readonly ListedLot[]>>()

/** Rows of the lots that a lot replaces, by its id; found once for an edition's lots. */
export const replacedLots = asked(
  'replacing',
  ({ lots }: Pick<Edition, 'lots'>, id): readonly ListedLot[] => {
    const found = kept(replacements, lots, () => Map.groupBy(lots.values(), ({ replacedBy }) => replacedBy))
    return found.get(id) ?? []
  },
)
