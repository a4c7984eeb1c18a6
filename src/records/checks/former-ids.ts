/** Earlier ids of lots: each keeps an address alive, so that no other lot may have it. */
import type { RelatedPlace } from '../diagnostics/diagnostic.ts'
import { recordAt } from '../record-path.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'

interface LoadedLot {
  readonly record: Pick<Lot, 'formerly'>
  readonly report: FileReport
}

/**
 * @param lots every lot that was read, by id
 * @param ids of all lots with a file; all ids are told apart without regard to case
 */
export function checkFormers(lots: ReadonlyMap<string, LoadedLot>, ids: Iterable<string>): void {
  const taken = new Map([...ids].map((id) => [id.toLowerCase(), id]))
  const formers = new Map<string, { id: string; place: () => RelatedPlace | undefined }>()
  for (const [id, { record, report }] of lots) {
    record.formerly?.forEach((former, index) => {
      const at = `/formerly/${index}`
      const named = recordAt(`lots/${former}.yaml`)
      if (!('kind' in named))
        report.at(
          at,
          'id-invalid',
          `"${former}" is not a valid lot id, so no lot can have had it`,
          named.mend,
        )
      const key = former.toLowerCase()
      const [owner, other] = [taken.get(key), formers.get(key)]
      if (owner !== undefined)
        report.at(
          at,
          'duplicate-id',
          `${former} is the id ${owner === id ? 'that this lot has now' : 'of another lot'}`,
          'name the id that this lot had before, or remove the entry',
        )
      else if (other !== undefined)
        report.at(
          at,
          'duplicate-id',
          `${former} is listed twice as an earlier id, also of ${other.id}`,
          'keep it once, with the lot that had it',
          [other.place()],
        )
      formers.set(key, { id, place: () => report.place(at, 'the first entry of this id') })
    })
  }
}
