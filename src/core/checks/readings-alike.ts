/**
 * Audit check: readings that stand alike, value by value, in two lots, as they do where a record was copied. Readings
 * of many digits never agree so by chance.
 */
import { kept } from '../measure/kept.ts'
import { type Finding, warningOn } from './finding.ts'

/** Fewer values may agree by chance: own choice. */
const FEWEST = 5

/** Values of one analysis, or its oxides where it has enough of them, or of one mortar, as written, by what was read. */
export interface ReadingsOfLot {
  readonly of: 'oxides' | 'analysis' | 'mortar'
  readonly sample: string
  readonly laboratory: string
  /** Texts in an order of their own: "SiO2 63.1 %", "strength 7 d 78.4 kN". */
  readonly values: readonly string[]
}

/** Lots by the text of all values, of texts that stand in several lots. */
export type ReadingsIndex = ReadonlyMap<string, readonly string[]>

/**
 * Every analysis and mortar of the edition, each looked at once; those of lots that may have one alike, twice.
 * @param lots ids in the order in which the earlier lot is the one that was copied
 * @param readingsOf readings of one of them, the same at each call
 * Note: a text that stands alone is told by a short number first, since the texts of a hundred thousand lots fill a memory.
 */
export function readingsIndex(
  lots: readonly string[],
  readingsOf: (lot: string) => readonly ReadingsOfLot[],
): ReadingsIndex {
  const index = new Map<string, string[]>()
  for (const lot of lotsOfSharedNumbers(lots, readingsOf))
    for (const key of textsOf(readingsOf(lot))) kept(index, key, (): string[] => []).push(lot)
  return new Map([...index].filter(([, alike]) => 1 < alike.length))
}

/** Lots with a text whose number another lot has too, in order; two texts of one number need not be the same. */
function lotsOfSharedNumbers(
  lots: readonly string[],
  readingsOf: (lot: string) => readonly ReadingsOfLot[],
): string[] {
  const first = new Map<number, number>()
  const shared = new Set<number>()
  for (const [place, lot] of lots.entries())
    for (const number of new Set([...textsOf(readingsOf(lot))].map(numberOf))) {
      const before = first.get(number)
      if (before === undefined) first.set(number, place)
      else shared.add(before).add(place)
    }
  return lots.filter((_, place) => shared.has(place))
}

/** A number of 31 bits that is the same for the same text. */
function numberOf(text: string): number {
  let number = 0
  for (let place = 0; place < text.length; place += 1)
    number = (Math.imul(number, 31) + text.charCodeAt(place)) & 0x7fffffff
  return number
}

function textsOf(readings: readonly ReadingsOfLot[]): ReadonlySet<string> {
  return new Set(readings.filter(isLong).map(textOf))
}

function isLong({ values }: ReadingsOfLot): boolean {
  return FEWEST <= values.length
}

function textOf({ of, values }: ReadingsOfLot): string {
  return `${of}|${values.join('|')}`
}

/**
 * A warning for each analysis or mortar of a lot that stands alike in one before it, so that one question is asked once.
 * @param lot id as SOURCE/LOT
 * @param index of all lots, in their order
 */
export function readingsAlike(
  lot: { readonly id: string; readonly readings: readonly ReadingsOfLot[] },
  index: ReadingsIndex,
): Finding[] {
  return lot.readings.filter(isLong).flatMap((readings, place) => {
    const all = index.get(textOf(readings)) ?? []
    const others = all.slice(0, Math.max(0, all.indexOf(lot.id)))
    if (others.length === 0) return []
    const { of, sample, laboratory, values } = readings
    const params = { lot: lot.id, of, sample, laboratory, values: values.length, others }
    return [warningOn(lot.id, { code: 'readings-alike', params }, of, laboratory, sample, String(place + 1))]
  })
}
