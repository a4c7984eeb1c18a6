/** What the specimens of a batch that are still to be tested must carry, in sentences for the bench. */
import type { StatedLimit } from '../core/criteria/limits-for-class.ts'
import type { Age } from '../core/measure/age.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import { KINDS } from '../core/measure/units.ts'
import type { NeededOfRest } from '../core/strength/needed-of-rest.ts'
import { limitWords } from './limits.ts'
import { plainNumber } from './numbers.ts'
import { quantity } from './units.ts'

/** Needed in MPa; as loads where loads were read and the area of a specimen is known. */
export interface NextSpecimens {
  readonly age: Age
  readonly read: number
  readonly planned: number
  readonly needed: NeededOfRest
  /** Unit in which the loads were read, and how many decimals they have; absent for stated strengths. */
  readonly load?: { readonly unit: string; readonly decimals: number }
  /** Loaded area of the next specimen, mm²; null where the strength is stated or no size is on record. */
  readonly areaMm2: number | null
  /** Absent where the set asks nothing of this index, or the control has no strength at this age. */
  readonly limit?: StatedLimit & {
    /** Index that meets it before rounding, per cent. */
    readonly from: number
    readonly controlMPa: number
  }
}

/** Two sentences at most, the first about the limit, the second about the range of the batch; with their full stops. */
export function nextSpecimensWords(next: NextSpecimens): string[] {
  return [...limitSentence(next), ...rangeSentence(next)]
}

function head({ age, read, planned }: NextSpecimens): string {
  return `${age.text} strength, ${read} of ${planned} specimens read`
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
  const index = `an index of ${limitWords(limit)}`
  const rule = `${quantity(limit.from, 1, '%')} before rounding, control ${quantity(limit.controlMPa, 2, 'MPa')}`
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

/** A strength as the load that gives it, rounded to the side on which it still holds. */
function value(
  { load, areaMm2 }: NextSpecimens,
  strengthMPa: number,
  round: (value: number) => number,
): string {
  if (load === undefined || areaMm2 === null) return quantity(roundedBy(round, strengthMPa, 1), 1, 'MPa')
  const unit = KINDS.force.units.find(({ symbol }) => symbol === load.unit)
  const read = (strengthMPa * areaMm2) / 1000 / (unit?.factor ?? 1)
  return `${plainNumber(roundedBy(round, read, load.decimals), load.decimals)}\u00a0${load.unit}`
}

function roundedBy(round: (value: number) => number, value: number, decimals: number): number {
  return round(withoutDust(value * 10 ** decimals)) / 10 ** decimals
}
