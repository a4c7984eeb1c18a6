/**
 * Plain values as text and back, the same values: what JSON would lose, what a moment or an age is and
 * numbers that it has no text for, is written out.
 */
import { type Age, readAge } from '../../core/measure/age.ts'
import { type Moment, readMoment } from '../../core/measure/moment.ts'

/**
 * A value that its JSON tells from every other one, but for moments and ages, of which it holds the text, and for numbers that are
 * not finite.
 */
type Plain<T> = T extends string | number | boolean | null | undefined | Moment | Age
  ? T
  : T extends
        | ((...given: never[]) => unknown)
        | ReadonlyMap<unknown, unknown>
        | ReadonlySet<unknown>
        | symbol
        | bigint
    ? never
    : { readonly [Key in keyof T]: Plain<T[Key]> }

/** Does not compile for a value that JSON would not hold as it is. */
export type IfPlain<Value> = [Value] extends [Plain<Value>] ? unknown : never

/** Each begins the only member of what stands for a value that JSON has no text for; no record has such a key. */
const MOMENT = ' moment'
const AGE = ' age'
const NUMBER = ' number'

export function plainText(value: unknown): string {
  return JSON.stringify(written(value))
}

export function plainValue(text: string): unknown {
  return read(JSON.parse(text))
}

function written(value: unknown): unknown {
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
    return { [NUMBER]: Object.is(value, -0) ? '-0' : String(value) }
  if (typeof value !== 'object' || value === null) return value
  if (isMoment(value)) return { [MOMENT]: [value.text, value.sortedAt] }
  if (isAge(value)) return { [AGE]: value.text }
  return withMembers(value, written)
}

/**
 * A list or an object with each member as a function gives it: the same one where none becomes another, for most of what is
 * written needs no copy.
 */
export function withMembers(value: object, each: (member: unknown, key: string) => unknown): object {
  if (Array.isArray(value)) return withElements(value, each)
  let changed: Record<string, unknown> | undefined
  for (const [key, member] of Object.entries(value)) {
    const own = each(member, key)
    if (own === member) continue
    changed ??= { ...value }
    changed[key] = own
  }
  return changed ?? value
}

function withElements(list: unknown[], each: (member: unknown, key: string) => unknown): unknown[] {
  let changed: unknown[] | undefined
  for (let place = 0; place < list.length; place++) {
    const own = each(list[place], '')
    if (own === list[place]) continue
    changed ??= [...list]
    changed[place] = own
  }
  return changed ?? list
}

/** Pages are bundled, and have classes of moments and ages of their own. */
function isMoment(value: object): value is Moment {
  return 'sortedAt' in value && 'toJSON' in value
}

function isAge(value: object): value is Age {
  return 'hours' in value && 'toJSON' in value
}

function read(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Object.keys(value).length === 1) {
    if (MOMENT in value) return readMoment(...(value[MOMENT] as [string, number]))
    if (AGE in value) return readAge(value[AGE] as string)
    if (NUMBER in value) return Number(value[NUMBER])
  }
  return withMembers(value, read)
}
