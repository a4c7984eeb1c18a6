/** Which lot stands for a source on the pages that show one. */
import type { ListedLot } from '../shape/edition.ts'

/** Whether a lot's certificate is in force. */
export function isInForce({ state }: Pick<ListedLot, 'state'>): boolean {
  return state !== 'draft' && state !== 'withdrawn'
}

/** The last lot whose certificate is in force, else the last one of all. @param lots in order of sampling */
export function lastLot(lots: readonly ListedLot[]): ListedLot | undefined {
  return lots.findLast(isInForce) ?? lots.at(-1)
}
