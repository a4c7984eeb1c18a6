/** All that the pages of one source and year are drawn from: register, lots under a set, findings, shipments. */
import type { PageFromView } from '../shape/drawing.ts'
import { dayBesideAny } from '../shape/due.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { type Frame, frameOf } from '../shape/frame.ts'
import { type FindingYear, type FindingYearView, findingYears, findingYearView } from './findings-by-year.ts'
import { type RegisterYear, type RegisterYearView, registerYears, registerYearView } from './register.ts'
import { type ShipmentYear, type ShipmentYearView, shipmentYears, shipmentYearView } from './shipments.ts'
import { type SourceUnder, type SourceUnderView, sourcesUnder, sourceUnderView } from './sources.ts'
import { sampledIn } from './years.ts'

/** Years long past say the same until a record of theirs changes: the day stands only where something is awaited. */
interface Framed {
  readonly frame: Frame
}

export interface RegisterYearPage extends Framed, RegisterYear, RegisterYearView {
  readonly units: Edition['site']['units']
}

export type FindingYearPage = Framed & FindingYear & FindingYearView

export type ShipmentYearPage = Framed & ShipmentYear & ShipmentYearView

export interface SourceUnderPage extends Framed, SourceUnderView {
  readonly source: string
  /** null of the page that stands for all years. */
  readonly asked: string | null
  readonly units: Edition['site']['units']
}

/** @param current asked again for each page that is drawn */
export function registerYearPages(current: () => Edition): PageFromView<RegisterYearPage>[] {
  return registerYears(current()).map((own) => ({
    params: { ...own },
    view: () => {
      const edition = current()
      return {
        ...own,
        ...registerYearView(edition, own),
        frame: frameBeside(edition, lotsOf(edition, own)),
        units: edition.site.units,
      }
    },
  }))
}

/** @param current asked again for each page that is drawn */
export function findingYearPages(current: () => Edition): PageFromView<FindingYearPage>[] {
  return findingYears(current()).map((own) => ({
    params: { ...own },
    view: () => {
      const edition = current()
      return { ...own, ...findingYearView(edition, own), frame: frameBeside(edition, lotsOf(edition, own)) }
    },
  }))
}

/** @param current asked again for each page that is drawn */
export function shipmentYearPages(current: () => Edition): PageFromView<ShipmentYearPage>[] {
  return shipmentYears(current()).map((own) => ({
    params: { ...own },
    view: () => {
      const edition = current()
      const view = shipmentYearView(edition, own)
      const lots = new Set(view.shipments.flatMap((shipment) => shipment.lots))
      const rows = [...lots].flatMap((id) => edition.lots.get(id) ?? [])
      return { ...own, ...view, frame: frameBeside(edition, rows) }
    },
  }))
}

/** @param current asked again for each page that is drawn */
export function sourceUnderPages(current: () => Edition): PageFromView<SourceUnderPage>[] {
  return sourcesUnder(current()).map(({ year, ...under }) => ({
    params: { ...under, ...(year === null ? {} : { year }) },
    view: () => sourceUnderPage(current(), { ...under, year }),
  }))
}

function sourceUnderPage(edition: Edition, under: SourceUnder): SourceUnderPage {
  const view = sourceUnderView(edition, under)
  const { source, year: asked } = under
  const rows = view.years.flatMap(({ year }) => lotsOf(edition, { source, year }))
  // The page of all years counts the lots that there are.
  const frame = asked === null ? frameOf(edition, edition.asOf) : frameBeside(edition, rows)
  return { ...view, source, asked, frame, units: edition.site.units }
}

function lotsOf(edition: Edition, { source, year }: RegisterYear): ListedLot[] {
  return sampledIn(edition.lotsOf(source), year)
}

function frameBeside(edition: Edition, lots: Iterable<ListedLot>): Frame {
  return frameOf(edition, dayBesideAny(edition, lots))
}
