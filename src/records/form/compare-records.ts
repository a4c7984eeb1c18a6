/** Two written records of one lot, field by field. */
import type { Path } from '../edit/edit-yaml.ts'
import type { Plain } from '../edit/write-yaml.ts'
import { placeOf } from './bench-sheet.ts'

/** A place that the two records do not state alike; null where one of them states nothing. */
export interface DifferentField {
  readonly path: Path
  readonly own: string | null
  readonly published: string | null
}

/** What tells the items of a list from each other, so that one put in between does not make all after it differ. */
const TOLD_BY: Readonly<Record<string, readonly string[]>> = {
  '/samples': ['id'],
  '/analyses': ['sample', 'laboratory', 'tested'],
  '/verification': ['sample', 'laboratory', 'tested'],
  '/tests': ['sample', 'condition', 'cast'],
  '/tests/*/strength': ['age', 'tested'],
  '/tests/*/resistivity': ['age', 'tested'],
  '/shipments': ['bill'],
  '/revisions': ['number'],
}

/**
 * Every plain value that differs, in the order of one's own record and then of what only the published one has.
 * @param own as its text is read, without quantities converted
 */
export function differentFields(own: Plain, published: Plain): DifferentField[] {
  return differing(own, published, [])
}

function differing(own: Plain | undefined, published: Plain | undefined, path: Path): DifferentField[] {
  if (Array.isArray(own) || Array.isArray(published))
    return differingItems(listOf(own), listOf(published), path)
  if (isMapping(own) || isMapping(published)) {
    const [a, b] = [isMapping(own) ? own : {}, isMapping(published) ? published : {}]
    const keys = new Set([...Object.keys(a), ...Object.keys(b)])
    return [...keys].flatMap((key) => differing(memberOf(a, key), memberOf(b, key), [...path, key]))
  }
  const [a, b] = [textOf(own), textOf(published)]
  return a === b ? [] : [{ path, own: a, published: b }]
}

function listOf(value: Plain | undefined): readonly Plain[] {
  return Array.isArray(value) ? value : value === undefined ? [] : [value as Plain]
}

function isMapping(value: Plain | undefined): value is { readonly [key: string]: Plain } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function memberOf(value: { readonly [key: string]: Plain }, key: string): Plain | undefined {
  return Object.hasOwn(value, key) ? value[key] : undefined
}

function textOf(value: Plain | undefined): string | null {
  return value === undefined || value === null ? null : String(value)
}

function differingItems(own: readonly Plain[], published: readonly Plain[], path: Path): DifferentField[] {
  const keys = TOLD_BY[placeOf(path)]
  const left = [...published.entries()]
  const found = own.flatMap((item, index) => {
    const at = left.findIndex(([place, other]) =>
      keys === undefined ? place === index : isSameItem(item, other, keys),
    )
    const [taken] = at < 0 ? [] : left.splice(at, 1)
    return differing(item, taken?.[1], [...path, index])
  })
  return [...found, ...left.flatMap(([index, item]) => differing(undefined, item, [...path, index]))]
}

function isSameItem(a: Plain, b: Plain, keys: readonly string[]): boolean {
  return isMapping(a) && isMapping(b) && keys.every((key) => memberOf(a, key) === memberOf(b, key))
}
