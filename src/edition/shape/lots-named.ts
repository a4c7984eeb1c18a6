/** Lots that are named beside a source and its lots, which an audience may not be shown. */
import type { Finding } from '../../core/checks/finding.ts'
import type { Edition, ShipmentEntry } from './edition.ts'
import { textsOf } from './public-findings.ts'
import { partOfSource } from './part-of-source.ts'

export interface LotsNamed {
  /** By the findings of the source and of any of its lots. */
  readonly bySource: readonly string[]
  /** By the findings and possible shipments of each lot that names any. */
  readonly byLot: readonly (readonly [lot: string, named: readonly string[]])[]
}

/** @param edition that holds all lots */
export const lotsNamed = partOfSource('lots named', (edition: Edition, source): LotsNamed => {
  const byLot = edition.lotsOf(source).flatMap(({ id }): LotsNamed['byLot'][number][] => {
    const { findings, sharedShipments } = edition.lot(id)
    const named = namedIn(findings, sharedShipments)
    return named.length === 0 ? [] : [[id, named]]
  })
  const ofSource = namedIn(edition.source(source).findings, [])
  return { bySource: [...new Set([...ofSource, ...byLot.flatMap(([, named]) => named)])], byLot }
})

/** A text may be taken for the id of a lot that it is not: it is then that of none. */
function namedIn(findings: readonly Finding[], shipments: readonly ShipmentEntry[]): string[] {
  const texts = [
    ...findings.flatMap(({ reason }) => textsOf(reason.params)),
    ...shipments.flatMap(({ lots }) => lots),
  ]
  return [...new Set(texts.filter((text) => LOT_ID.test(text)))]
}

const LOT_ID = /^[^/\s]+\/[^/\s]+$/
