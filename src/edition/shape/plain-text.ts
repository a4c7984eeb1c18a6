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

/** Each names the only member of what stands for a value that JSON has no text for. */
const MOMENT = ' moment'
const AGE = ' age'
const NUMBER = ' number'

/** Stands for a value of the list before, by its place. */
const SAME = ' same'

/** Stands for an object whose only member might be taken for one of these: whoever marks a specimen may begin with a blank. */
const ITSELF = ' itself'

export function plainText(value: unknown): string {
  return JSON.stringify(written(value))
}

export function plainValue(text: string): unknown {
  return read(JSON.parse(text), [])
}

/** The same for what holds many equal quantities, moments and ages: each is written once, and read as one object. */
export function sharedPlainText(value: unknown): string {
  const same = new SameValues()
  const own = written(value, same)
  return JSON.stringify([same.values, own])
}

export function sharedPlainValue(text: string): unknown {
  const [values, value] = JSON.parse(text) as [unknown[], unknown]
  return read(
    value,
    values.map((one) => read(one, [])),
  )
}

/** Objects without lists or objects in them, each once. */
class SameValues {
  readonly values: object[] = []
  readonly #places = new Map<string, number>()

  referenceTo(value: object): object {
    const text = JSON.stringify(value)
    const place = this.#places.get(text) ?? this.values.push(value) - 1
    this.#places.set(text, place)
    return { [SAME]: place }
  }
}

function written(value: unknown, same?: SameValues): unknown {
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
    return { [NUMBER]: Object.is(value, -0) ? '-0' : String(value) }
  if (typeof value !== 'object' || value === null) return value
  if (isMoment(value)) return inOnePlace({ [MOMENT]: [value.text, value.sortedAt] }, same)
  if (isAge(value)) return inOnePlace({ [AGE]: value.text }, same)
  const own = withMembers(value, (member) => written(member, same))
  if (isLikeAMark(own)) return { [ITSELF]: Object.entries(own)[0] }
  return isFlat(own) ? inOnePlace(own, same) : own
}

function isLikeAMark(value: object): boolean {
  for (const key in value) return key.startsWith(' ') && Object.keys(value).length === 1
  return false
}

function inOnePlace(value: object, same: SameValues | undefined): object {
  return same === undefined ? value : same.referenceTo(value)
}

/** Whether it is an object that is longer than what would stand for it. */
function isFlat(value: object): boolean {
  if (Array.isArray(value)) return false
  const members = Object.values(value)
  return 1 < members.length && members.every((member) => typeof member !== 'object' || member === null)
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
  return 'sortedAt' in value && saysItsText(value)
}

function isAge(value: object): value is Age {
  return 'hours' in value && saysItsText(value)
}

/** Members of a record may have any name, but none of them is a function. */
function saysItsText(value: object): boolean {
  return 'toJSON' in value && typeof value.toJSON === 'function'
}

/** Puts in place what stands for another value: nobody else has what was just parsed. */
function read(value: unknown, values: readonly unknown[]): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    for (let place = 0; place < value.length; place++) value[place] = read(value[place], values)
    return value
  }
  const members = value as Record<string, unknown>
  if (isLikeAMark(members)) return marked(members, values)
  for (const key in members) {
    const member = members[key]
    if (typeof member === 'object') members[key] = read(member, values)
  }
  return members
}

/** What a mark stands for: every object with such a member was written as one. */
function marked(value: Record<string, unknown>, values: readonly unknown[]): unknown {
  if (SAME in value) return values[value[SAME] as number]
  if (MOMENT in value) return readMoment(...(value[MOMENT] as [string, number]))
  if (AGE in value) return readAge(value[AGE] as string)
  if (NUMBER in value) return Number(value[NUMBER])
  const [key, member] = value[ITSELF] as [string, unknown]
  return { [key]: read(member, values) }
}
