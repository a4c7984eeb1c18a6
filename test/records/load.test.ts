import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { loadRecords } from '../../src/records/load.ts'

it('loadRecords tells each file that it reads, the first as 0, and of how many', () => {
  const heard: [number, number][] = []
  const { records } = loadRecords(resolve(import.meta.dirname, '../diagnostics/base'), undefined, {
    reading: (place, files) => heard.push([place, files]),
  })
  expect(records.lots.size).toBeGreaterThan(0)
  expect(heard).toEqual(heard.map((_, place) => [place, heard.length]))
})
