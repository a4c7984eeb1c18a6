/** An order of results that does not depend on their places in the record. */
import { compareMoments } from '../measure/moment.ts'
import { knownSince, type Result } from './result.ts'

/**
 * The order of two results by what they state.
 * @returns negative, zero, positive; zero only where nothing tells them apart
 * Note: by when they were tested, when they became known, then what else they state.
 */
export function byTest(a: Result, b: Result): number {
  return (
    compareMoments(a.tested, b.tested) ||
    compareMoments(knownSince(a), knownSince(b)) ||
    byText(a.key, b.key) ||
    // Results of one analysis differ by their keys already: this is for duplicates alone.
    byText(restOf(a), restOf(b))
  )
}

function byText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1
}

function restOf({ role, value, valid, n, censored, begun, reasons }: Result): string {
  return JSON.stringify([role, value, valid, n, censored, begun, reasons])
}
