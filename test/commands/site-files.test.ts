import {
  appendFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { beforeEach, describe, expect, it } from 'vitest'
import { defined } from '../../src/core/measure/defined.ts'
import { readList } from '../../src/commands/file-list.ts'
import { type FolderPaths, filesOf, pathsOf, treeOf } from '../../src/commands/folder-tree.ts'
import { MARKER } from '../../src/commands/output-marker.ts'
import { changedGiven, givenOf, SiteFiles } from '../../src/commands/site-files.ts'
import { digestOf } from '../../src/records/issued/digest.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { tinyEdition } from '../edition/tiny-edition.ts'

const MORE_THAN_SETTLED_MS = 40
const edition = tinyEdition([], [])
const later: Edition = { ...edition, audience: 'public' }
const MADE_OF = { given: 'g', trace: ['program', 'made names'], view: 'v' }

let top: string
const text = (folder: string, path: string) => readFileSync(join(top, folder, path), 'utf8')

function filesIn(next: string, final: string, of = edition, spare?: FolderPaths): SiteFiles {
  mkdirSync(join(top, next), { recursive: true })
  writeFileSync(join(top, next, MARKER), '')
  return new SiteFiles({
    final: join(top, final),
    next: join(top, next),
    ...defined({ spare }),
    edition: of,
    fresh: false,
    unknown: false,
  })
}

/** A site at "site" with a page and its list. */
beforeEach(async () => {
  top = mkdtempSync(join(tmpdir(), 'site-files-'))
  const files = filesIn('site', 'site')
  await files.write('a/index.html', Buffer.from('as before'), MADE_OF)
  files.noteParts(new Map([['made names', ['audience']]]))
  await files.end()
  await setTimeout(MORE_THAN_SETTLED_MS)
  expect(files.writeList()).toEqual([])
})

describe('SiteFiles', () => {
  it('takes a file of which nothing has changed, under a second name', async () => {
    const files = filesIn('next', 'site')
    expect(files.isKept('a/index.html', 'g')).toBe(true)
    await files.end()
    expect(statSync(join(top, 'next/a/index.html')).ino).toBe(statSync(join(top, 'site/a/index.html')).ino)
    expect(files.digests.map(([path]) => path)).toEqual(['a/index.html'])
    expect(files.isUnchanged('a/index.html')).toBe(true)
    expect(files.changed).toEqual([])
  })

  it('tells what a file alone is given from what all are made by', () => {
    const given = (common: string, own: string) => givenOf(digestOf(common), own)
    expect(changedGiven(given('program', 'a'), given('program', 'a'))).toBeUndefined()
    expect(changedGiven(given('program', 'a'), given('program', 'b'))).toBe('given')
    expect(changedGiven(given('program', 'a'), given('another', 'a'))).toBe('')
  })

  it('takes none that it does not know, or is given something else', () => {
    const files = filesIn('next', 'site')
    expect(files.isKept('b/index.html', 'g')).toBe(false)
    expect(files.isKept('a/index.html', 'other')).toBe(false)
    expect(files.changed).toEqual([''])
    expect(existsSync(join(top, 'next/a'))).toBe(false)
  })

  it('takes one whose parts have changed only by its view', () => {
    const files = filesIn('next', 'site', later)
    expect(files.isKept('a/index.html', 'g')).toBe(false)
    expect(files.changed).toEqual(['made names'])
    expect(files.isKeptByView('a/index.html', { ...MADE_OF, view: 'other' })).toBe(false)
    expect(files.isKeptByView('a/index.html', { ...MADE_OF, given: 'other' })).toBe(false)
    expect(files.isKeptByView('a/index.html', MADE_OF)).toBe(true)
    expect(files.changed).toEqual([])
  })

  it('takes none that was altered, though its size and its times of writing are as before', () => {
    const path = join(top, 'site/a/index.html')
    const { atime, mtime } = statSync(path)
    writeFileSync(path, 'by a hand')
    utimesSync(path, atime, mtime)
    expect(filesIn('next', 'site').isKept('a/index.html', 'g')).toBe(false)
  })

  it('takes one that was only touched, whose bytes are the same', () => {
    utimesSync(join(top, 'site/a/index.html'), 1, 1)
    expect(filesIn('next', 'site').isKept('a/index.html', 'g')).toBe(true)
  })

  it('lists how one that was only touched lies there now, where the spare site has it already', async () => {
    mkdirSync(join(top, 'next/a'), { recursive: true })
    linkSync(join(top, 'site/a/index.html'), join(top, 'next/a/index.html'))
    utimesSync(join(top, 'site/a/index.html'), 1, 1)
    const files = filesIn('next', 'site', edition, { files: ['a/index.html'], folders: ['', 'a'] })
    expect(files.isKept('a/index.html', 'g')).toBe(true)
    await files.end()
    await setTimeout(MORE_THAN_SETTLED_MS)
    expect(files.writeList()).toEqual([])
    const list = readList(join(top, '.puteoli/files-of-site.json'))
    expect(list.files.get('a/index.html')?.mark).toEqual(expect.any(String))
  })

  it('gives a file that was made again, with the same bytes, the name of the one before', async () => {
    const files = filesIn('next', 'site')
    await files.write('a/index.html', Buffer.from('as before'), MADE_OF)
    await files.end()
    const inPieces = filesIn('pieces', 'site')
    inPieces.begin('a/index.html', ['as ', 'before'])(MADE_OF)
    for (const folder of ['next', 'pieces'])
      expect(statSync(join(top, folder, 'a/index.html')).ino).toBe(
        statSync(join(top, 'site/a/index.html')).ino,
      )
    inPieces.begin('b.json', ['æ', Buffer.from('b')])(MADE_OF)
    expect(text('pieces', 'b.json')).toBe('æb')
    expect(files.isUnchanged('a/index.html')).toBe(false)
  })

  it('takes none of a list that was spoiled, or of another site', () => {
    expect(filesIn('other', 'elsewhere').isKept('a/index.html', 'g')).toBe(false)
    appendFileSync(join(top, '.puteoli/files-of-site.json'), ' ')
    const list = text('.puteoli', 'files-of-site.json')
    writeFileSync(join(top, '.puteoli/files-of-site.json'), list.replace('"g"', '"h"'))
    expect(filesIn('next', 'site').isKept('a/index.html', 'h')).toBe(false)
  })

  it('brings an earlier site up to date, whatever has become of it, and writes to no file that a site may share', async () => {
    const files = filesIn('next', 'site')
    const write = (path: string, text: string) => {
      mkdirSync(join(top, 'next', path, '..'), { recursive: true })
      writeFileSync(join(top, 'next', path), text)
    }
    // Of the site, its very file; one of other bytes that is served elsewhere; and what is no longer a file or a folder.
    mkdirSync(join(top, 'next/a'))
    linkSync(join(top, 'site/a/index.html'), join(top, 'next/a/index.html'))
    await files.end()
    write('b/index.html', 'shared')
    linkSync(join(top, 'next/b/index.html'), join(top, 'served'))
    write('c/d/index.html', 'gone')
    write('e/index.html', 'was a folder')
    write('f', 'was a file')
    symlinkSync(join(top, 'site'), join(top, 'next/link'))
    const spare = pathsOf(treeOf(join(top, 'next')), new Set([MARKER]))
    rmSync(join(top, 'next', MARKER))
    const again = filesIn('next', 'site', edition, spare)
    expect(again.isKept('a/index.html', 'g')).toBe(true)
    for (const path of ['b/index.html', 'e', 'f/index.html'])
      await again.write(path, Buffer.from('new'), null)
    await again.end()
    const changed = again.removeLeft()
    expect(filesOf(treeOf(join(top, 'next'))).sort()).toEqual([
      MARKER,
      'a/index.html',
      'b/index.html',
      'e',
      'f/index.html',
    ])
    expect([...treeOf(join(top, 'next')).keys()].sort()).toEqual(['', 'a', 'b', 'f'])
    expect(text('', 'served')).toBe('shared')
    expect(text('next', 'b/index.html')).toBe('new')
    expect(text('site', 'a/index.html')).toBe('as before')
    expect(changed.files).toEqual(['b/index.html', 'e', 'f/index.html'])
    expect(new Set(changed.folders)).toEqual(new Set(['', 'b', 'f']))
  })

  it('ends with the first fault of what could not be written', async () => {
    const files = filesIn('next', 'site')
    mkdirSync(join(top, 'next/b/index.html'), { recursive: true })
    await files.write('b/index.html', Buffer.from('b'), null)
    await expect(files.end()).rejects.toThrow(/EEXIST/)
    await expect(files.room()).rejects.toThrow(/EEXIST/)
  })
})
