import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { filesOf, treeOf } from '../../src/commands/folder-tree.ts'

/** Long after whatever the test writes. */
const LATER = Date.now() + 3_600_000

let folder = ''

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tree-'))
  mkdirSync(join(folder, 'a/b'), { recursive: true })
  mkdirSync(join(folder, 'kept/a'), { recursive: true })
  for (const path of ['top', 'a/one', 'a/b/two', 'kept/a/own']) writeFileSync(join(folder, path), '')
  symlinkSync('a', join(folder, 'link'))
})

describe('treeOf', () => {
  it('tells every folder before those in it, and follows no link', () => {
    const tree = treeOf(folder)
    expect([...tree.keys()].filter((path) => !path.startsWith('kept'))).toEqual(['', 'a', 'a/b'])
    expect(filesOf(tree).sort()).toEqual(['a/b/two', 'a/one', 'kept/a/own', 'link', 'top'])
    expect(filesOf(tree, new Set(['kept', 'top'])).sort()).toEqual(['a/b/two', 'a/one', 'link'])
  })

  it('reads a folder again only where an entry has come or gone', () => {
    const before = treeOf(folder, undefined, LATER)
    writeFileSync(join(folder, 'a/b/three'), '')
    rmSync(join(folder, 'top'))
    const after = treeOf(folder, before, LATER)
    expect(after.get('a')).toBe(before.get('a'))
    expect(after.get('a/b')).not.toBe(before.get('a/b'))
    expect(filesOf(after)).toEqual(expect.arrayContaining(['a/b/three']))
    expect(filesOf(after)).not.toContain('top')
  })

  it('reads a folder again that was changed only just before it was read', () => {
    const before = treeOf(folder)
    expect(treeOf(folder, before, LATER).get('a')).not.toBe(before.get('a'))
  })

  it('throws the refusal of what is no folder', () => {
    expect(() => treeOf(join(folder, 'none'))).toThrow(/ENOENT/)
  })
})
