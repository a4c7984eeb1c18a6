import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { writeNewFiles, writeNewFolder } from '../../src/commands/write-new-files.ts'

const fresh = () => mkdtempSync(join(tmpdir(), 'files-'))

describe('writeNewFiles', () => {
  it('writes every file with its folders', () => {
    const folder = fresh()
    writeNewFiles(folder, [
      { path: 'sources/a.yaml', text: 'a\n' },
      { path: 'lots/a/A-1.yaml', text: 'b\n' },
    ])
    expect(readFileSync(join(folder, 'lots/a/A-1.yaml'), 'utf8')).toBe('b\n')
    expect(readdirSync(folder).sort()).toEqual(['lots', 'sources'])
  })
  it('writes nothing where one is there, in whatever case its name is', () => {
    const folder = fresh()
    mkdirSync(join(folder, 'sources'))
    writeFileSync(join(folder, 'sources/Hill.yaml'), 'mine\n')
    const files = [
      { path: 'producers/hill.yaml', text: 'a\n' },
      { path: 'sources/hill.yaml', text: 'b\n' },
    ]
    expect(() => writeNewFiles(folder, files)).toThrow(
      /sources\/Hill\.yaml is there already; nothing was written/,
    )
    expect(readFileSync(join(folder, 'sources/Hill.yaml'), 'utf8')).toBe('mine\n')
    expect(existsSync(join(folder, 'producers'))).toBe(false)
  })
  it('takes back what it wrote where a later file cannot be written', () => {
    const folder = fresh()
    writeFileSync(join(folder, 'lots'), 'a file in the place of a folder\n')
    const files = [
      { path: 'sources/a.yaml', text: 'a\n' },
      { path: 'lots/a/A-1.yaml', text: 'b\n' },
    ]
    expect(() => writeNewFiles(folder, files)).toThrow(/A-1\.yaml cannot be written/)
    expect(readdirSync(join(folder, 'sources'))).toEqual([])
  })
})

describe('writeNewFolder', () => {
  const files = [{ path: 'sources/a.yaml', text: 'a\n' }]
  it('makes the folder, or fills one that is empty, and leaves nothing beside it', async () => {
    const parent = fresh()
    await writeNewFolder(join(parent, 'new'), files)
    mkdirSync(join(parent, 'empty'))
    await writeNewFolder(join(parent, 'empty'), files)
    expect(readdirSync(parent).sort()).toEqual(['empty', 'new'])
    expect(readFileSync(join(parent, 'empty/sources/a.yaml'), 'utf8')).toBe('a\n')
  })
  it('leaves a folder alone that is not empty', async () => {
    const folder = fresh()
    writeFileSync(join(folder, 'mine.txt'), 'mine\n')
    await expect(writeNewFolder(folder, files)).rejects.toThrow(
      /is there already and not empty; nothing was written/,
    )
    expect(readdirSync(folder)).toEqual(['mine.txt'])
  })
  it('says in words why it cannot be written', async () => {
    const file = join(fresh(), 'mine.txt')
    writeFileSync(file, 'mine\n')
    await expect(writeNewFolder(join(file, 'new'), files)).rejects.toThrow(
      /new cannot be written: a file stands in the place of its folder\./,
    )
    expect(readFileSync(file, 'utf8')).toBe('mine\n')
  })
})
