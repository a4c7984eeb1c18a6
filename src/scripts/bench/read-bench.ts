/** The text of a lot to what is wrong with it, its results and its verdict: pure, so that it can be tested without a page. */
import type { Criterion } from '../../core/criteria/criterion.ts'
import { verdictStanding } from '../../core/criteria/verdict-standing.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { UnpackedSource } from '../../core/evidence/source-evidence.ts'
import { judge } from '../../core/judging/verdict.ts'
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { awaitedTests } from '../../core/result/awaited-test.ts'
import type { Result } from '../../core/result/result.ts'
import type { Uncertainty } from '../../core/result/uncertainty.ts'
import { type ComputedLot, computedLot } from '../../edition/passes/computed-lot.ts'
import { readLotAlone } from '../../records/checks/lot-alone.ts'
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { type LotStanding, lotStanding } from '../../words/standing.ts'
import { type NextOfBatch, nextSpecimens } from './next-specimens.ts'

export interface BenchAsked {
  /** SOURCE/LOT */
  readonly id: string
  readonly text: string
  /** Day on which the lot is judged. */
  readonly asOf: Moment
  readonly criterion: Criterion | undefined
}

export interface BenchReading {
  readonly diagnostics: readonly Diagnostic[]
  /** Absent where the text has a fault. */
  readonly judged?: BenchJudged
}

export interface BenchJudged {
  readonly lot: Lot
  readonly results: readonly { readonly result: Result; readonly uncertainty?: Uncertainty }[]
  readonly next: readonly NextOfBatch[]
  /** Absent where no set is chosen, or it is not for the material. */
  readonly verdict?: Verdict
  readonly standing?: LotStanding
}

/** @param source the source's other lots */
export function readBench(asked: BenchAsked, records: Records, source: UnpackedSource): BenchReading {
  const { id, text, asOf, criterion } = asked
  const { lot, diagnostics } = readLotAlone({ id, text }, records, numbersOf(id, source), asOf)
  if (lot === undefined || !records.sources.has(sourceOf(id))) return { diagnostics }
  const computed = computedLot(id, lot, records, asOf)
  // What had not been sampled by that day is not judged on it.
  if (!isBy(computed.sampled, asOf)) return { diagnostics }
  const evidence = source.evidenceWith(computed, asOf)
  const results = computed.results
    .filter(({ role }) => role === 'producer')
    .map((result) => ({ result, uncertainty: evidence.uncertaintyOf?.(result) }))
  const next = nextSpecimens(lot, criterion, { records, lotClass: computed.class, asOf })
  if (criterion === undefined || !criterion.kinds.some((kind) => kind === evidence.kind))
    return { diagnostics, judged: { lot, results, next } }
  const verdict = judge(criterion, evidence)
  const standing = standingOf(verdict, computed, source)
  return { diagnostics, judged: { lot, results, next, verdict, standing } }
}

/** A lot on the bench was never issued: its verdict is that of a draft. */
function standingOf(verdict: Verdict, { planned }: ComputedLot, source: UnpackedSource): LotStanding {
  const awaited = awaitedTests(planned).map((test) => ({
    ...test,
    conditionName: source.conditionTitle(test.condition),
  }))
  return lotStanding({
    state: awaited.length === 0 ? 'complete' : 'provisional',
    outcome: verdict.outcome,
    ...verdictStanding(verdict),
    awaited,
  })
}

function numbersOf(id: string, source: UnpackedSource): Map<string, string> {
  const others = source.lots.filter((lot) => lot.id !== id)
  return new Map(
    others.map((lot) => {
      const number = lot.number || nameInSource(lot.id)
      return [`${sourceOf(lot.id)}|${number.normalize('NFKC').toLowerCase()}`, lot.id]
    }),
  )
}
