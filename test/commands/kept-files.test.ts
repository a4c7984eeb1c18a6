import { mkdirSync, mkdtempSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { carryOver, refuseForeignFiles } from '../../src/commands/kept-files.ts'
import { treeOf } from '../../src/commands/folder-tree.ts'
import { MANIFEST } from '../../src/commands/manifest-file.ts'
import { fileDigests } from './file-digests.ts'
import { MARKER, writeMarker } from '../../src/commands/output-marker.ts'

/** A site of two files as a build leaves it. */
function site(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'kept-')), 'site')
  mkdirSync(join(folder, 'lots'), { recursive: true })
  writeFileSync(join(folder, 'index.html'), 'front')
  writeFileSync(join(folder, 'lots/index.html'), 'lots')
  writeMarker(folder, { program: 'test', audience: 'public', state: 'whole' })
  return folder
}

function withManifest(folder: string): string {
  const files = Object.fromEntries(fileDigests(folder))
  const head = { format: 1, program: 'test', audience: 'public', asOf: '2026-04-10' }
  writeFileSync(join(folder, MANIFEST), JSON.stringify({ ...head, files, lots: {}, records: {} }))
  return folder
}

const looked = (final: string, keep: readonly string[]) => refuseForeignFiles(final, treeOf(final), keep)

describe('refuseForeignFiles', () => {
  it('knows its own files, what the owner keeps, and what systems strew about', () => {
    const folder = withManifest(site())
    for (const name of ['CNAME', 'robots.txt', '.DS_Store', 'lots/Thumbs.db'])
      writeFileSync(join(folder, name), 'x')
    mkdirSync(join(folder, '.git/objects'), { recursive: true })
    writeFileSync(join(folder, '.git/objects/ab'), 'x')
    expect(() => looked(folder, ['CNAME', 'robots.txt', '.git'])).not.toThrow()
    expect(() => looked(folder, ['CNAME', '.git'])).toThrow(
      /holds robots\.txt that no build.*list robots\.txt under keep: in site\.yaml/s,
    )
  })
  it('names a foreign file at any depth, and counts the others', () => {
    const folder = withManifest(site())
    writeFileSync(join(folder, 'lots/notes.txt'), 'x')
    symlinkSync('index.html', join(folder, 'start.html'))
    expect(() => looked(folder, [])).toThrow(/holds lots\/notes\.txt and 1 other file that no/)
  })
  it('finds in a site without a manifest what the next one has no counterpart of', () => {
    const [folder, next] = [site(), site()]
    writeFileSync(join(folder, 'CNAME'), 'x')
    expect(() => looked(folder, [])).not.toThrow()
    expect(() => looked(folder, ['CNAME'])(next)).not.toThrow()
    expect(() => looked(folder, [])(next)).toThrow(/holds CNAME that/)
  })
  it('finds what comes while the next one is built, into a folder that was not there too', () => {
    const [folder, next] = [withManifest(site()), site()]
    const later = looked(folder, [])
    expect(() => later(next)).not.toThrow()
    writeFileSync(join(folder, 'lots/notes.txt'), 'x')
    expect(() => later(next)).toThrow(/holds lots\/notes\.txt that no/)
    expect(() => refuseForeignFiles(folder, undefined, [])(next)).toThrow(/holds lots\/notes\.txt that no/)
    expect(() => refuseForeignFiles(join(folder, 'none'), undefined, [])(next)).not.toThrow()
  })
})

describe('carryOver', () => {
  it('copies what the owner keeps, whole folders and links as they are, and nothing else', async () => {
    const [folder, next] = [site(), site()]
    mkdirSync(join(folder, '.git/objects'), { recursive: true })
    writeFileSync(join(folder, '.git/objects/ab'), 'x')
    symlinkSync('../elsewhere', join(folder, 'link'))
    writeFileSync(join(folder, 'letter'), 'x')
    await carryOver(folder, next, ['.git', 'link', 'robots.txt'])
    expect(readdirSync(next).sort()).toEqual([MARKER, '.git', 'index.html', 'link', 'lots'].sort())
    expect(readFileSync(join(next, '.git/objects/ab'), 'utf8')).toBe('x')
  })
  it('refuses to keep what the build writes itself', async () => {
    await expect(carryOver(site(), site(), ['index.html'])).rejects.toThrow(
      /index\.html is listed under keep/,
    )
  })
})
