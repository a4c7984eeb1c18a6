import { appendFileSync, mkdtempSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { keepLines, keptLines } from '../../src/commands/kept-lines.ts'
import { digestOf } from '../../src/records/issued/digest.ts'

let path: string
const read = () => {
  const lines = keptLines(path)
  return lines === undefined ? undefined : [...lines]
}

beforeEach(() => {
  path = join(mkdtempSync(join(tmpdir(), 'kept-lines-')), 'lines.txt')
})

describe('kept lines', () => {
  it('are what was kept, however many pieces they are read in', () => {
    const lines = Array.from({ length: 30_000 }, (_, place) => `${place} − ${'日本'.repeat(place % 40)}`)
    expect(keepLines(path, lines, 'begin anew')).toEqual([])
    expect(readFileSync(path).length).toBeGreaterThan(3_000_000)
    expect(read()).toEqual(lines)
  })

  it('may be none, or empty', () => {
    keepLines(path, [], 'begin anew')
    expect(read()).toEqual([])
    keepLines(path, ['', 'a', ''], 'begin anew')
    expect(read()).toEqual(['', 'a', ''])
  })

  it('end with their digest', () => {
    keepLines(path, ['one', 'two'], 'begin anew')
    expect(readFileSync(path, 'utf8')).toBe(`one\ntwo\n${digestOf('one\ntwo\n')}`)
  })

  it('are none where the file is not as it was written', () => {
    const spoiled: readonly (() => void)[] = [
      () => writeFileSync(path, readFileSync(path, 'utf8').replace('two', 'too')),
      () => truncateSync(path, readFileSync(path).length - 1),
      () => truncateSync(path, 10),
      () => truncateSync(path, 0),
      () => appendFileSync(path, '\n'),
    ]
    for (const spoil of spoiled) {
      keepLines(path, ['one', 'two'], 'begin anew')
      expect(read()).toEqual(['one', 'two'])
      spoil()
      expect(read()).toBeUndefined()
    }
  })

  it('are none where there is no file, and a folder in its place is told', () => {
    expect(read()).toBeUndefined()
    expect(keepLines(join(path, '..'), ['one'], 'begin anew')[0]).toMatch(
      /^The next build will begin anew: .+ cannot be written/,
    )
  })
})
