/** All that the pages of a lot are drawn from: its certificate, an earlier revision, the working. */
import type { Moment } from '../../core/measure/moment.ts'
import type { PageFromView } from '../shape/drawing.ts'
import { dayBeside } from '../shape/due.ts'
import type { Certificate, Edition, LotEntry } from '../shape/edition.ts'
import { type Frame, frameOf } from '../shape/frame.ts'
import { listedLot } from '../shape/listing.ts'
import { type AffectedShipments, affectedShipments } from './affected-shipments.ts'
import { type CertificateAddress as PermanentAddress, certificateAddress } from './certificate-address.ts'
import { certificateAddresses, lotAddresses, revisionAddresses } from './certificate-pages.ts'
import { type LotTodayView, lotTodayView } from './lot-today.ts'
import { type LotWorkingView, lotWorkingView } from './lot-working.ts'
import { type CertificateLinks, certificateLinks } from './printed-links.ts'
import { type StateNotice, stateNotice } from './state-notice.ts'

interface LotPage {
  readonly frame: Frame
  readonly id: string
  /** Printed lot number. */
  readonly number: string
}

/** At an earlier id of the lot there is nothing to show but the way on. */
interface CertifiedPage<Shown> extends LotPage {
  /** SOURCE/LOT of the address. */
  readonly asked: string
  readonly shown: Shown | null
}

export type CertificatePage = CertifiedPage<{
  readonly certificate: Certificate
  readonly links: CertificateLinks
  readonly affected: AffectedShipments | null
  readonly address: PermanentAddress | null
  readonly today: LotTodayView
}>

export type RevisionPage = CertifiedPage<{
  readonly revision: number
  readonly certificate: Certificate
  readonly links: CertificateLinks
  readonly notice: StateNotice | null
}>

export type WorkingPage = LotPage & LotWorkingView

/** @param current asked again for each page that is drawn */
export function certificatePages(current: () => Edition): PageFromView<CertificatePage>[] {
  return certificateAddresses(current()).map(({ source, lot, id }) => ({
    params: { source, lot },
    view: () => certificatePage(current(), id, `${source}/${lot}`),
  }))
}

/** @param current asked again for each page that is drawn */
export function revisionPages(current: () => Edition): PageFromView<RevisionPage>[] {
  return revisionAddresses(current()).map(({ source, lot, number, id }) => ({
    params: { source, lot, number: String(number) },
    view: () => revisionPage(current(), id, { asked: `${source}/${lot}`, number }),
  }))
}

/** @param current asked again for each page that is drawn */
export function workingPages(current: () => Edition): PageFromView<WorkingPage>[] {
  return lotAddresses(current()).map(({ source, lot, id }) => ({
    params: { source, lot },
    view: () => workingPage(current(), id),
  }))
}

function certificatePage(edition: Edition, id: string, asked: string): CertificatePage {
  const lot = edition.lot(id)
  if (asked !== id) return { ...pageOf(edition, lot, null), asked, shown: null }
  const certificate = lot.certificate()
  const today = lotTodayView(edition, lot)
  return {
    ...pageOf(edition, lot, today.asOf),
    asked,
    shown: {
      certificate,
      links: certificateLinks(edition, certificate),
      affected: affectedShipments(edition, lot),
      address: certificateAddress(edition, id),
      today,
    },
  }
}

function revisionPage(
  edition: Edition,
  id: string,
  { asked, number }: { readonly asked: string; readonly number: number },
): RevisionPage {
  const lot = edition.lot(id)
  const page = { ...pageOf(edition, lot, null), asked }
  if (asked !== id) return { ...page, shown: null }
  const certificate = lot.revisionCertificate(number)
  return {
    ...page,
    shown: {
      revision: number,
      certificate,
      links: certificateLinks(edition, certificate),
      notice: stateNotice(edition, lot, certificate),
    },
  }
}

function workingPage(edition: Edition, id: string): WorkingPage {
  const lot = edition.lot(id)
  return { ...pageOf(edition, lot, dayBeside(edition, listedLot(lot))), ...lotWorkingView(edition, lot) }
}

function pageOf(edition: Edition, { id, number }: LotEntry, day: Moment | null): LotPage {
  return { frame: frameOf(edition, day), id, number }
}
