/** Units that a quantity at a place may be written in. */
import { KINDS, type QuantityKind } from '../../core/measure/units.ts'
import type { Path } from '../edit/edit-yaml.ts'
import { nodeAt } from './form-node.ts'

/** The usual one first; none where the place holds no quantity. */
export function unitsFor(path: Path): readonly string[] {
  const quantity = nodeAt(path)?.node['quantity'] as QuantityKind | readonly QuantityKind[] | undefined
  const kinds = quantity === undefined ? [] : ([quantity].flat() as QuantityKind[])
  return kinds.flatMap((kind) => KINDS[kind].units.map(({ symbol }) => symbol))
}
