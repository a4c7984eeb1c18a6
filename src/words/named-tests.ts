/** A test within the sentence of a finding, and lots that it lists. */
import type { PropertyKey } from '../core/measure/properties.ts'
import type { FindingNames } from './finding-names.ts'
import { propertyWords } from './property-names.ts'
import { listWords } from './sentences.ts'
import { UNISSUED_LOT } from './withheld.ts'

/** A property with its condition and age, by the ids of the records. */
export interface TestParams {
  readonly property: PropertyKey
  readonly condition: string | null
  readonly age: string | null
}

/** "28 d strength activity index (20 %, 23 °C, constant flow)". */
export function testWords({ property, condition, age }: TestParams, names: FindingNames): string {
  const name = [age, propertyWords({ property })].filter((part) => part !== null).join(' ')
  return condition === null ? name : `${name} (${names.condition(condition)})`
}

/** Lots of one source by their numbers, null for one that is not to be named: "SA-2024-002 and SA-2024-004". */
export function lotNumbers(lots: readonly (string | null)[], names: FindingNames): string {
  return listWords(
    lots.map((lot) => (lot === null ? UNISSUED_LOT : names.number(lot))),
    'and',
  )
}

/** The same where more are meant than are listed: "SA-2024-002, SA-2024-004 and 3 others". */
export function firstLots(lots: readonly (string | null)[], of: number, names: FindingNames): string {
  if (of <= lots.length) return lotNumbers(lots, names)
  const more = of - lots.length
  const named = lots.map((lot) => (lot === null ? UNISSUED_LOT : names.number(lot)))
  return `${named.join(', ')} and ${more === 1 ? 'one other' : `${more} others`}`
}
