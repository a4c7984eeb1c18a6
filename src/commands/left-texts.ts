/** Texts that records were laid out with and that nobody has replaced: no certificate says "<your company>". */
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Records } from '../records/records.ts'
import { placeholdersIn } from '../records/yaml/placeholders.ts'

export interface LeftText {
  /** Relative to the content folder. */
  readonly file: string
  readonly text: string
}

/** The first of what a lot's certificate is made from; null where all are replaced. */
export function leftForLot(records: Records, lot: string): LeftText | null {
  const record = records.lots.get(lot)
  const source = records.sources.get(sourceOf(lot))
  const laboratories = [...(record?.analyses ?? []), ...(record?.tests ?? [])].map(
    ({ laboratory }) => laboratory,
  )
  return firstIn([
    [`lots/${lot}.yaml`, record],
    [`sources/${sourceOf(lot)}.yaml`, source],
    [`producers/${source?.producer}.yaml`, records.producers.get(source?.producer ?? '')],
    ...[...new Set(laboratories)].map(
      (id) => [`laboratories/${id}.yaml`, records.laboratories.get(id)] as const,
    ),
  ])
}

/** The same of what all lots share. */
export function leftForAll({ site, sources, criteria }: Records): LeftText | null {
  const used = new Set([
    ...site.criteria,
    ...[...sources.values()].flatMap((source) => (source.criteria ?? []).map(({ set }) => set)),
  ])
  return firstIn([
    ['site.yaml', site],
    ...[...used].map((id) => [`criteria/${id}.yaml`, criteria.get(id)] as const),
  ])
}

function firstIn(records: readonly (readonly [file: string, record: unknown])[]): LeftText | null {
  for (const [file, record] of records) {
    const [left] = placeholdersIn(record)
    if (left !== undefined) return { file, text: left.text }
  }
  return null
}
