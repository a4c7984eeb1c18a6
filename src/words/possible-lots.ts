/** What is said of a shipment that was drawn from no one lot. */
import { plural } from './numbers.ts'
import { listWords } from './sentences.ts'

/** What decides the words. */
export interface PossibleLots {
  readonly lots: readonly string[]
  readonly unshown?: true
  /** Printed names of those that are withdrawn. */
  readonly withdrawn: readonly string[]
}

/** Said wherever a list has no room for more. */
export const NO_ONE_LOT = 'not resolvable to one lot'

/**
 * "not resolvable to one lot; the worst of 2 possible lots is shown; SA-2026-003 is withdrawn": a worse outcome of another
 * lot would hide the withdrawal.
 * Note: a lot that is not shown is not named, and not counted either.
 */
export function notOneLot({ lots, unshown, withdrawn }: PossibleLots): string {
  const shown =
    unshown === true
      ? `${NO_ONE_LOT}; a possible lot is not shown here, so no verdict is given`
      : `${NO_ONE_LOT}; the worst of ${plural(lots.length, 'possible lot', 'possible lots')} is shown`
  if (withdrawn.length === 0) return shown
  return `${shown}; ${listWords(withdrawn, 'and')} ${withdrawn.length === 1 ? 'is' : 'are'} withdrawn`
}

/** "and up to 25.2 t more, from shipments not resolvable to one lot". @param mass with its unit */
export function upToMore(mass: string): string {
  return `and up to ${mass} more, from shipments not resolvable to one lot`
}
