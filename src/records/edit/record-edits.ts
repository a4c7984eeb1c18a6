/** Edits of a record as plain values: what a record is after one, and which smallest edits come to the same. */
import type { Plain } from './write-yaml.ts'

/** Keys and indices from the record down to a value. */
export type Path = readonly (string | number)[]

export type Edit =
  | { readonly set: Path; readonly to: Plain }
  | { readonly remove: Path }
  | { readonly append: Path; readonly item: Plain }

/** The text is no YAML, or is written in a way in which the edit would not read back. */
export class EditFault extends Error {}

/** Items that go onto the same list, one after the other, are put there at once. */
export type Step =
  | Exclude<Edit, { append: Path }>
  | { readonly append: Path; readonly items: readonly Plain[] }

/** Whether two values are the same record; the order of keys says nothing. */
export function same(a: Plain | undefined, b: Plain | undefined): boolean {
  if (a === b) return true
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((item, index) => same(item, b[index]))
  if (!isMapping(a) || !isMapping(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
  )
}

function isMapping(value: Plain | undefined): value is { readonly [key: string]: Plain } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** What the text says of nothing: an empty value reads as an empty text. */
function isNothing(value: Plain | undefined): boolean {
  return value === undefined || value === null || value === ''
}

/** The value after a step. @throws EditFault where a path leads through a value that holds nothing */
export function applied(value: Plain | undefined, step: Step): Plain | undefined {
  if ('append' in step)
    return changedAt(value, step.append, (list) => {
      if (Array.isArray(list)) return [...list, ...step.items]
      if (isNothing(list)) return step.items
      throw new EditFault('An item can only be added to a list.')
    })
  return 'set' in step
    ? changedAt(value, step.set, () => step.to)
    : changedAt(value, step.remove, () => undefined)
}

function changedAt(
  value: Plain | undefined,
  path: Path,
  change: (old: Plain | undefined) => Plain | undefined,
): Plain | undefined {
  const [key, ...rest] = path
  if (key === undefined) return change(value)
  if (typeof key === 'number') {
    if (!Array.isArray(value) || value.length <= key) throw new EditFault(`There is no item ${key + 1}.`)
    const item = changedAt(value[key], rest, change)
    return item === undefined ? value.toSpliced(key, 1) : value.with(key, item)
  }
  if (!isMapping(value) && !isNothing(value))
    throw new EditFault(`"${key}" cannot be put into a plain value.`)
  const old = isMapping(value) ? value : {}
  const entry = changedAt(Object.hasOwn(old, key) ? old[key] : undefined, rest, change)
  if (entry === undefined) return Object.fromEntries(Object.entries(old).filter(([name]) => name !== key))
  return Object.hasOwn(old, key) || key !== '__proto__'
    ? { ...old, [key]: entry }
    : Object.fromEntries([...Object.entries(old), [key, entry]])
}

/** A step as the smallest ones that come to the same: members that stay as they are keep how they are written. */
export function finer(value: Plain | undefined, step: Exclude<Step, { append: Path }>): Step[] {
  const path = 'set' in step ? step.set : step.remove
  const old = valueAt(value, path)
  if ('remove' in step) return old === undefined ? [] : [step]
  return differences(old, step.to, path)
}

function valueAt(value: Plain | undefined, path: Path): Plain | undefined {
  return path.reduce<Plain | undefined>((inner, key) => {
    if (Array.isArray(inner)) return typeof key === 'number' ? inner[key] : undefined
    return isMapping(inner) && Object.hasOwn(inner, key) ? inner[String(key)] : undefined
  }, value)
}

function differences(old: Plain | undefined, to: Plain, path: Path): Step[] {
  if (same(old, to)) return []
  if (isMapping(old) && isMapping(to) && shareKeys(old, to))
    return [
      ...Object.entries(to).flatMap(([key, value]) =>
        differences(Object.hasOwn(old, key) ? old[key] : undefined, value, [...path, key]),
      ),
      ...Object.keys(old)
        .filter((key) => !Object.hasOwn(to, key))
        .map((key) => ({ remove: [...path, key] })),
    ]
  if (Array.isArray(old) && Array.isArray(to) && 0 < old.length && 0 < to.length)
    return [
      ...to.slice(0, old.length).flatMap((item, index) => differences(old[index], item, [...path, index])),
      ...(old.length < to.length ? [{ append: path, items: to.slice(old.length) }] : []),
      ...old
        .slice(to.length)
        .map((_, index) => ({ remove: [...path, to.length + index] }))
        .toReversed(),
    ]
  return [{ set: path, to }]
}

function shareKeys(a: object, b: object): boolean {
  return Object.keys(a).some((key) => Object.hasOwn(b, key))
}
