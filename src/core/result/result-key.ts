/** The key that tells results of one lot and role apart. */
import type { Age } from '../measure/age.ts'

/**
 * The key that tells results of one lot and role apart, but for retests.
 * @param parts as the record names them
 * @returns property, condition, age, method, laboratory and sample joined by "|", an empty part for what is
 * missing
 */
export function resultKey(parts: {
  property: string
  condition?: string
  age?: Age
  method?: string
  laboratory: string
  sample: string
}): string {
  return [
    parts.property,
    parts.condition ?? '',
    parts.age?.text ?? '',
    parts.method ?? '',
    parts.laboratory,
    parts.sample,
  ].join('|')
}
