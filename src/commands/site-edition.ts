/** The edition that a site is built of. */
import type { Moment } from '../core/measure/moment.ts'
import { defined } from '../core/measure/defined.ts'
import { computeEdition } from '../edition/compute.ts'
import type { KeptParts } from '../edition/passes/parts-of-sources.ts'
import { forAudience } from '../edition/publishing.ts'
import type { Edition } from '../edition/shape/edition.ts'
import type { Records } from '../records/load.ts'
import { memoryWatch } from './memory-watch.ts'
import { PROGRAM } from './program.ts'
import { shippedRecords } from './shipped.ts'

export interface SiteQuestion {
  readonly audience: Edition['audience']
  readonly asOf?: Moment
  readonly today: Moment
  readonly address?: string
}

/** @throws CommandFailure, now or when something of it is asked for, where memory runs short */
export function siteEdition(
  records: Records,
  { audience, asOf, today, address }: SiteQuestion,
  kept: KeptParts | undefined,
): Edition {
  const edition = computeEdition(records, {
    program: PROGRAM,
    asOf,
    today,
    address,
    atLot: memoryWatch(),
    shipped: shippedRecords(),
    ...defined({ kept }),
  })
  return forAudience(edition, audience)
}
