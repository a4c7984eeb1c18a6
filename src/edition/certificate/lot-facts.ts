/** What a certificate states of a lot itself and of its samples. */
import { defined } from '../../core/measure/defined.ts'
import { dutyOf } from '../../core/measure/duty.ts'
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import { regularSamples } from '../../core/mortar/regular-samples.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { written } from '../../words/as-written.ts'
import { date } from '../../words/dates.ts'
import type { JudgedLot } from '../passes/judge-lot.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'

export function lotIdentity({ number, class: lotClass }: JudgedLot, record: Lot): CertificateFacts['lot'] {
  const feed = [
    record.feed?.cell,
    record.feed?.moisture && `feed moisture ${written(record.feed.moisture)}`,
    record.feed?.note,
  ].filter(Boolean)
  return {
    number,
    class: lotClass,
    produced: { from: record.produced.from.text, to: record.produced.to.text },
    quantityT: record.quantity.value,
    quantity: written(record.quantity),
    silo: record.silo ?? null,
    seals: record.seals ?? [],
    feed: feed.length === 0 ? null : feed.join(', '),
    blend: (record.blend ?? []).map((part) => ({ source: part.source, share: written(part.share) })),
    note: record.note ?? null,
    ...defined({ purchaseOrder: record['purchase-order'] }),
  }
}

export function statedSamples(record: Lot, { laboratories }: Records): CertificateFacts['samples'] {
  return inOrderOfTaking(record.samples).map((sample) => ({
    id: sample.id,
    kind: sample.kind,
    duty: dutyOf({ sampleKind: sample.kind, ...defined({ duty: sample.duty }) }),
    of: sample.of ?? null,
    taken: takenWords(sample),
    begun: dateOrNull(sample.taken?.from ?? sample.on),
    ended: dateOrNull(sample.taken?.to ?? sample.on),
    place: sample.place ?? null,
    by: sample.by ?? null,
    method: sample.method ?? null,
    increments: sample.increments ?? null,
    mass: sample.mass ? written(sample.mass) : null,
    container: sample.container ?? null,
    represents: sample.represents ? written(sample.represents) : null,
    to: sample.to === undefined ? null : (laboratories.get(sample.to)?.name ?? sample.to),
    received: sample.received === undefined ? null : date(sample.received),
    retained: sample.retained
      ? [sample.retained.place, sample.retained.until && `until ${date(sample.retained.until)}`]
          .filter(Boolean)
          .join(', ')
      : null,
  }))
}

/** Regular samples, which may be many, in order of their taking, others in their places. */
function inOrderOfTaking(all: Lot['samples']): Lot['samples'] {
  const times = regularSamples({ samples: all }) ?? {}
  const timed = all.filter(({ id }) => times[id] !== undefined)
  const inOrder = timed
    .toSorted((a, b) => compareMoments(times[a.id] as Moment, times[b.id] as Moment))
    .values()
  return all.map((sample) => (timed.includes(sample) ? (inOrder.next().value ?? sample) : sample))
}

function dateOrNull(moment: Moment | undefined): string | null {
  return moment === undefined ? null : date(moment)
}

function takenWords({ taken, on }: Lot['samples'][number]): string | null {
  if (taken !== undefined) return `${date(taken.from)} to ${date(taken.to)}`
  return on === undefined ? null : date(on)
}
