/**
 * Fetches what judging needs and judges a source's lots under any set, with the core that the site was built
 * with.
 */
import type { WithTexts } from '../core/measure/texts-of-times.ts'
import { readCriterion } from '../core/criteria/read-criterion.ts'
import type { Criterion } from '../core/criteria/criterion.ts'
import { verdictStanding } from '../core/criteria/verdict-standing.ts'
import { awaitedTests } from '../core/result/awaited-test.ts'
import { bestClass, judge } from '../core/judging/verdict.ts'
import { type SourceEvidence, unpackSource, type UnpackedSource } from '../core/evidence/source-evidence.ts'
import type { Verdict } from '../core/criteria/verdict.ts'
import { type LotStanding, lotStanding } from '../words/standing.ts'
import { bestClassWords } from '../words/worded-verdict.ts'

export interface ReadSource extends UnpackedSource {
  readonly id: string
  readonly unpublished: number
  readonly kind: string
}

async function fetched(address: string): Promise<unknown> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`)
  return answer.json()
}

/** @throws Error when the file cannot be fetched */
export async function readSource(address: string): Promise<ReadSource> {
  const file = (await fetched(address)) as SourceEvidence
  return { id: file.source, unpublished: file.unpublished, kind: file.background.kind, ...unpackSource(file) }
}

/** Sets by id. @throws Error when the file cannot be fetched */
export async function readCriteria(address: string): Promise<ReadonlyMap<string, Criterion>> {
  const { criteria } = (await fetched(address)) as { criteria: Record<string, WithTexts<Criterion>> }
  return new Map(Object.entries(criteria).map(([id, file]) => [id, readCriterion(file)]))
}

/** Whether a set is for the source's kind of material. */
export function applies(criterion: Criterion, source: ReadSource): boolean {
  return criterion.kinds.some((kind) => kind === source.kind)
}

/** Verdict of one lot; undefined for a set that is not for the source's material. */
export function verdictOf(source: ReadSource, place: number, criterion: Criterion): Verdict | undefined {
  return applies(criterion, source) ? judge(criterion, source.evidenceOf(place)) : undefined
}

/** The best class met in words; undefined where the set has no order of merit. */
export function bestClassOf(source: ReadSource, place: number, criterion: Criterion): string | undefined {
  return bestClassWords(bestClass(criterion, source.evidenceOf(place)), criterion, source.conditionTitle)
}

/** State and verdict of one lot together, and whether a result is overdue. */
export function briefStanding(
  source: ReadSource,
  place: number,
  verdict: Verdict,
): Pick<LotStanding, 'mark' | 'brief'> {
  const lot = source.lots[place]
  if (lot === undefined)
    throw new RangeError(`briefStanding needs a place among ${source.lots.length} lots, got ${place}`)
  return lotStanding({
    state: lot.state,
    outcome: verdict.outcome,
    ...verdictStanding(verdict),
    awaited: awaitedTests(lot.planned).map((test) => ({
      ...test,
      conditionName: source.conditionTitle(test.condition),
    })),
  })
}
