/**
 * Whether a control was made, cured and tested as another condition asks. A control mortar holds no material, so
 * that one batch serves every replacement level that is made alike.
 */

/** Where the two conditions must say the same; a key that stands for a mapping stands for all of it. */
const MUST_AGREE: readonly (readonly string[])[] = [
  ['batch', 'cementitious'],
  ['batch', 'sand'],
  ['batch', 'sand-kind'],
  ['batch', 'admixture'],
  ['water'],
  ['first-day'],
  ['curing'],
  ['before-test'],
  ['strength', 'specimen'],
  ['resistivity'],
]

/**
 * What a control's condition says otherwise than a test mortar's.
 * @param control,test conditions as in their records
 * @returns the fields with the keys that lead to them, "curing.temperature"; none where both mortars are made alike
 * Notes: 1. replacement, title, standing, ages, the demands on a control, permissible ranges and the number of
 * specimens may differ; 2. quantities are compared by value, in whatever unit they are written.
 */
export function fieldsUnlike(control: object, test: object): string[] {
  return MUST_AGREE.flatMap((path) => unlikeBelow(memberAt(control, path), memberAt(test, path), path))
}

/**
 * A member of a condition's record.
 * @param path keys that lead to it
 * @returns undefined where the record has none
 */
export function memberAt(condition: object, path: readonly string[]): unknown {
  return path.reduce<unknown>((found, key) => (isMapping(found) ? found[key] : undefined), condition)
}

function unlikeBelow(one: unknown, other: unknown, path: readonly string[]): string[] {
  if (isMapping(one) && isMapping(other) && !('written' in one)) {
    const keys = new Set([...Object.keys(one), ...Object.keys(other)])
    return [...keys].flatMap((key) => unlikeBelow(one[key], other[key], [...path, key]))
  }
  return plain(one) === plain(other) ? [] : [path.join('.')]
}

function plain(value: unknown): unknown {
  if (!isMapping(value)) return value
  return 'written' in value ? `${String(value['kind'])} ${String(value['value'])}` : value
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}
