/** The key that tells results of one lot and role apart. */
import type { Age } from '../measure/age.ts'

/** property, condition, age, method, laboratory, sample joined by "|". */
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
