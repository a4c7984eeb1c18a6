/** The points of a source's series: each sample of each lot, by property, condition, age, method, class and duty. */
import { statedUncertainty } from '../../core/doubt/stated-repeatability.ts'
import type { ComparablePoint } from '../../core/history/comparable-points.ts'
import { historyKey } from '../../core/history/history.ts'
import { representative } from '../../core/history/representative.ts'
import type { HistoryPoint, PointOrigin, SourceSeries } from '../../core/history/source-history.ts'
import { isSameAge } from '../../core/measure/age.ts'
import { defined } from '../../core/measure/defined.ts'
import { dutyOf } from '../../core/measure/duty.ts'
import { kept } from '../../core/measure/kept.ts'
import { compareMoments, type Moment } from '../../core/measure/moment.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { boundsOf, extentOf, isBounded } from '../../core/result/bounds.ts'
import { duplicatesOf } from '../../core/result/duplicates.ts'
import { observationsOf } from '../../core/result/observation.ts'
import { knownSince, type PlannedTest, type Result, type UnmadeResult } from '../../core/result/result.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'
import type { ControlEntry } from '../shape/edition.ts'
import type { ComputedLot } from './computed-lot.ts'

/** What one series is of. */
export type SeriesHead = Pick<
  SourceSeries,
  'key' | 'property' | 'condition' | 'age' | 'method' | 'duty' | 'class'
>

export interface GatheredSeries {
  readonly head: SeriesHead
  /** In order of sampling. */
  readonly points: readonly HistoryPoint[]
  readonly comparable: readonly ComparablePoint[]
}

export interface PointsFrom {
  readonly laboratories: ReadonlyMap<string, Pick<Laboratory, 'repeatability'>>
  readonly controls: ReadonlyMap<string, Pick<ControlEntry, 'record' | 'results'>>
  /** Properties that are followed. */
  readonly wanted: ReadonlySet<PropertyKey>
}

interface Row {
  readonly at: Moment
  readonly point: Omit<HistoryPoint, 'place'>
  readonly comparable?: Omit<ComparablePoint, 'place'>
}

type Gathered = Map<string, { head: SeriesHead; rows: Row[] }>

/**
 * Every series of the lots.
 * @param lots of one source in order of sampling
 * @returns in the order in which their first points come
 */
export function gatheredSeries(lots: readonly ComputedLot[], from: PointsFrom): GatheredSeries[] {
  const gathered: Gathered = new Map()
  for (const lot of lots) addLot(gathered, lot, from)
  return [...gathered.values()].map(({ head, rows }) => {
    // Regular samples of neighbouring lots may overlap; a stable sort keeps the order of lots otherwise.
    const sorted = rows.toSorted((a, b) => compareMoments(a.at, b.at))
    return {
      head,
      points: sorted.map(({ point }, place) => ({ place, ...point })),
      comparable: sorted.flatMap(({ comparable }, place) =>
        comparable === undefined ? [] : [{ place, ...comparable }],
      ),
    }
  })
}

type Tested = Pick<Result, 'property' | 'condition' | 'age' | 'method' | 'sampleKind' | 'duty'>

function headOf(lot: ComputedLot, tested: Tested): SeriesHead {
  const { property, condition, age, method } = tested
  const duty = dutyOf(tested)
  const key = `${historyKey(lot.class, property, condition, age, method)}|${duty}`
  return { key, property, duty, class: lot.class, ...defined({ condition, age, method }) }
}

function addRow(gathered: Gathered, head: SeriesHead, row: Row): void {
  kept(gathered, head.key, () => ({ head, rows: [] as Row[] })).rows.push(row)
}

function addLot(gathered: Gathered, lot: ComputedLot, from: PointsFrom): void {
  const followed = lot.results.filter(
    (result) => result.role === 'producer' && from.wanted.has(result.property),
  )
  const since = knownDays(lot)
  const made = [...Map.groupBy(followed, (result) => headOf(lot, result).key).values()]
  for (const alike of made)
    for (const own of Map.groupBy(alike, ({ sample }) => sample).values()) {
      const result = representative(own)
      if (result !== undefined)
        addRow(gathered, headOf(lot, result), resultRow(lot, result, alike, since.get(result), from))
    }
  for (const test of [...(lot.unmade ?? []), ...(lot.planned ?? [])])
    if (from.wanted.has(test.property) && !isTested(followed, test))
      addRow(gathered, openHead(gathered, lot, test), openRow(lot, test))
}

/** Since when what stands today has stood so; only where something ever changed does it differ from the result's own day. */
function knownDays(lot: ComputedLot): ReadonlyMap<Result, number> {
  return lot.observations === undefined
    ? new Map()
    : new Map(observationsOf(lot).map(({ result, from }) => [result, from]))
}

function resultRow(
  lot: ComputedLot,
  result: Result,
  alike: readonly Result[],
  since: number | undefined,
  from: PointsFrom,
): Row {
  const { laboratory, sample, control, reasons, value } = result
  const at = takenAt(lot, result)
  const cement = control === undefined ? undefined : from.controls.get(control)?.record.cement?.lot
  const status = lot.withdrawn !== undefined ? 'withdrawn' : result.valid ? 'valid' : 'not-valid'
  const knownDay = since ?? knownSince(result).day
  const named: PointOrigin = {
    lot: lot.id,
    sample,
    sampled: at,
    laboratory,
    reasons,
    ...defined({ control, cement, knownDay }),
  }
  const bounded = isBounded(result)
  const point = { value, status, named, ...(bounded ? { bounds: boundsOf(extentOf(result)) } : {}) } as const
  if (status !== 'valid') return { at, point }
  const { repeatability = [] } = from.laboratories.get(laboratory) ?? {}
  const figures = defined({
    cement,
    controlValue: controlLevel(result, from),
    duplicates: duplicatesOf(result, alike)?.difference,
    stated: statedUncertainty(repeatability, result)?.u,
  })
  const cluster = control ?? `${lot.id}|${sample}`
  return { at, point, comparable: { value, bounded, sampled: at, laboratory, cluster, ...figures } }
}

/** What an index was divided by, where the control's own result counts. */
function controlLevel(result: Result, { controls }: PointsFrom): number | undefined {
  const measured = RATIO_OF[result.property]
  if (measured === undefined || result.control === undefined) return undefined
  return controls
    .get(result.control)
    ?.results.find((own) => own.property === measured && own.valid && isSameAge(own.age, result.age))?.value
}

/** When its sample was complete; a composite stands for the whole lot. */
function takenAt(
  { sampled, takenAt: taken = {} }: ComputedLot,
  test: Pick<Result, 'sample' | 'sampleKind' | 'duty'>,
): Moment {
  const own = dutyOf(test) === 'regular' && Object.hasOwn(taken, test.sample) ? taken[test.sample] : undefined
  return own ?? sampled
}

type OpenTest = PlannedTest | UnmadeResult

/** A test planned beside one whose result is there, by another laboratory or sample, leaves nothing open. */
function isTested(results: readonly Result[], test: OpenTest): boolean {
  return results.some(
    (result) =>
      result.property === test.property &&
      result.condition === test.condition &&
      isSameAge(result.age, test.age) &&
      dutyOf(result) === dutyOf(test),
  )
}

/** An open test names no method: it belongs to the newest series that it fits. */
function openHead(gathered: Gathered, lot: ComputedLot, test: OpenTest): SeriesHead {
  const own = headOf(lot, test)
  const fitting = [...gathered.values()].findLast(
    ({ head }) =>
      head.property === own.property &&
      head.condition === own.condition &&
      isSameAge(head.age, own.age) &&
      head.duty === own.duty &&
      head.class === own.class,
  )
  return fitting?.head ?? own
}

function openRow(lot: ComputedLot, test: OpenTest): Row {
  const { sample, laboratory } = test
  const at = takenAt(lot, test)
  const named = { lot: lot.id, sample, sampled: at, laboratory }
  if ('reasons' in test) {
    const { reasons, tested } = test
    return {
      at,
      point: { value: null, status: 'not-valid', named: { ...named, reasons, knownDay: tested.day } },
    }
  }
  const { due, overdueSince } = test
  return {
    at,
    point: {
      value: null,
      status: 'pending',
      named: { ...named, reasons: [], ...defined({ due, overdueSince }) },
    },
  }
}
