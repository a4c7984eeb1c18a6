/** What is said of a shipment that was drawn from no one lot. */
import { plural } from './numbers.ts'

/** What decides the words. */
export interface PossibleLots {
  readonly lots: readonly string[]
  readonly unshown?: true
}

/** Said wherever a list has no room for more. */
export const NO_ONE_LOT = 'not resolvable to one lot'

/**
 * "not resolvable to one lot; the worst of 2 possible lots is shown".
 * Note: a lot that is not shown is not named, and not counted either.
 */
export function notOneLot({ lots, unshown }: PossibleLots): string {
  return unshown === true
    ? `${NO_ONE_LOT}; a possible lot is not shown here, so no verdict is given`
    : `${NO_ONE_LOT}; the worst of ${plural(lots.length, 'possible lot', 'possible lots')} is shown`
}

/** "and up to 25.2 t more, from shipments not resolvable to one lot". @param mass with its unit */
export function upToMore(mass: string): string {
  return `and up to ${mass} more, from shipments not resolvable to one lot`
}
