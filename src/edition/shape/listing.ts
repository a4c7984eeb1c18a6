/** The rows of the Edition, made from what was computed of each lot and source. */
import { verdictStanding } from '../../core/criteria/verdict-standing.ts'
import { defined } from '../../core/measure/defined.ts'
import { awaitedTests } from '../../core/result/awaited-test.ts'
import type { Edition, ListedLot, ListedSource, LotEntry, SourceEntry } from './edition.ts'

/** What lists and columns need of a lot. */
export function listedLot(lot: LotEntry): ListedLot {
  const newest = lot.revisions.at(-1)
  return defined({
    id: lot.id,
    source: lot.source,
    lot: lot.lot,
    number: lot.number,
    formerly: lot.formerly,
    class: lot.class,
    sampled: lot.sampled,
    withdrawn: lot.withdrawn,
    state: lot.state,
    tonnes: lot.record.quantity.value,
    outcomes: lot.verdicts.map((verdict) => ({
      criterion: verdict.criterion,
      outcome: verdict.outcome,
      ...verdictStanding(verdict),
    })),
    replacedBy: newest?.replacedBy,
    awaited: lot.state === 'withdrawn' ? [] : awaitedTests(lot.planned),
    issued: newest === undefined ? null : { number: newest.number, date: newest.date },
    earlier: lot.revisions.slice(0, -1).map(({ number }) => number),
    findingCount: lot.findings.length,
  })
}

/** What lists need of a source. */
export function listedSource({ id, record, criteria, findings }: SourceEntry): ListedSource {
  return defined({
    id,
    name: record.name,
    producer: record.producer,
    kind: record.kind,
    class: record.class,
    criteria,
    findingCount: findings.length,
  })
}

/** The way from a source to its rows, in the order of `lots`. */
export function lotsBySource(lots: Edition['lots']): Edition['lotsOf'] {
  const bySource = Map.groupBy(lots.values(), ({ source }) => source)
  return (source) => bySource.get(source) ?? []
}
