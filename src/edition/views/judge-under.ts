/** Which sets a reader may choose to judge a source's lots under. */
import { listedSetName } from '../../words/outcomes.ts'
import type { Edition } from '../shape/edition.ts'
import { namedSource } from '../shape/named-source.ts'

export interface JudgeUnderView {
  readonly source: string
  /** With a lot, that one is judged in full; without, every lot of the source on a line each. */
  readonly lot?: string
  /** Sets for its kind of material. */
  readonly sets: readonly { readonly id: string; readonly name: string }[]
  readonly units: Edition['site']['units']
}

export function judgeUnderView(
  edition: Pick<Edition, 'criteria' | 'sources' | 'site'>,
  of: Pick<JudgeUnderView, 'source' | 'lot'>,
): JudgeUnderView {
  const { criteria, site } = edition
  const kind = namedSource(edition, of.source)?.kind
  return {
    ...of,
    sets: [...criteria.values()]
      .filter(({ kinds }) => kinds.some((candidate) => candidate === kind))
      .map((criterion) => ({ id: criterion.id, name: listedSetName(criterion) })),
    units: site.units,
  }
}
