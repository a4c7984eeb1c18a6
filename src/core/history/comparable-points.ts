/** Which points of a series may be compared with each other, and those points as statistics take them. */
import { kept } from '../measure/kept.ts'
import type { Moment } from '../measure/moment.ts'

/** A valid point of a series. */
export interface ComparablePoint {
  /** Place in the series. */
  readonly place: number
  readonly value: number
  /** The value is known only within bounds. */
  readonly bounded: boolean
  readonly sampled: Moment
  readonly laboratory: string
  /** Lot of the control's cement; absent where no control is behind the value. */
  readonly cement?: string
  /** Points that share a control batch share this, and are one to a statistic of scatter. */
  readonly cluster: string
  /** Value of the control that an index was taken against. */
  readonly controlValue?: number
  /** Difference of duplicate tests of the point. */
  readonly duplicates?: number
  /** Standard deviation between batches that the laboratory states. */
  readonly stated?: number
}

/** Two control cements of a laboratory that paired batches join. */
export interface Bridge {
  readonly laboratory: string
  readonly from: string
  readonly to: string
}

export interface ComparableGroup {
  readonly points: readonly ComparablePoint[]
  readonly begins: 'first' | 'laboratory' | 'control-cement' | 'restart'
}

/**
 * Points by restart, laboratory and control cement; cements that bridges join are one.
 * @param points in order of sampling
 * @param restarts days at which a series begins anew, since 1970-01-01, in order
 * @param bridges of any laboratories
 * @returns in order of their first points; a group may come back after another
 */
export function comparableGroups(
  points: readonly ComparablePoint[],
  restarts: readonly number[],
  bridges: readonly Bridge[],
): ComparableGroup[] {
  const joined = joinedCements(bridges)
  const groups = new Map<string, ComparablePoint[]>()
  for (const point of points) {
    const { laboratory, cement, sampled } = point
    const restart = restarts.findLastIndex((day) => day <= sampled.day)
    const chain = cement === undefined ? '' : (joined.get(`${laboratory}|${cement}`) ?? cement)
    kept(groups, `${restart}|${laboratory}|${chain}`, (): ComparablePoint[] => []).push(point)
  }
  const keys = [...groups.keys()]
  return [...groups.values()].map((own, at) => ({ points: own, begins: beginsBy(keys[at - 1], keys[at]) }))
}

function beginsBy(before: string | undefined, own = ''): ComparableGroup['begins'] {
  if (before === undefined) return 'first'
  const [[restartBefore, laboratoryBefore], [restart, laboratory]] = [before.split('|'), own.split('|')]
  if (restartBefore !== restart) return 'restart'
  return laboratoryBefore === laboratory ? 'control-cement' : 'laboratory'
}

/** The name that all cements of a chain bear: that of the first of them. */
function joinedCements(bridges: readonly Bridge[]): Map<string, string> {
  const names = new Map<string, string>()
  for (const { laboratory, from, to } of bridges) {
    const [one, other] = [from, to].map((cement) => names.get(`${laboratory}|${cement}`) ?? cement)
    if (one === undefined || other === undefined) continue
    for (const [key, name] of names)
      if (name === other && key.startsWith(`${laboratory}|`)) names.set(key, one)
    names.set(`${laboratory}|${from}`, one)
    names.set(`${laboratory}|${to}`, one)
  }
  return names
}

/** Points of one control batch as one: their mean place and value. */
export interface Cluster {
  readonly place: number
  readonly value: number
  readonly sampled: Moment
  readonly controlValue?: number
}

/**
 * One entry for each control batch, in order of its first point.
 * @param points of a group
 * @returns means of places and values; as many as points where none share a batch
 */
export function clustersOf(points: readonly ComparablePoint[]): Cluster[] {
  return [...Map.groupBy(points, ({ cluster }) => cluster).values()].flatMap((own) => {
    const [first] = own
    if (first === undefined) return []
    const meanOf = (of: (point: ComparablePoint) => number) =>
      own.reduce((sum, point) => sum + of(point), 0) / own.length
    return [
      {
        place: meanOf(({ place }) => place),
        value: meanOf(({ value }) => value),
        sampled: first.sampled,
        ...(first.controlValue === undefined ? {} : { controlValue: first.controlValue }),
      },
    ]
  })
}
