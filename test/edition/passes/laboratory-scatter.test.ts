import { expect, it } from 'vitest'
import type { PooledStep } from '../../../src/core/doubt/pooled-repeatability.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { pooledBefore } from '../../../src/edition/passes/laboratory-scatter.ts'

const step = (day: number): PooledStep => [momentOfDay(day), 4.2, 6]

it('a source takes the scatter that was known before its last index, and no later step', () => {
  const pooled = { north: { 'strength|c311|672': [step(100), step(119), step(120), step(130)] } }
  const known = (lastKnown: number | null) => pooledBefore(pooled, { lastKnown }).north?.['strength|c311|672']
  // An index of day 120 is judged with what was known on day 119.
  expect(known(120)).toEqual([step(100), step(119)])
  expect(known(131)).toEqual([step(100), step(119), step(120), step(130)])
  expect(known(100)).toEqual([])
  expect(known(null)).toEqual([])
})
