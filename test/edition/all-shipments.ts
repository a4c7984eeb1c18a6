/** The shipments of every source, of one source after the other. */
import type { Edition, ShipmentEntry } from '../../src/edition/shape/edition.ts'

export function allShipments({ sources, shipmentsOf }: Edition): ShipmentEntry[] {
  return [...sources.keys()].flatMap((source) => shipmentsOf(source))
}
