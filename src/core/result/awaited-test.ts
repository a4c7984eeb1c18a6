/** What is still missing of a lot's planned tests, as lists and verdicts name it. */
import { compareMoments } from '../measure/moment.ts'
import { INDEX_OF } from '../measure/ratio-indices.ts'
import type { PlannedTest } from './result.ts'

/** A result that is due or overdue. */
export type AwaitedTest = Pick<
  PlannedTest,
  'property' | 'condition' | 'age' | 'unread' | 'due' | 'overdueSince'
>

/**
 * What a lot still lacks, the longest awaited first: one entry for each property, condition and age.
 * @param planned tests listed in the record without a reading
 * @returns the earliest of several samples or laboratories
 * Notes: 1. a mean whose index is awaited too is left out: the index is what a limit is on, and one reading
 * gives both.
 */
export function awaitedTests(planned: readonly PlannedTest[]): AwaitedTest[] {
  const keys = new Set(planned.map(keyOf))
  const first = new Map<string, AwaitedTest>()
  for (const test of [...planned].sort((a, b) => compareMoments(a.due, b.due))) {
    const index = INDEX_OF[test.property]
    if (index !== undefined && keys.has(keyOf({ ...test, property: index }))) continue
    const { property, condition, age, unread, due, overdueSince } = test
    if (first.has(keyOf(test))) continue
    first.set(keyOf(test), {
      property,
      condition,
      age,
      unread,
      due,
      ...(overdueSince === undefined ? {} : { overdueSince }),
    })
  }
  return [...first.values()]
}

function keyOf({ property, condition, age }: PlannedTest): string {
  return `${property}|${condition}|${age.hours}`
}
