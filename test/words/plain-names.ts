/** Names of findings where no record gives any: ids stand for them. */
import { nameInSource, sourceOf } from '../../src/core/measure/lot-id.ts'
import type { FindingNames } from '../../src/words/finding-names.ts'

const id = (own: string) => own

export const PLAIN_NAMES: FindingNames = {
  units: 'SI',
  source: id,
  laboratory: id,
  condition: id,
  criterion: id,
  clause: (_, clause) => clause,
  lot: (lot) => `lot ${nameInSource(lot)} of ${sourceOf(lot)}`,
  number: nameInSource,
}
