/** The edition that a site is built of. */
import type { Moment } from '../core/measure/moment.ts'
import { defined } from '../core/measure/defined.ts'
import { computeEdition, type HeldLots } from '../edition/compute.ts'
import type { KeptParts } from '../edition/passes/parts-of-sources.ts'
import { forAudience } from '../edition/publishing.ts'
import { askForShown } from '../edition/certificate/shown-of-source.ts'
import type { Edition } from '../edition/shape/edition.ts'
import type { Records } from '../records/load.ts'
import { memoryWatch } from './memory-watch.ts'
import { PROGRAM } from './program.ts'
import { shippedRecords } from './shipped.ts'

/** Of more lots than these a few sources are held at a time: a computed lot takes 75 KB, its results alone 20. */
const HELD: HeldLots = { results: 20_000, whole: 10_000 }

/**
 * Lots that are held at once; undefined where all are: of few there is room for them, and what is let go has to be kept.
 * @param stated in place of what there is room for
 */
export function heldOf(
  { lots }: Records,
  kept: KeptParts | undefined,
  stated: HeldLots = HELD,
): HeldLots | undefined {
  return kept === undefined || lots.size <= stated.whole ? undefined : stated
}

export interface SiteQuestion {
  readonly audience: Edition['audience']
  readonly asOf?: Moment
  readonly today: Moment
  readonly address?: string
  /** Lots that are held at once, all without it. */
  readonly held?: HeldLots
}

/** @throws CommandFailure, now or when something of it is asked for, where memory runs short */
export function siteEdition(
  records: Records,
  { audience, asOf, today, address, held }: SiteQuestion,
  kept: KeptParts | undefined,
): Edition {
  const edition = computeEdition(records, {
    program: PROGRAM,
    asOf,
    today,
    address,
    atLot: memoryWatch(),
    shipped: shippedRecords(),
    ...defined({
      kept,
      held,
      atSource: held !== undefined && audience === 'public' ? askForShown : undefined,
    }),
  })
  return forAudience(edition, audience)
}
