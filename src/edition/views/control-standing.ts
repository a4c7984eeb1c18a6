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

/** The result of a control batch behind an index. */
export interface OwnControl {
  readonly batch: string
  readonly cement: string
  readonly result: Result
}

/** What is told of a batch before it. */
export interface ControlPoint extends Pick<Result, 'tested' | 'value' | 'valid'> {
  readonly batch: string
  readonly cement: string
}

export interface StandingControl {
  readonly index: Result
  /** Batches tested on earlier days, oldest first. */
  readonly earlier: readonly ControlPoint[]
  readonly own: OwnControl
  /** null where no earlier valid batch has the same cement. */
  readonly standing: OwnStanding | null
}

interface OwnStanding extends Omit<ControlStanding, 'result'> {
  readonly result: Pick<Result, 'value'>
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

const byTestDay = bisector(({ tested }: ControlPoint) => tested.day)

function standingOf({ controls }: Pick<Edition, 'controls'>, index: Result): StandingControl[] {
  const of = controls.get(index.control ?? '')
  const result = of?.results.findLast(
    (candidate) =>
      candidate.property === RATIO_OF[index.property] &&
      isSameAge(candidate.age, index.age) &&
      candidate.valid,
  )
  if (of === undefined || result === undefined) return []
  const own = { batch: of.id, cement: cementOf(of), result }
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
    return {
      earlier: series.slice(Math.max(0, end - POINTS + 1), end),
      // Nobody asks here how a batch came to its result: its working would go into the digest of the answer.
      standing: standing === undefined ? null : { ...standing, result: { value: result.value } },
    }
  },
)

function cementOf({ record }: ControlEntry): string {
  return record.cement?.lot ?? CEMENT_NOT_RECORDED
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
    const series = new Map<string, ControlPoint[]>()
    for (const control of controls.values())
      for (const result of control.results)
        kept(series, seriesKey(result), (): ControlPoint[] => []).push(pointOf(control, result))
    for (const points of series.values()) points.sort(byDayTested)
    return series
  })
}

function pointOf(control: ControlEntry, { tested, value, valid }: Result): ControlPoint {
  return { batch: control.id, cement: cementOf(control), tested, value, valid }
}

/** Day by day, so that those before a day can be found by halving; then by moment and batch. */
function byDayTested(a: ControlPoint, b: ControlPoint): number {
  return a.tested.day - b.tested.day || compareMoments(a.tested, b.tested) || (a.batch < b.batch ? -1 : 1)
}

function seriesKey({
  laboratory,
  property: key,
  condition = '',
  age,
}: Pick<Result, 'laboratory' | 'property' | 'condition' | 'age'>): string {
  return [laboratory, key, condition, age?.hours ?? ''].join('|')
}
