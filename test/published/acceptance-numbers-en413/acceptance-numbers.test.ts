import { describe, expect, it } from 'vitest'
import { acceptanceNumber } from '../../../src/core/judging/by-attributes.ts'
import { onlyCase } from '../values.ts'

const { inputs, expected } = onlyCase('acceptance-numbers-en413')
const printed = (inputs['results'] as [number, number][]).map(
  ([from, to], place) =>
    [from, to, (expected['acceptance_numbers'] as number[])[place] ?? Number.NaN] as const,
)

// The plan as sets write it for EN 197-1: a table to 100 results, and 0.075 (n − 30) beyond.
const plan = {
  acceptance: printed.filter(([from]) => from <= 100).map(([from, , allow]) => ({ from, allow })),
  beyond: { factor: 0.075, less: 30 },
}

// EN 413-1:2011, table 8, read; the rule beyond the table is that of EN 197-1, from memory.
describe('acceptanceNumber against the table of EN 413-1', () => {
  it.each(printed)('acceptanceNumber of %s to %s results is %s', (from, to, allow) => {
    const found = Array.from({ length: to - from + 1 }, (_, more) => acceptanceNumber(from + more, plan))
    expect(new Set(found)).toEqual(new Set([allow]))
  })
})
