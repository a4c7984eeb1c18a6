/** Audit check: the feed of a harvested ash grows wetter, or the ash coarser. */
import { correlationOfNeighbours, lag1 } from '../statistics/autocorrelation.ts'
import { lineThrough, slopeInterval } from '../statistics/least-squares.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** The newest lots, and the fewest that tell: own choices. */
const LOTS = 20
const FEWEST = 8
/** Of the interval of the slope. */
const LEVEL = 0.99

export interface HarvestedLot extends Pick<AuditedLot, 'id' | 'results'> {
  /** Moisture of the feed in per cent, where it is on record. */
  readonly feedMoisture: number | undefined
}

const ASKED = ['feed-moisture', 'residue-160um'] as const

/**
 * A warning for each of moisture of the feed and residue on 160 µm that rises over the newest lots.
 * @param source id
 * @param lots in order of sampling
 * @returns looks are series of eight lots or more
 * Note: the slope is that of a straight line over the lots as numbered, its interval widened for the likeness of
 * neighbours.
 */
export function feedRising(source: string, lots: readonly HarvestedLot[]): Checked {
  const series = ASKED.map((of) => ({
    of,
    values: lots.flatMap((lot) => askedOf(lot, of) ?? []).slice(-LOTS),
  }))
  const long = series.filter(({ values }) => FEWEST <= values.length)
  const findings = long.flatMap(({ of, values }): Finding[] => {
    const line = lineThrough(
      values.map((_, place) => place),
      values,
    )
    const phi = correlationOfNeighbours(lag1(line.residuals) ?? 0, values.length, 2)
    const { half } = slopeInterval(line, LEVEL, phi)
    if (line.slope <= half) return []
    const perTen = { slope: 10 * line.slope, half: 10 * half }
    return [
      found(source, { code: 'feed-rising', params: { source, of, lots: values.length, ...perTen } }, of),
    ]
  })
  return { check: 'feed-rising', looked: long.length, findings }
}

function askedOf({ feedMoisture, results }: HarvestedLot, of: (typeof ASKED)[number]): number | undefined {
  if (of === 'feed-moisture') return feedMoisture
  return results.find(
    ({ property, role, valid }) => property === 'residue-160um' && role === 'producer' && valid,
  )?.value
}
