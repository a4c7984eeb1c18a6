/** What a source is called, and of what kind its material is. */
import type { Edition, ListedSource } from './edition.ts'
import { asked } from './trace.ts'

/** Asked apart from the rest of its row, which changes with every lot; null for none of the edition. */
export const namedSource = asked(
  'named-source',
  ({ sources }: Pick<Edition, 'sources'>, id): Pick<ListedSource, 'name' | 'kind'> | null => {
    const row = sources.get(id)
    return row === undefined ? null : { name: row.name, kind: row.kind }
  },
)
