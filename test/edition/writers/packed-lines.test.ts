import { expect, it } from 'vitest'
import { PackedLines } from '../../../src/edition/writers/packed-lines.ts'

it('PackedLines gives back the lines in order, those that were packed and the last ones', () => {
  const packed = new PackedLines()
  // Three of 600,000 characters: two are packed together, one is not.
  const lines = ['5 °C', 'µm', '≤'].map((sign) => sign + 'a'.repeat(600_000))
  for (const line of [...lines, '']) packed.add(line)
  expect([...packed.lines()]).toEqual([...lines, ''])
})

it('PackedLines of nothing has no line', () => {
  expect([...new PackedLines().lines()]).toEqual([])
})
