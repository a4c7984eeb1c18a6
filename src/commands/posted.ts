/** Values for other threads: a copy that all of them read, in which moments and ages are again what they were. */
import { deserialize, serialize } from 'node:v8'
import { Age } from '../core/measure/age.ts'
import { Moment } from '../core/measure/moment.ts'

/** A copy loses what a moment or an age is, so these are listed beside the value that holds them. */
interface Posted {
  readonly value: unknown
  readonly moments: readonly Moment[]
  readonly ages: readonly Age[]
}

/** @param value plain but for maps, sets, moments and ages */
export function posted(value: unknown): SharedArrayBuffer {
  const bytes = serialize({ value, ...datesWithin(value) } satisfies Posted)
  const shared = new SharedArrayBuffer(bytes.length)
  new Uint8Array(shared).set(bytes)
  return shared
}

export function received<Value>(shared: SharedArrayBuffer): Value {
  const { value, moments, ages } = deserialize(new Uint8Array(shared)) as Posted
  for (const moment of moments) Object.setPrototypeOf(moment, Moment.prototype)
  for (const age of ages) Object.setPrototypeOf(age, Age.prototype)
  return value as Value
}

function datesWithin(value: unknown): Omit<Posted, 'value'> {
  const [moments, ages] = [[] as Moment[], [] as Age[]]
  const seen = new Set<object>()
  const look = (one: unknown): void => {
    if (typeof one !== 'object' || one === null || seen.has(one)) return
    seen.add(one)
    if (one instanceof Moment) moments.push(one)
    else if (one instanceof Age) ages.push(one)
    else if (one instanceof Map || one instanceof Set || Array.isArray(one)) for (const own of one) look(own)
    else for (const own of Object.values(one)) look(own)
  }
  look(value)
  return { moments, ages }
}
