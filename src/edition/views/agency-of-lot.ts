/** Pairs of producer and agency, of a source or of one lot, as rows. */
import { areOpposite, byTestDate, isBeyond, type Pair, pairsOfLot } from '../../core/agency/pairs.ts'
import type { TestKey } from '../../core/agency/precision.ts'
import { differenceWords, sidesWords, spreadWords } from '../../words/agency.ts'
import { shortDate } from '../../words/dates.ts'
import { propertyWords } from '../../words/property-names.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { testName } from '../../words/standing.ts'
import { resultText } from '../../words/units.ts'
import { link, paths } from '../shape/addresses.ts'
import { comparedLot, precisionOf } from '../shape/compared-lot.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'

export interface PairRow {
  readonly lot: string
  readonly number: string
  readonly href: string
  readonly kind: string
  /** Name of the test, for the pairs of a lot. */
  readonly test: string
  readonly tested: string
  readonly producer: string
  readonly agency: string
  readonly laboratories: string
  readonly difference: string
  /** "0.57 points", or a dash. */
  readonly allowed: string
  readonly beyond: boolean
  readonly opposite: boolean
  readonly sides: readonly string[]
}

const NONE = '—'

/** Whether agencies' results may be shown to the edition's audience. */
function verificationPublished({ audience, site }: Pick<Edition, 'audience' | 'site'>): boolean {
  return audience === 'internal' || (site.publish ?? []).includes('verification')
}

/** "7 d strength activity index (20 %, 23 °C, constant flow)". */
export function testTitle(edition: Edition, { property: key, condition, age }: TestKey): string {
  const name =
    age === undefined
      ? propertyWords({ property: key })
      : testName({ property: key, age: age.text, conditionName: null })
  return unbroken(condition === undefined ? name : `${name} (${conditionTitle(edition, condition)})`)
}

export function pairRow(edition: Edition, pair: Pair): PairRow {
  const { property: key, difference, allowed, producer, agency } = pair
  const decimals = Math.max(producer.decimals, agency.decimals)
  const units = edition.site.units
  const laboratory = (id: string) => edition.laboratories.get(id)?.name ?? id
  return {
    lot: pair.lot,
    number: pair.number,
    href: link(edition, paths.certificate(pair.lot)),
    kind: pair.kind === 'split' ? 'split sample' : 'independent sample',
    test: sentence(testTitle(edition, pair)),
    tested: shortDate(pair.tested),
    producer: resultText(producer, units),
    agency: resultText(agency, units),
    laboratories: `${laboratory(producer.laboratory)} and ${laboratory(agency.laboratory)}`,
    difference: difference === null ? NONE : differenceWords(key, difference, decimals, units),
    allowed: allowed === undefined ? NONE : spreadWords(key, allowed.limit, decimals, units),
    beyond: isBeyond(pair) === true,
    opposite: areOpposite(pair),
    sides: pair.sides.map((side) => unbroken(sidesWords(side))),
  }
}

/** An agency's results of one lot beside its producer's. */
export interface AgencyOfLot {
  readonly rows: readonly PairRow[]
  readonly sources: readonly string[]
}

/** Null where nothing may be shown or nothing is on record. */
export function agencyOfLot(edition: Edition, lot: LotEntry): AgencyOfLot | null {
  if (!verificationPublished(edition)) return null
  const pairs = pairsOfLot(comparedLot(lot, edition.criteria), precisionOf(edition.site)).sort(
    independentFirst,
  )
  if (pairs.length === 0) return null
  return {
    rows: pairs.map((pair) => pairRow(edition, pair)),
    sources: [...new Set(pairs.flatMap(({ allowed }) => (allowed === undefined ? [] : [allowed.source])))],
  }
}

function independentFirst(a: Pair, b: Pair): number {
  return a.kind === b.kind ? byTestDate(a, b) : a.kind === 'independent' ? -1 : 1
}
