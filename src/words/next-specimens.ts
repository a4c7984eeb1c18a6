/** What the specimens of a batch that are still to be tested must carry, in sentences for the bench. */
import type { StatedLimit } from '../core/criteria/limits-for-class.ts'
import type { Age } from '../core/measure/age.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import { KINDS } from '../core/measure/units.ts'
import type { NeededOfRest } from '../core/mortar/needed-of-rest.ts'
import { limitWords } from './limits.ts'
import { plainNumber } from './numbers.ts'
import { unitSign } from './unit-signs.ts'
import { quantity } from './units.ts'

/** Needed in MPa, or in ohm m. */
export interface NextSpecimens {
  readonly of: 'strength' | 'resistivity'
  readonly age: Age
  readonly read: number
  readonly planned: number
  /** The condition does not say how many: the control has as many. */
  readonly asControl?: true
  readonly needed: NeededOfRest
  /**
   * How a value reads on the machine or the meter: times `factor` plus `plus`, in the stored unit of its kind. Absent
   * where values themselves are on record, and where no size of a specimen is.
   */
  readonly asRead?: {
    readonly kind: 'force' | 'resistance'
    readonly unit: string
    readonly decimals: number
    readonly factor: number
    readonly plus: number
  }
  /** Absent where the set asks nothing of it from below, or the control has no mean at this age. */
  readonly limit?: StatedLimit & {
    /** Value that meets it before rounding: an index in per cent, or a mean. */
    readonly from: number
    readonly onIndex: boolean
    /** Mean of the control that an index is against. */
    readonly control?: number
  }
}

/** Unit and decimals of a mean. */
const OF_MEAN = {
  strength: { unit: 'MPa', decimals: 2 },
  resistivity: { unit: 'ohm m', decimals: 2 },
} as const

/** Two sentences at most, the first about the limit, the second about the range of the batch; with their full stops. */
export function nextSpecimensWords(next: NextSpecimens): string[] {
  return [...limitSentence(next), ...rangeSentence(next)]
}

function head({ of, age, read, planned, asControl }: NextSpecimens): string {
  const counted = asControl === true ? ', counting as many as of the control' : ''
  return `${age.text} ${of}, ${read} of ${planned} specimens read${counted}`
}

function whichLeft({ left }: NeededOfRest): string {
  return left === 1 ? 'the specimen left' : `each of the ${left} specimens left`
}

function itReads({ left }: NeededOfRest): string {
  return left === 1 ? 'it reads' : 'each of them reads'
}

function limitSentence(next: NextSpecimens): string[] {
  const { needed, limit } = next
  if (limit === undefined || needed.each === undefined) return []
  const { unit, decimals } = OF_MEAN[next.of]
  const index = `${limit.onIndex ? 'an index' : 'a mean'} of ${limitWords(limit)}`
  const before = `${limit.onIndex ? quantity(limit.from, 1, '%') : quantity(limit.from, decimals, unit)} before rounding`
  const against = limit.control === undefined ? '' : `, control ${quantity(limit.control, decimals, unit)}`
  const rule = `${before}${against}`
  if (needed.each <= 0)
    return [`${head(next)}: ${index} is reached whatever ${whichLeft(needed)} gives (${rule}).`]
  return [
    `${head(next)}: ${whichLeft(needed)} must reach ${value(next, needed.each, Math.ceil)} for ${index} (${rule}).`,
  ]
}

function rangeSentence(next: NextSpecimens): string[] {
  const { inRange, rule, each } = next.needed
  if (inRange === undefined || rule?.rangePercent === undefined) return []
  const range = `the permissible range of ${quantity(rule.rangePercent, 1, '%')} of the mean`
  if (inRange === null)
    return [
      `${head(next)}: they lie so far apart already that no value keeps all ${next.planned} within ${range}.`,
    ]
  const within = `All ${next.planned} stay within ${range} if ${itReads(next.needed)} ${value(next, inRange.from, Math.ceil)} to ${value(next, inRange.to, Math.floor)}`
  return [
    each !== undefined && inRange.to < each ? `${within}, which does not reach the limit.` : `${within}.`,
  ]
}

/** A value as it is read, rounded to the side on which it still holds. */
function value({ of, asRead }: NextSpecimens, needed: number, round: (value: number) => number): string {
  const { unit } = OF_MEAN[of]
  if (asRead === undefined) return quantity(roundedBy(round, needed, 1), 1, unit)
  const { kind, decimals, factor, plus } = asRead
  const own = KINDS[kind].units.find(({ symbol }) => symbol === asRead.unit)
  const read = (needed * factor + plus) / (own?.factor ?? 1)
  return `${plainNumber(roundedBy(round, read, decimals), decimals)}\u00a0${unitSign(asRead.unit)}`
}

function roundedBy(round: (value: number) => number, value: number, decimals: number): number {
  return round(withoutDust(value * 10 ** decimals)) / 10 ** decimals
}
