/** The table of shipments, with what was known of their lot on the day that they left. */
import { type OnShipping, onShipping } from '../../core/checks/on-shipping.ts'
import type { Edition, ShipmentEntry } from '../shape/edition.ts'
import { lotOfShipment, standingOfShipment } from '../shape/possible-lots.ts'
import { type Column, type FilledColumn, filled, headsOf, type TableHead } from './table.ts'

interface ShipmentRow {
  readonly shipment: ShipmentEntry
  /** null where it is not of one lot that is shown. */
  readonly lot: string | null
  readonly onDay: OnShipping | null
  readonly standing: string | undefined
}

const COLUMNS: readonly Column<ShipmentRow>[] = [
  {
    name: 'bill',
    type: 'text',
    required: true,
    description: 'Bill of lading',
    of: ({ shipment }) => shipment.bill,
  },
  {
    name: 'shipped',
    type: 'date',
    required: true,
    description: 'Day on which it left',
    of: ({ shipment }) => shipment.date,
  },
  {
    name: 'lot',
    type: 'text',
    description: 'Lot as SOURCE/LOT; none where it may be any of several, or one that is not published',
    of: ({ lot }) => lot,
  },
  {
    name: 'possible_lots',
    type: 'text',
    description: 'Lots that it may have come from, with spaces between, where it is not of one',
    of: ({ lot, shipment }) => (lot === null ? shipment.lots.join(' ') || null : null),
  },
  {
    name: 'mass_t',
    type: 'double',
    unit: 't',
    required: true,
    description: 'Mass',
    of: ({ shipment }) => shipment.massT,
  },
  {
    name: 'mass_written',
    type: 'text',
    required: true,
    description: 'Mass as the record writes it',
    of: ({ shipment }) => shipment.massWritten,
  },
  {
    name: 'consignee',
    type: 'text',
    description: 'Consignee, where the site publishes it',
    of: ({ shipment }) => shipment.consignee,
  },
  {
    name: 'project',
    type: 'text',
    description: 'Project, where the site publishes it',
    of: ({ shipment }) => shipment.project,
  },
  {
    name: 'seal',
    type: 'text',
    description: 'Seal, where the site publishes it',
    of: ({ shipment }) => shipment.seal,
  },
  {
    name: 'loaded_from',
    type: 'text',
    description: 'Terminal or silo where lots lay together',
    of: ({ shipment }) => shipment.place,
  },
  {
    name: 'lot_standing',
    type: 'text',
    description: 'State and outcome of its lot today in words, or the worst of the possible ones',
    of: ({ standing }) => standing,
  },
  {
    name: 'ages_unknown',
    type: 'text',
    description:
      'Ages whose activity indices were not known on that day, with "; " between; none where all were known, or of a shipment without a lot',
    of: ({ onDay }) => onDay?.unknown.map(({ text }) => text).join('; ') || null,
  },
  {
    name: 'certificate_then',
    type: 'text',
    description: 'Certificate on that day: none, in-force or withdrawn',
    of: ({ onDay }) => onDay?.certificate,
  },
  {
    name: 'failure_then',
    type: 'text',
    description: 'Whether the lot was known not to meet on that day: known, afterwards or none',
    of: ({ onDay }) => onDay?.failure,
  },
]

export const SHIPMENTS: TableHead = {
  name: 'shipments',
  title: 'Shipments',
  description:
    'A row for each bill of lading of lots that the site shows, in order of date: what left from a lot without a certificate is not among them unless drafts are shown. The year is that of the shipment.',
  keys: ['source', 'year'],
  columns: headsOf(COLUMNS),
}

/** @param shipments in their order in the edition */
export function shipmentColumns(edition: Edition, shipments: readonly ShipmentEntry[]): FilledColumn[] {
  // Lots of many trucks are asked once, since the whole of a lot is dear.
  const ids = new Set(shipments.flatMap((shipment) => lotOfShipment(shipment) ?? []))
  const shown = [...ids].filter((id) => edition.lots.has(id))
  const overTime = new Map(shown.map((id) => [id, edition.lot(id).overTime]))
  return filled(
    COLUMNS,
    shipments.map((shipment) => {
      const lot = lotOfShipment(shipment)
      const known = overTime.get(lot ?? '')
      return {
        shipment,
        lot,
        onDay: known === undefined ? null : onShipping(known, shipment.date),
        standing: standingOfShipment(edition, shipment)?.text,
      }
    }),
  )
}
