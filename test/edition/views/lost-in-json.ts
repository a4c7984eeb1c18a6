import { Moment } from '../../../src/core/measure/moment.ts'

/** Places in a value that its JSON would not tell from another value. */
export function lostInJson(value: unknown, place: string): string[] {
  if (value === undefined || typeof value === 'string' || typeof value === 'boolean' || value === null)
    return []
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0) ? [] : [place]
  if (typeof value !== 'object') return [place]
  if (value instanceof Moment) return []
  const isPlain = Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype
  const hole = Array.isArray(value) && value.includes(undefined)
  if (!isPlain || hole) return [place]
  return Object.entries(value).flatMap(([name, member]) => lostInJson(member, `${place}.${name}`))
}
