/** Names close to a mistyped one. */
import { NameIndex, type NearName } from './name-index.ts'
import leven from 'leven'

/** Near names shown at most. */
const SHOWN = 3

/** "did you mean …" for a fix; the whole list where it is short; empty where nothing is near. */
export function nearNames(name: string, known: Iterable<string>): string {
  // The keys of a map give their names only once.
  const names = known instanceof Set ? known : [...known]
  const near = nearest(name, names).map(({ candidate }) => candidate)
  if (near.length > 0) return `did you mean ${near.join(' or ')}?`
  const all = [...names]
  return all.length === 0 || 12 < all.length ? '' : `known: ${all.join(', ')}`
}

/** Of sets that do not change any more, which thousands of names may be looked up in. */
const indices = new WeakMap<ReadonlySet<string>, { readonly size: number; readonly index: NameIndex }>()

function nearest(name: string, known: Iterable<string>): NearName[] {
  const small = name.toLowerCase()
  const index = known instanceof Set ? indexOf(known) : new NameIndex(known)
  const worded = withWords(index, name).map((candidate) => ({
    candidate,
    distance: leven(small, candidate.toLowerCase()),
  }))
  const most = allowance(name.length, index.longest)
  // What is nearer than any further one is found first: of many names three are, after a letter or two.
  for (let distance = 0; ; distance += 1) {
    const found = index.within(small, distance).filter((near) => isNear(near, name))
    const all = new Map([...worded, ...found].map((near) => [near.candidate, near]))
    const settled = [...all.values()].filter((near) => near.distance <= distance)
    if (SHOWN <= settled.length || most <= distance) return firstOf([...all.values()])
  }
}

function indexOf(known: ReadonlySet<string>): NameIndex {
  const kept = indices.get(known)
  if (kept?.size === known.size) return kept.index
  const index = new NameIndex(known)
  indices.set(known, { size: known.size, index })
  return index
}

function firstOf(near: readonly NearName[]): NearName[] {
  return near
    .toSorted((a, b) => a.distance - b.distance || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, SHOWN)
}

function isNear({ candidate, distance }: NearName, name: string): boolean {
  return distance <= allowance(name.length, candidate.length)
}

/** A third of the longer one's letters. */
function allowance(length: number, other: number): number {
  return Math.max(1, Math.floor(Math.max(length, other) / 3))
}

/** Names that have all words of one of several words: "strength-index" has only words of "strength-activity-index". */
function withWords(index: NameIndex, name: string): string[] {
  const wanted = name.toLowerCase().split('-')
  const [rarest = []] = wanted.map((word) => index.withWord(word)).toSorted((a, b) => a.length - b.length)
  return rarest.filter((candidate) => holdsWords(candidate, name))
}

function holdsWords(candidate: string, name: string): boolean {
  const words = candidate.toLowerCase().split('-')
  const wanted = name.toLowerCase().split('-')
  return 1 < wanted.length && wanted.every((word) => words.includes(word))
}
