/** Names near a mistyped one. */
import fc from 'fast-check'
import leven from 'leven'
import { expect, it } from 'vitest'
import { nearNames } from '../../../src/records/diagnostics/near-names.ts'

it('nearNames gives the nearest three, the alphabet deciding among equals', () => {
  expect(nearNames('k2024-1', new Set(['K2024-3', 'K2024-2', 'K2024-12', 'K2024-4']))).toBe(
    'did you mean K2024-12 or K2024-2 or K2024-3?',
  )
})

it('nearNames gives a name that has all words of the mistyped one, however much longer it is', () => {
  const known = new Set(['strength-activity-index', 'density'])
  expect(nearNames('strength-index', known)).toBe('did you mean strength-activity-index?')
})

it('nearNames lists what is known where nothing is near and the list is short', () => {
  expect(nearNames('slag', new Set(['ash', 'pumice']))).toBe('known: ash, pumice')
  expect(nearNames('slag', new Set())).toBe('')
  expect(nearNames('slag', new Set(['ash', 'pumice']).keys())).toBe('known: ash, pumice')
})

/** The names as a comparison with each of them finds them. */
function namesByComparison(name: string, known: readonly string[]): string[] {
  const words = (of: string) => of.toLowerCase().split('-')
  return [...new Set(known)]
    .map((candidate) => ({ candidate, distance: leven(name.toLowerCase(), candidate.toLowerCase()) }))
    .filter(
      ({ candidate, distance }) =>
        distance <= Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 3)) ||
        (words(name).length > 1 && words(name).every((word) => words(candidate).includes(word))),
    )
    .sort((a, b) => a.distance - b.distance || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, 3)
    .map(({ candidate }) => candidate)
}

it('nearNames answers as a comparison with each name does, for a set, whose index it keeps, and for a list', () => {
  const name = fc
    .array(fc.constantFrom('a', 'b', 'B', 'ab', 'aab', '-', 'İ', '1'), { minLength: 1, maxLength: 9 })
    .map((parts) => parts.join(''))
  fc.assert(
    fc.property(fc.uniqueArray(name, { maxLength: 30 }), fc.array(name, { maxLength: 5 }), (known, asked) => {
      const set = new Set(known)
      for (const one of [...asked, ...known]) {
        const near = namesByComparison(one, known)
        const answer =
          near.length === 0
            ? expect.not.stringContaining('did you mean')
            : `did you mean ${near.join(' or ')}?`
        expect(nearNames(one, set)).toEqual(answer)
        expect(nearNames(one, known)).toEqual(answer)
      }
    }),
    { numRuns: 300 },
  )
})
