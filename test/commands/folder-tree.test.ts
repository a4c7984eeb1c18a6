import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { asItWas, filesOf, treeOf } from '../../src/commands/folder-tree.ts'

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

  it('throws the refusal of what is no folder', () => {
    expect(() => treeOf(join(folder, 'none'))).toThrow(/ENOENT/)
  })
})

describe('asItWas', () => {
  const watched = () => asItWas(folder, treeOf(folder, LATER))

  it('is so while nothing comes or goes', () => {
    const isAsItWas = watched()
    writeFileSync(join(folder, 'a/one'), 'other bytes')
    expect(isAsItWas(LATER)).toBe(true)
  })

  it('is not so once an entry of any folder has come or gone, or a folder itself', () => {
    const changes: readonly (() => void)[] = [
      () => writeFileSync(join(folder, 'a/b/three'), ''),
      () => rmSync(join(folder, 'top')),
      () => rmSync(join(folder, 'a/b'), { recursive: true }),
      () => mkdirSync(join(folder, 'kept/b')),
    ]
    for (const change of changes) {
      const isAsItWas = watched()
      change()
      expect(isAsItWas(LATER)).toBe(false)
    }
  })

  it('is not known of a folder that was changed only just before it was read', () => {
    expect(asItWas(folder, treeOf(folder))(LATER)).toBe(false)
  })
})
