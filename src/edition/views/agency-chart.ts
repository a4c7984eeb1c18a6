/** Differences between agency and producer over time, drawn. */
import { type DifferenceModel, differenceModel } from '../../charts/difference.ts'
import { areOpposite, isBeyond, type Pair } from '../../core/agency/pairs.ts'
import type { TestKey } from '../../core/agency/precision.ts'
import { momentOfDay } from '../../core/measure/moment.ts'
import { differenceUnit } from '../../words/agency.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { unitSign } from '../../words/unit-signs.ts'

export interface DifferenceChart {
  readonly title: string
  readonly description: string
  readonly unit: string
  readonly model: DifferenceModel
  /** In the order of the model's. */
  readonly yTicks: readonly string[]
  readonly ends: readonly string[]
  readonly hasBand: boolean
  readonly hasRing: boolean
  readonly hasBeyond: boolean
  readonly hasChange: boolean
}

/** Mean difference of the pairs, where one is stated. */
export type MeanDifference = Pick<Parameters<typeof differenceModel>[0], 'mean' | 'interval'>

/**
 * The chart of one comparison.
 * @param pairs of one test, in order of the agency's tests
 * @returns null where no pair has a difference
 */
export function differenceChart(
  { property: key, pairs }: TestKey & { readonly pairs: readonly Pair[] },
  title: string,
  sentences: readonly string[],
  mean: MeanDifference,
): DifferenceChart | null {
  const drawn = pairs.filter(({ difference }) => difference !== null)
  const points = drawn.map((pair) => ({
    day: pair.tested.day,
    difference: pair.difference ?? 0,
    allowed: pair.allowed?.limit,
    beyond: isBeyond(pair) === true,
    opposite: areOpposite(pair),
  }))
  if (points.length === 0) return null
  const model = differenceModel({ points, ...mean, changes: laboratoryChanges(drawn) })
  return {
    title,
    description: `Difference, agency less producer, against the date of the agency’s test. ${sentences.join('. ')}.`,
    unit: unitSign(differenceUnit(key)),
    model,
    yTicks: model.yTicks.map(({ value }) =>
      tickText(
        value,
        model.yTicks.map((tick) => tick.value),
      ),
    ),
    ends: model.ends.map(({ day }) => shortDate(momentOfDay(day))),
    hasBand: model.band !== null,
    hasRing: points.some(({ opposite }) => opposite),
    hasBeyond: points.some(({ beyond }) => beyond),
    hasChange: 0 < model.changes.length,
  }
}

/** As many decimals as the distance of the ticks needs. */
function tickText(value: number, [first = 0, second = first + 1]: readonly number[]): string {
  return number(value, Math.max(0, Math.ceil(-Math.log10(Math.abs(second - first)) - 1e-9)))
}

/** Days of the pairs before which either side was tested elsewhere. */
function laboratoryChanges(pairs: readonly Pair[]): number[] {
  return pairs.flatMap((pair, place) => {
    const before = pairs[place - 1]
    const same = before === undefined || laboratoriesOf(before) === laboratoriesOf(pair)
    return same ? [] : [pair.tested.day]
  })
}

function laboratoriesOf({ producer, agency }: Pair): string {
  return `${producer.laboratory}|${agency.laboratory}`
}
