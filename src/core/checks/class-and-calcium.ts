/** Audit check: calcium oxide on the other side of the limit between classes than the class that a coal ash claims. */
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/**
 * Per cent of calcium oxide up to which coal ash is of class F, and above which of class C.
 * Source: note on the change of ASTM C618 in 2019, Ash Development Association of Australia.
 */
export const CLASS_CALCIUM = 18
/** Percentage points within which a lot is near it: own choice. */
const NEAR = 1
/** Lots named: own choice. */
const SHOWN = 5

/** A lot with its calcium oxide in per cent. */
interface Sorted {
  readonly lot: string
  readonly class: string
  readonly calcium: number
}

/**
 * A warning for a source some of whose lots lie on the other side.
 * @param source id
 * @param lots in order of sampling, each with the class that it claims
 * Note: an edition that sorts by the sum of oxides may put the lot in the class that it claims.
 */
export function classBesideCalcium(
  source: string,
  lots: readonly (Pick<AuditedLot, 'id' | 'results'> & { readonly class: string | null })[],
): Checked {
  const sorted = lots.flatMap(sortedOf)
  const beside = sorted.filter((one) => one.class !== (one.calcium <= CLASS_CALCIUM ? 'F' : 'C'))
  const near = sorted.filter(({ calcium }) => Math.abs(calcium - CLASS_CALCIUM) <= NEAR).length
  const listed = beside.slice(-SHOWN).map(({ lot, calcium }) => ({ lot, calcium }))
  const [first] = beside
  const findings: Finding[] =
    first === undefined
      ? []
      : [
          found(source, {
            code: 'class-beside-calcium',
            params: { source, class: first.class, lots: beside.length, of: sorted.length, near, listed },
          }),
        ]
  return { check: 'class-beside-calcium', looked: sorted.length, findings }
}

function sortedOf({
  id: lot,
  results,
  ...claimed
}: Parameters<typeof classBesideCalcium>[1][number]): Sorted[] {
  const calcium = results.find(
    ({ property, role, valid }) => property === 'CaO' && role === 'producer' && valid,
  )?.value
  const isSorted = claimed.class === 'F' || claimed.class === 'C'
  return calcium === undefined || !isSorted ? [] : [{ lot, class: claimed.class ?? '', calcium }]
}
