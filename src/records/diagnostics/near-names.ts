/** Names close to a mistyped one. */
import leven from 'leven'

/** Near names shown at most. */
const SHOWN = 3

/** "did you mean …" for a fix; the whole list where it is short; empty where nothing is near. */
export function nearNames(name: string, known: Iterable<string>): string {
  const all = [...known]
  const near = all
    .map((candidate) => ({ candidate, distance: leven(name.toLowerCase(), candidate.toLowerCase()) }))
    .filter(
      ({ candidate, distance }) =>
        distance <= Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 3)) ||
        holdsWords(candidate, name),
    )
    .sort((a, b) => a.distance - b.distance || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, SHOWN)
    .map(({ candidate }) => candidate)
  if (near.length > 0) return `did you mean ${near.join(' or ')}?`
  return all.length === 0 || 12 < all.length ? '' : `known: ${all.join(', ')}`
}

/** "strength-index" has only words of "strength-activity-index". */
function holdsWords(candidate: string, name: string): boolean {
  const words = candidate.toLowerCase().split('-')
  const wanted = name.toLowerCase().split('-')
  return 1 < wanted.length && wanted.every((word) => words.includes(word))
}
