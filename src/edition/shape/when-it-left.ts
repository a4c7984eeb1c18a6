/** What is to be said of a shipment on the day that it left: results not yet known, certificate, listing. */
import { listingOn } from '../../core/checks/listing.ts'
import { type LotOverTime, onShipping } from '../../core/checks/on-shipping.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { onShippingWords, unlistedWords } from '../../words/on-shipping.ts'
import type { Edition, ShipmentEntry } from './edition.ts'
import { lotOfShipment } from './possible-lots.ts'
import { asked } from './trace.ts'
import { partOfSource } from './part-of-source.ts'

type Asked = Pick<Edition, 'lots' | 'lot' | 'sources' | 'source' | 'ofSource'>

/**
 * @returns a line for each lot that there is something to say of, and one for the source; lots of many trucks are
 * asked once, since the whole of a lot is dear
 */
export function whenItLeft(edition: Asked): (shipment: ShipmentEntry) => string[] {
  const lots = new Map<string, LotOverTime | null>()
  const lotOf = (id: string) => {
    const known = lots.get(id)
    if (known !== undefined) return known
    const overTime = edition.lots.has(id) ? edition.lot(id).overTime : null
    lots.set(id, overTime)
    return overTime
  }
  const listings = new Map<string, ReturnType<typeof listingOf>>()
  const listing = (id: string) => {
    const known = listings.get(id) ?? listingOf(edition, id)
    listings.set(id, known)
    return known
  }
  return (shipment) => {
    const unlisted = listing(shipment.source)(shipment)
    return [...lotLines(shipment, lotOf), ...(unlisted === null ? [] : [unlisted])]
  }
}

/** The same of every shipment of a source, in their order. */
export const whenOwnLeft = partOfSource('when shipments left', (edition: Edition, source): string[][] =>
  edition.shipmentsOf(source).map(whenItLeft(edition)),
)

/** Of several possible lots each line begins with its lot. */
function lotLines(shipment: ShipmentEntry, lotOf: (id: string) => LotOverTime | null): string[] {
  const one = lotOfShipment(shipment)
  return shipment.lots.flatMap((id) => {
    const lot = lotOf(id)
    const words = lot === null ? null : onShippingWords(onShipping(lot, shipment.date))
    if (words === null) return []
    return [one === null ? `${nameInSource(id)}: ${words}` : words]
  })
}

/** The listing of a source; undefined for none of the edition. An approval for one set alone says nothing of it. */
const recordedListing = asked('listing', (edition: Asked, id) =>
  edition.sources.has(id) ? ownListing(edition, id) : undefined,
)

const ownListing = partOfSource('listing', ({ source }: Asked, id) => {
  const { listing = [], approvals = [] } = source(id).record
  return { listing, approvals: approvals.filter(({ set }) => set === undefined) }
})

function listingOf(edition: Asked, id: string): (shipment: ShipmentEntry) => string | null {
  const listed = recordedListing(edition, id)
  if (listed === undefined) return () => null
  return ({ date }) => {
    const standing = listingOn(listed, date)
    // Nothing says that a source has to be listed before it sells; once listed, it may have to stay so.
    return standing?.since == null ? null : unlistedWords(standing)
  }
}
