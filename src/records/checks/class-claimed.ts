/** A lot that nobody claims a class for, under a governing specification whose limits depend on it. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { asksForClass, claimedClass } from '../../core/judging/scope.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import { countWords } from '../../words/numbers.ts'
import { listWords } from '../../words/sentences.ts'
import { criteriaInForce } from './criteria-in-force.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot, Source } from '../schema/loaded-records.ts'
import type { AllRecords } from './references.ts'

interface Loaded<T> {
  readonly record: T
  readonly report: FileReport
}

/** Told once at the source, however many of its lots it concerns. */
export function checkClassClaimed(
  sources: ReadonlyMap<string, Loaded<Source>>,
  lots: ReadonlyMap<string, Loaded<Lot>>,
  all: AllRecords,
): void {
  const bySource = Map.groupBy(lots, ([id]) => sourceOf(id))
  for (const [id, { record: source, report }] of sources) {
    const without = (bySource.get(id) ?? []).flatMap(([lot, { record }]) => {
      const [governing] = criteriaInForce(all, source, record.produced.to)
      return governing !== undefined && lacksClass(governing, source, record) ? [{ lot, governing }] : []
    })
    const [first] = without
    if (first === undefined) continue
    const { id: set, classes } = first.governing
    report.at(
      '/kind',
      'class-missing',
      `no class is claimed for ${countWords(without.length, 'lot')}, the first ${nameInSource(first.lot)}, and limits of ${set} depend on it`,
      `write class: with one of ${listWords(classes, 'or')} here, or in each lot`,
    )
  }
}

function lacksClass(set: Criterion, source: Source, lot: Lot): boolean {
  const claimed = claimedClass(set, {
    class: lot.class ?? source.class ?? null,
    classUnder: { ...source['class-under'], ...lot['class-under'] },
  })
  return claimed === null && asksForClass(set)
}
