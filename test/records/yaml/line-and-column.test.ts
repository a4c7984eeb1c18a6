import { describe, expect, it } from 'vitest'
import { lineAndColumn, lineStarts } from '../../../src/records/yaml/line-and-column.ts'

describe('lineAndColumn', () => {
  const text = '\ufeffa: 1\r\n\n  b: é\n\n\nc'

  it('counts line and column from 1 at every offset, as counting line ends by hand does', () => {
    const starts = lineStarts(text)
    for (let offset = 0; offset <= text.length; offset += 1) {
      const before = text.slice(0, offset).split('\n')
      expect(lineAndColumn(starts, offset)).toEqual({
        line: before.length,
        column: (before.at(-1)?.length ?? 0) + 1,
      })
    }
  })
  it('gives line 1, column 1 for the beginning of a text without any line end', () => {
    expect(lineAndColumn(lineStarts(''), 0)).toEqual({ line: 1, column: 1 })
  })
})
