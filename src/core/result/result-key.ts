/** The key that tells results of one lot and role apart. */

/** property, condition, age, method, laboratory, sample joined by "|". */
export function resultKey(parts: {
  property: string
  condition?: string
  age?: string
  method?: string
  laboratory: string
  sample: string
}): string {
  return [
    parts.property,
    parts.condition ?? '',
    parts.age ?? '',
    parts.method ?? '',
    parts.laboratory,
    parts.sample,
  ].join('|')
}
