/** Audit check: a control batch far off the batches before it, so that every index taken against it moves. */
import { kept } from '../measure/kept.ts'
import { compareMoments, type Moment } from '../measure/moment.ts'
import type { Result } from '../result/result.ts'
import { cumulative, quantile } from '../statistics/distributions.ts'

/** Per cent of the mean of the batches before: own choice. */
export const FAR = 10
/** At most so often: both tails beyond three standard deviations of a normal distribution, rounded up. */
export const CONTROL_RATE = 0.003
/** Fewer batches of one cement, or fewer degrees of freedom of the scatter, do not show what is usual: own choices. */
const FEWEST = 4
const FEWEST_DEGREES = 8

export interface AuditedControl {
  readonly id: string
  readonly results: readonly Result[]
  readonly record: {
    readonly laboratory: string
    readonly condition: string
    readonly cast: Moment
    readonly cement: { readonly lot: string }
  }
}

/** How a batch stands by one property at one age. */
export interface BatchStanding {
  readonly result: Result
  readonly cement: string
  /** From the mean of the earlier batches of its cement, per cent of it. */
  readonly percent: number
  readonly batches: number
  readonly scatterPercent: number
  readonly isFar: boolean
  /** How often a batch is far where nothing but that scatter is at work. */
  readonly rate: number
}

/** Sums of natural logarithms of the batches so far. */
interface Sums {
  n: number
  sum: number
}

/** Scatter of the batches of one laboratory, condition, property and age about the means of their cements. */
interface Scatter {
  readonly cements: Map<string, Sums>
  squares: number
  degrees: number
}

/**
 * Each control batch among those cast before it.
 * @returns by the batch's id; a batch that too few went before has no entry
 * Note: relative, by logarithms, against the prediction interval of one further batch; what is far is beyond it and by
 * more than 10 per cent.
 */
export function batchStandings(controls: Iterable<AuditedControl>): Map<string, BatchStanding[]> {
  const scatters = new Map<string, Scatter>()
  const standings = new Map<string, BatchStanding[]>()
  const inOrder = [...controls].sort(
    (a, b) => compareMoments(a.record.cast, b.record.cast) || (a.id < b.id ? -1 : 1),
  )
  for (const { id, results, record } of inOrder)
    for (const result of results) {
      if (!result.valid || result.value <= 0 || result.age === undefined) continue
      const key = [record.laboratory, record.condition, result.property, result.age.hours].join('|')
      const scatter = kept(scatters, key, (): Scatter => ({ cements: new Map(), squares: 0, degrees: 0 }))
      const standing = standingOf(result, record.cement.lot, scatter)
      if (standing !== null) kept(standings, id, (): BatchStanding[] => []).push(standing)
    }
  return standings
}

/** The standing of a batch, null among too few; the batch is then one of those before the next. */
function standingOf(result: Result, cement: string, scatter: Scatter): BatchStanding | null {
  const own = kept(scatter.cements, cement, (): Sums => ({ n: 0, sum: 0 }))
  const logarithm = Math.log(result.value)
  const { n } = own
  const isUsual = FEWEST <= n && FEWEST_DEGREES <= scatter.degrees && 0 < scatter.squares
  const standing = isUsual ? against(result, logarithm, cement, { own, scatter }) : null
  if (0 < n) {
    // The sum of squares about the mean grows by so much with one further value.
    scatter.squares += (n / (n + 1)) * (logarithm - own.sum / n) ** 2
    scatter.degrees += 1
  }
  own.n += 1
  own.sum += logarithm
  return standing
}

function against(
  result: Result,
  logarithm: number,
  cement: string,
  { own, scatter }: { readonly own: Sums; readonly scatter: Scatter },
): BatchStanding {
  const off = logarithm - own.sum / own.n
  const deviation = Math.sqrt(scatter.squares / scatter.degrees)
  const error = deviation * Math.sqrt(1 + 1 / own.n)
  const reach = quantile(1 - CONTROL_RATE / 2, scatter.degrees) * error
  const [below, above] = [-Math.log(1 - FAR / 100), Math.log(1 + FAR / 100)]
  const isFar = off < -Math.max(reach, below) || Math.max(reach, above) < off
  // Where 10 per cent is the farther of the two, a normal distribution says how seldom a batch comes there.
  const tail = (edge: number) => (edge < reach ? CONTROL_RATE / 2 : cumulative(-edge / error))
  const rate = tail(below) + tail(above)
  const head = { result, cement, percent: 100 * (Math.exp(off) - 1), batches: own.n }
  return { ...head, scatterPercent: 100 * deviation, isFar, rate }
}
