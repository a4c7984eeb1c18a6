/**
 * From a source's background and history to the evidence on one of its lots: the one way in which a lot comes
 * to be judged.
 */
import type { Age } from '../measure/age.ts'
import type { MaterialKind } from '../measure/material-kind.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import type { Evidence, KnownApproval, KnownDocument, KnownEvent } from './evidence.ts'
import {
  firstLot,
  type History,
  historyKey,
  type HistoryLot,
  precedingResults,
  resultsWithin,
} from '../history/history.ts'
import { coverageOf } from '../history/sampling-coverage.ts'
import { precedingSamples, samplesWithin } from '../history/sample-series.ts'
import { compareMoments, daysBetween, isBy, type Moment } from '../measure/moment.ts'
import {
  pooledKey,
  type PooledStep,
  pooledUncertainty,
  repeatedKey,
  repeatedUncertainty,
} from '../doubt/pooled-repeatability.ts'
import { statedUncertainty, type StatedRepeatability } from '../doubt/stated-repeatability.ts'
import { byTest } from '../result/by-test.ts'
import type { PlannedTest, Result, UnmadeResult } from '../result/result.ts'
import { type Requested, requestedTogether } from './requested.ts'
import type { Quantity } from '../measure/units.ts'

/**
 * What is known of a source beside its lots; plain data, so that the site can hand it to a reader's browser.
 */
export interface SourceBackground {
  readonly kind: MaterialKind
  readonly declared?: Readonly<Record<string, Quantity | string | undefined>>
  readonly facts?: Readonly<Record<string, string | undefined>>
  readonly documents?: readonly KnownDocument[]
  readonly approvals?: readonly KnownApproval[]
  readonly events?: readonly KnownEvent[]
  readonly classUnder?: Readonly<Record<string, string>>
  /** Optional clauses that purchasers ask for, by set. */
  readonly requested: Requested
  /** By laboratory. */
  readonly repeatability: Readonly<Record<string, readonly StatedRepeatability[]>>
  /** Scatter between batches pooled from earlier control batches, by laboratory and index (`pooledKey`). */
  readonly pooled?: Readonly<Record<string, Readonly<Record<string, readonly PooledStep[]>>>>
}

/** What a lot states of its own accord. */
export interface LotBackground extends HistoryLot {
  readonly classUnder?: Readonly<Record<string, string>>
  readonly facts?: Readonly<Record<string, string | undefined>>
  readonly documents?: readonly KnownDocument[]
  /** Optional clauses that purchasers of this lot ask for, by set. */
  readonly requested?: Requested
}

/** The same on one date alone: what it was before is not among it. */
export type LotOnDate = Omit<LotBackground, 'observations'>

/** Results and tests of the lot as known on the date. */
export interface KnownOfLot {
  readonly results: readonly Result[]
  readonly unmade: readonly UnmadeResult[]
  readonly planned: readonly PlannedTest[]
}

/**
 * What is known of one lot on the date on which it is judged.
 * @param history of the source, which holds the lot
 * @param asOf calendar date of the judgement
 */
export function lotEvidence(
  source: SourceBackground,
  history: History,
  lot: LotBackground,
  known: KnownOfLot,
  asOf: Moment,
): Evidence {
  const first = firstLot(history, asOf)
  const key = (...parts: [Result['property'], string | undefined, Age | undefined, string | undefined]) =>
    historyKey(lot.class, ...parts)
  return {
    class: lot.class,
    classUnder: { ...source.classUnder, ...lot.classUnder },
    kind: source.kind,
    asOf,
    // In an order of their own, so that no choice among them depends on their places in the record.
    results: known.results.filter((result) => result.role === 'producer').sort(byTest),
    unmade: known.unmade,
    planned: known.planned,
    preceding: (property, condition, age, method, count, before) =>
      before === undefined
        ? precedingResults(history, key(property, condition, age, method), lot.id, asOf, count)
        : precedingSamples(
            history,
            key(property, condition, age, method),
            { lot: lot.id, ...before },
            asOf,
            count,
          ),
    period: (property, condition, age, method, days, before) =>
      before === undefined
        ? resultsWithin(history, key(property, condition, age, method), lot.id, asOf, days)
        : samplesWithin(
            history,
            key(property, condition, age, method),
            { lot: lot.id, ...before },
            asOf,
            days,
          ),
    coverage: (property, sample, duty) => coverageOf(history, lot.id, asOf, { property, sample, duty }),
    recordDays: first === undefined ? 0 : daysBetween(first.from, lot.sampled),
    facts: { ...source.facts, ...lot.facts },
    documents: [...(source.documents ?? []), ...(lot.documents ?? [])],
    approvals: source.approvals ?? [],
    events: (source.events ?? []).filter((event) => isBy(event.date, asOf)).sort(byDate),
    requested: requestedTogether(source.requested, lot.requested ?? {}),
    uncertaintyOf: (result) =>
      ownUncertainty(result) ??
      statedUncertainty(source.repeatability[result.laboratory] ?? [], result) ??
      uncertaintyFromBatches(source, result),
    ...(source.declared === undefined ? {} : { declared: source.declared }),
  }
}

function byDate(a: KnownEvent, b: KnownEvent): number {
  return compareMoments(a.date, b.date) || (`${a.kind}|${a.title}` < `${b.kind}|${b.title}` ? -1 : 1)
}

/** What the laboratory states with a finished figure itself. */
function ownUncertainty({ statedU }: Result): Uncertainty | undefined {
  return statedU === undefined ? undefined : { u: statedU, basis: { code: 'stated-with-figure', params: {} } }
}

/**
 * What earlier batches of a laboratory say of the uncertainty of an index: repeated batches of one lot where there are
 * enough of them, else control batches.
 * @param source with the scatter pooled from batches
 * @param result an index
 * @returns standard, in the index's unit; undefined while batches are few, and of a finished figure, since batches that
 * were recomputed here say nothing of one that was not
 */
export function uncertaintyFromBatches(
  source: Pick<SourceBackground, 'pooled'>,
  result: Result,
): Uncertainty | undefined {
  if (result.finished === true) return undefined
  const series = source.pooled?.[result.laboratory] ?? {}
  return (
    repeatedUncertainty(series[repeatedKey(result)] ?? [], result) ??
    pooledUncertainty(series[pooledKey(result)] ?? [], result)
  )
}
