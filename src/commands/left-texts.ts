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

function firstIn(records: readonly (readonly [file: string, record: object | undefined])[]): LeftText | null {
  for (const [file, record] of records) {
    const text = record === undefined ? null : leftIn(record)
    if (text !== null) return { file, text }
  }
  return null
}

/** Every lot asks for the records of its source, which may be long. */
const asked = new WeakMap<object, string | null>()

function leftIn(record: object): string | null {
  const known = asked.get(record)
  if (known !== undefined) return known
  const text = placeholdersIn(record)[0]?.text ?? null
  asked.set(record, text)
  return text
}
