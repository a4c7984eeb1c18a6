/** Which activity indices stand for a lot in short histories. */
import { type Age, compareAges } from '../measure/age.ts'
import { RATIO_OF } from '../measure/ratio-indices.ts'
import type { Result } from '../result/result.ts'

/** Each activity index and condition at its latest age among tests of a lot, sorted by name. */
export function latestAges(
  tests: readonly Pick<Result, 'property' | 'condition' | 'age'>[],
): { property: Result['property']; condition: string; age: Age }[] {
  const latest = new Map<string, { property: Result['property']; condition: string; age: Age }>()
  for (const item of tests) {
    if (!(item.property in RATIO_OF) || item.condition === undefined || item.age === undefined) continue
    const name = `${item.property}|${item.condition}`
    const known = latest.get(name)
    if (known === undefined || compareAges(known.age, item.age) < 0)
      latest.set(name, { property: item.property, condition: item.condition, age: item.age })
  }
  return [...latest.keys()]
    .sort()
    .map((name) => latest.get(name))
    .filter((series) => series !== undefined)
}
