/** Whether a batch has as many specimens as its condition asks for. */
import type { ResultReason } from '../result/reason.ts'
import type { BatchRangeRule, SpecimenCount } from './mortar.ts'

/** What is said of the number of specimens, and whether it is enough. */
export interface CountJudgement {
  readonly valid: boolean
  readonly reasons: readonly ResultReason[]
}

/**
 * Holds the number of specimens of one age against what its condition asks for.
 * @param tested specimens that were tested and not left out by the laboratory, those that the range drops included
 * @param counted specimens behind the mean
 * @param asked by the condition; undefined where it says nothing
 * @param rules permissible ranges: the largest number that they speak of is planned where the condition names none
 * @returns a note for fewer than planned; not valid below the least, unless the condition only notes it
 */
export function judgeCount(
  { tested, counted }: { readonly tested: number; readonly counted: number },
  asked: SpecimenCount | undefined,
  rules: readonly Pick<BatchRangeRule, 'of'>[],
): CountJudgement {
  const planned = asked?.planned ?? Math.max(0, ...rules.map(({ of }) => of))
  const atLeast = asked?.['at-least'] ?? 0
  const fewer: ResultReason[] =
    0 < tested && tested < planned ? [{ code: 'fewer-specimens', params: { n: tested, planned } }] : []
  const tooFew: ResultReason[] =
    0 < counted && counted < atLeast ? [{ code: 'too-few-specimens', params: { n: counted, atLeast } }] : []
  return {
    valid: tooFew.length === 0 || asked?.fewer === 'flag',
    reasons: [...fewer, ...tooFew],
  }
}
