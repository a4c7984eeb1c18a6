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
  if (Array.isArray(value)) return value.map(written)
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, written(member)]))
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
  if (Array.isArray(value)) return value.map(read)
  const [[key, member] = [], ...others] = Object.entries(value) as [string, unknown][]
  if (others.length === 0) {
    if (key === MOMENT) return readMoment(...(member as [string, number]))
    if (key === AGE) return readAge(member as string)
    if (key === NUMBER) return Number(member)
  }
  return Object.fromEntries(Object.entries(value).map(([name, own]) => [name, read(own)]))
}
