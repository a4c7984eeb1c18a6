/**
 * The controls of a lot's indices among the batches before them, for the lot's page: only earlier batches
 * count.
 */
import { CEMENT_NOT_RECORDED } from '../../words/laboratory-records.ts'
import { isSameAge } from '../../core/measure/age.ts'
import { type ControlStanding, controlStandings, indexAtMean } from '../../core/history/control-standing.ts'
import { bisector } from 'd3'
import { kept } from '../../core/measure/kept.ts'
import { compareMoments } from '../../core/measure/moment.ts'
import { property } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { Result } from '../../core/result/result.ts'
import type { ControlEntry, Edition, LotEntry } from '../shape/edition.ts'
import { asked } from '../shape/trace.ts'
import { latestAges } from '../../core/history/latest-ages.ts'
import { quantity } from '../../words/units.ts'
import { plainNumber } from '../../words/numbers.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'

/** One control batch's result, with what is asked of its record. */
export interface ControlPoint {
  readonly batch: string
  readonly cement: string
  readonly result: Result
}

export interface StandingControl {
  readonly index: Result
  /** Tested on earlier days, oldest first. */
  readonly earlier: readonly ControlPoint[]
  readonly own: ControlPoint
  /** null where no earlier valid batch has the same cement. */
  readonly standing: ControlStanding | null
}

/** How far back the chart looks, the index's own batch included. */
const POINTS = 24

/**
 * One for each valid index of the producer at the latest age of its condition, in the order of the results.
 */
export function standingControls(
  edition: Pick<Edition, 'controls'>,
  lot: Pick<LotEntry, 'results'>,
): StandingControl[] {
  const drawn = latestAges(lot.results)
  return lot.results
    .filter(
      (result) =>
        result.role === 'producer' &&
        result.valid &&
        drawn.some(
          ({ property: key, condition, age }) =>
            result.property === key && result.condition === condition && isSameAge(result.age, age),
        ),
    )
    .flatMap((index) => standingOf(edition, index))
}

/** For the reader, without a full stop: where the control stands, and what follows for the index. */
export function standingWords({ index, own, standing }: StandingControl, units: UnitSystem): string {
  const { value, decimals, unit } = own.result
  const name = `Control ${own.batch}, ${quantity(value, decimals, unit, units)}`
  if (standing === null) return `${name}, is the first batch made with cement ${own.cement} here`
  const { mean, batches, percent } = standing
  const apart =
    Math.abs(percent) < 0.05
      ? 'stands at'
      : `stands ${plainNumber(Math.abs(percent), 1)} % ${0 < percent ? 'above' : 'below'}`
  const before =
    batches === 1
      ? `the batch made with cement ${own.cement} before it, ${quantity(mean, decimals, unit, units)}`
      : `the mean of the ${batches} batches made with cement ${own.cement} before it, ${quantity(mean, decimals, unit, units)}`
  const digits = property(index.property).decimals
  return `${name}, ${apart} ${before}; measured against that, the index would be ${quantity(indexAtMean(index.value, standing), digits, '%')} instead of ${quantity(index.value, digits, '%')}`
}

const byTestDay = bisector((point: ControlPoint) => point.result.tested.day)

function standingOf({ controls }: Pick<Edition, 'controls'>, index: Result): StandingControl[] {
  const of = controls.get(index.control ?? '')
  const result = of?.results.findLast(
    (candidate) =>
      candidate.property === RATIO_OF[index.property] &&
      isSameAge(candidate.age, index.age) &&
      candidate.valid,
  )
  if (of === undefined || result === undefined) return []
  const own = pointOf(of, result)
  return [{ index, own, ...amongBatches({ controls }, `${of.id} ${of.results.indexOf(result)}`) }]
}

/** A batch and the place of its result, among the batches before it. */
const amongBatches = asked(
  'among-batches',
  ({ controls }: Pick<Edition, 'controls'>, of): Pick<StandingControl, 'earlier' | 'standing'> => {
    const [batch = '', place] = of.split(' ')
    const result = controls.get(batch)?.results[Number(place)]
    if (result === undefined) return { earlier: [], standing: null }
    const series = seriesOf(controls).get(seriesKey(result)) ?? []
    const end = byTestDay.left(series, result.tested.day)
    const standing = standingsOf(controls)
      .get(batch)
      ?.find((one) => one.result === result)
    return { earlier: series.slice(Math.max(0, end - POINTS + 1), end), standing: standing ?? null }
  },
)

function pointOf({ id, record }: ControlEntry, result: Result): ControlPoint {
  return { batch: id, cement: record.cement?.lot ?? CEMENT_NOT_RECORDED, result }
}

/** Of all control batches, made once for an edition's controls. */
const standingsKept = new WeakMap<Edition['controls'], ReturnType<typeof controlStandings>>()

function standingsOf(controls: Edition['controls']): ReturnType<typeof controlStandings> {
  return kept(standingsKept, controls, () =>
    controlStandings(
      [...controls.values()].flatMap(({ id, results, record: { laboratory, cement } }) =>
        cement?.lot === undefined ? [] : [{ id, results, laboratory, cement: cement.lot }],
      ),
    ),
  )
}

/**
 * Results of all control batches by laboratory, property, condition and age, in order of the day tested; made
 * once for an edition's controls.
 */
const seriesKept = new WeakMap<Edition['controls'], ReadonlyMap<string, readonly ControlPoint[]>>()

function seriesOf(controls: Edition['controls']): ReadonlyMap<string, readonly ControlPoint[]> {
  return kept(seriesKept, controls, () => {
    const points = [...controls.values()].flatMap((control) =>
      control.results.map((result) => pointOf(control, result)),
    )
    return Map.groupBy(points.sort(byDayTested), ({ result }) => seriesKey(result))
  })
}

/** Day by day, so that those before a day can be found by halving; then by moment and batch. */
function byDayTested({ result: a, batch }: ControlPoint, { result: b, batch: other }: ControlPoint): number {
  return a.tested.day - b.tested.day || compareMoments(a.tested, b.tested) || (batch < other ? -1 : 1)
}

function seriesKey({
  laboratory,
  property: key,
  condition = '',
  age,
}: Pick<Result, 'laboratory' | 'property' | 'condition' | 'age'>): string {
  return [laboratory, key, condition, age?.hours ?? ''].join('|')
}
