/** Audit check: a control batch far off the batches before it, so that every index taken against it moves. */
import { type BatchScatter, type ControlStanding, controlStandings } from '../history/control-standing.ts'
import type { Moment } from '../measure/moment.ts'
import type { Result } from '../result/result.ts'
import { cumulative, quantile } from '../statistics/distributions.ts'

/** Per cent of the mean of the batches before: own choice. */
export const FAR = 10
/** At most so often: both tails beyond three standard deviations of a normal distribution, rounded up. */
export const CONTROL_RATE = 0.003

export interface AuditedControl {
  readonly id: string
  readonly results: readonly Result[]
  readonly record: {
    readonly laboratory: string
    readonly condition: string
    readonly cast: Moment
    /** Its lot is absent where it is not on record. */
    readonly cement?: { readonly lot?: string }
  }
}

/** A batch among those before it, where enough of them show what is usual. */
export interface BatchStanding extends ControlStanding {
  readonly scatter: BatchScatter
  readonly isFar: boolean
  /** How often a batch is far where nothing but that scatter is at work. */
  readonly rate: number
}

/**
 * Each control batch among those before it.
 * @returns by the batch's id; a batch that too few went before has no entry
 * Note: what is far lies beyond the prediction interval of one further batch and by more than 10 per cent.
 */
export function batchStandings(controls: Iterable<AuditedControl>): Map<string, BatchStanding[]> {
  const batches = [...controls].flatMap(({ id, results, record: { laboratory, cement } }) =>
    cement?.lot === undefined ? [] : [{ id, results, laboratory, cement: cement.lot }],
  )
  const held = [...controlStandings(batches)].map(
    ([id, own]) => [id, own.flatMap((standing) => heldAgainst(standing))] as const,
  )
  return new Map(held.filter(([, own]) => 0 < own.length))
}

function heldAgainst(standing: ControlStanding): BatchStanding[] {
  const { scatter, batches, percent } = standing
  if (scatter === null) return []
  const error = (scatter.percent / 100) * Math.sqrt(1 + 1 / batches)
  const reach = quantile(1 - CONTROL_RATE / 2, scatter.degreesOfFreedom)
  const [below, above] = [-Math.log(1 - FAR / 100) / error, Math.log(1 + FAR / 100) / error]
  const isFar = reach < Math.abs(scatter.deviations) && FAR < Math.abs(percent)
  // Where 10 per cent is the farther of the two, a normal distribution says how seldom a batch comes there.
  const tail = (edge: number) => (edge < reach ? CONTROL_RATE / 2 : cumulative(-edge))
  return [{ ...standing, scatter, isFar, rate: tail(below) + tail(above) }]
}
