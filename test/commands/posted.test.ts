import { isDeepStrictEqual } from 'node:util'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { posted, received } from '../../src/commands/posted.ts'
import { readAge } from '../../src/core/measure/age.ts'
import { Moment, readMoment } from '../../src/core/measure/moment.ts'
import { loadRecords, type Records } from '../../src/records/load.ts'

it('gives records as they were, moments and ages within maps and sets too', () => {
  const { records } = loadRecords(resolve(import.meta.dirname, '../../content'))
  expect(records.lots.size).toBeGreaterThan(100)
  expect(isDeepStrictEqual(received<Records>(posted(records)), records)).toBe(true)
})

it('gives what stands in several places as one value', () => {
  const sampled = readMoment('2026-03-11T09:20', 60)
  const value = {
    of: new Map([['ash', [sampled, { sampled }]]]),
    ages: new Set([readAge('28 d')]),
    none: undefined,
  }
  const copy = received<typeof value>(posted(value))
  expect(copy).toStrictEqual(value)
  const [moment, beside] = copy.of.get('ash') ?? []
  expect(moment).toBeInstanceOf(Moment)
  expect(beside).toHaveProperty('sampled', moment)
  expect((beside as { sampled: Moment }).sampled).toBe(moment)
})
