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

/** Lots by the text of all values. */
export type ReadingsIndex = ReadonlyMap<string, readonly string[]>

/** Every analysis and mortar of the edition, each looked at once. */
export function readingsIndex(
  lots: Iterable<{ readonly id: string; readonly readings: readonly ReadingsOfLot[] }>,
): ReadingsIndex {
  const index = new Map<string, string[]>()
  for (const { id, readings } of lots)
    for (const key of new Set(readings.filter(isLong).map(textOf)))
      kept(index, key, (): string[] => []).push(id)
  return index
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
