import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { discard, type OutputFolder, prepareOutput, swapIn } from '../../src/commands/output-folder.ts'
import {
  MARKER,
  markerOf,
  removeMarked,
  removeMarkedAtOnce,
  writeMarker,
} from '../../src/commands/output-marker.ts'

function scratch(): string {
  return mkdtempSync(join(tmpdir(), 'output-'))
}

const WHOLE = { program: 'test', audience: 'public', state: 'whole' } as const

function site(
  folder: string,
  text: string,
  state: 'whole' | 'being-built' | 'being-removed' = 'whole',
): void {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'index.html'), text)
  writeMarker(folder, { ...WHOLE, state })
}

function prepared(folder: string, apart: readonly string[] = []): OutputFolder {
  return prepareOutput({ folder, apart, program: 'test', audience: 'public', keep: [] })
}

const spareOf = (out: string) => join(out, '../.puteoli/spare-of-site')

const front = (folder: string) => readFileSync(join(folder, 'index.html'), 'utf8')

const FRONT = { files: ['index.html'], folders: [] }

describe('prepareOutput', () => {
  it('refuses a folder with files that no build wrote, and leaves them', () => {
    const out = join(scratch(), 'site')
    mkdirSync(out)
    writeFileSync(join(out, 'letter.txt'), 'mine')
    expect(() => prepared(out)).toThrow(/and not the \.certificate-site that a build of this program leaves/)
    expect(readFileSync(join(out, 'letter.txt'), 'utf8')).toBe('mine')
  })
  it('refuses a folder that holds the content or lies in it', () => {
    const folder = scratch()
    const content = join(folder, 'content')
    mkdirSync(content)
    expect(() => prepared(folder, [content])).toThrow(/holds or lies in/)
    expect(() => prepared(join(content, 'site'), [content])).toThrow(/holds or lies in/)
  })
  it.each(['.next', '.old'])('refuses a foreign folder, file or link at DIR%s, and leaves it', (ending) => {
    const makers: ((path: string) => void)[] = [
      (path) => {
        mkdirSync(path)
        writeFileSync(join(path, 'letter.txt'), 'mine')
      },
      (path) => writeFileSync(path, 'mine'),
      (path) => symlinkSync('elsewhere', path),
    ]
    for (const make of makers) {
      const out = join(scratch(), 'site')
      site(out, 'earlier')
      make(`${out}${ending}`)
      expect(() => prepared(out)).toThrow(`${out}${ending} stands in the way`)
      expect(readdirSync(join(out, '..')).sort()).toEqual(['site', `site${ending}`])
      expect(front(out)).toBe('earlier')
    }
  })
  it('marks the folder that it builds in at once, so that a killed build is cleared by the next', () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    const killed = prepared(out)
    writeFileSync(join(killed.next, 'torso.html'), '')
    killed.release()
    const { next } = prepared(out)
    expect(readdirSync(next)).toEqual([MARKER])
    expect(markerOf(next)?.state).toBe('being-built')
    expect(front(out)).toBe('earlier')
  })
  it('finishes a swap that was interrupted after the earlier site had been moved away', () => {
    const out = join(scratch(), 'site')
    site(`${out}.old`, 'earlier')
    site(`${out}.next`, 'later')
    discard(prepared(out))
    expect(front(out)).toBe('later')
    expect(existsSync(`${out}.old`)).toBe(false)
  })
  it('undoes a swap whose new site was not whole, or was being removed', () => {
    for (const state of ['being-built', 'being-removed'] as const) {
      const out = join(scratch(), 'site')
      site(`${out}.old`, 'earlier')
      site(`${out}.next`, 'torso', state)
      discard(prepared(out))
      expect(front(out)).toBe('earlier')
    }
  })
  it('goes on removing an earlier site at which it was killed, at whatever file', () => {
    for (const left of [['index.html', MARKER], [MARKER], []]) {
      const out = join(scratch(), 'site')
      site(out, 'later')
      mkdirSync(`${out}.old`)
      for (const name of left) writeFileSync(join(`${out}.old`, name), '{"state":"being-removed"}')
      discard(prepared(out))
      expect(readdirSync(join(out, '..'))).toEqual(['site'])
    }
  })
  it('lets one build at a time work at a folder, and the next one when that has ended', () => {
    const out = join(scratch(), 'site')
    const first = prepared(out)
    expect(() => prepared(out)).toThrow(/^Another command is building in .*site\.\n/)
    expect(existsSync(first.next)).toBe(true)
    discard(first)
    discard(prepared(out))
    expect(readdirSync(join(out, '..'))).toEqual([])
  })
  it('does not let one edition replace the other', () => {
    const out = join(scratch(), 'site')
    site(out, 'public')
    const internal = { keep: [], folder: out, apart: [], program: 'test', audience: 'internal' } as const
    expect(() => prepareOutput(internal)).toThrow(/holds the public edition, which the internal one does not/)
    // A site of an earlier version, whose marker tells nothing of its readers, may be a public one.
    writeFileSync(join(out, MARKER), 'test 0.1.0\n')
    expect(() => prepareOutput(internal)).toThrow(/holds the public edition/)
    discard(prepared(out))
    writeMarker(out, { ...WHOLE, audience: 'internal' })
    expect(() => prepared(out)).toThrow(/holds the internal edition/)
    expect(readdirSync(join(out, '..'))).toEqual(['site'])
  })
  it('says in one line what stands where the folder is to be, a file or a link that leads nowhere', () => {
    const folder = scratch()
    writeFileSync(join(folder, 'file'), 'mine')
    symlinkSync('nowhere', join(folder, 'link'))
    expect(() => prepared(join(folder, 'file'))).toThrow(/file is no folder\.\n/)
    expect(() => prepared(join(folder, 'file/site'))).toThrow(/cannot be made: a file stands in the place/)
    expect(() => prepared(join(folder, 'link'))).toThrow(/link cannot be followed: it does not exist\./)
    expect(readdirSync(folder).sort()).toEqual(['file', 'link'])
  })
  it('builds where a link leads, and leaves the link', async () => {
    const folder = scratch()
    site(join(folder, 'real'), 'earlier')
    symlinkSync('real', join(folder, 'link'))
    const output = prepared(join(folder, 'link'))
    writeFileSync(join(output.next, 'index.html'), 'later')
    await swapIn(output, FRONT)
    output.release()
    expect(front(join(folder, 'link'))).toBe('later')
    expect(readdirSync(folder).sort()).toEqual(['.puteoli', 'link', 'real'])
  })
})

describe('swapIn', () => {
  it('puts the new site in the place of the earlier one, which is kept as the spare', async () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    const output = prepared(out)
    writeFileSync(join(output.next, 'index.html'), 'later')
    await swapIn(output, FRONT)
    discard(output)
    expect(front(out)).toBe('later')
    expect(markerOf(out)).toEqual(WHOLE)
    expect(readdirSync(join(out, '..'))).toEqual(['.puteoli', 'site'])
    expect(front(spareOf(out))).toBe('earlier')
  })
  it('gives the site’s folder the permissions of any new folder, whatever the earlier one had', async () => {
    const before = process.umask(0o027)
    try {
      const out = join(scratch(), 'site')
      site(out, 'earlier')
      chmodSync(out, 0o700)
      const output = prepared(out)
      writeFileSync(join(output.next, 'index.html'), 'later')
      await swapIn(output, FRONT)
      discard(output)
      expect(statSync(out).mode & 0o777).toBe(0o750)
      expect(statSync(join(out, MARKER)).mode & 0o777).toBe(0o640)
    } finally {
      process.umask(before)
    }
  })
  it('ends well where the earlier site cannot be removed, and says where it lies', async () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    const output = prepared(out)
    writeFileSync(join(output.next, 'index.html'), 'later')
    // A foreign hand puts a folder where the marker is removed as a file.
    rmSync(join(out, MARKER))
    mkdirSync(join(out, MARKER))
    expect(await swapIn(output, FRONT)).toEqual([
      expect.stringMatching(
        /^The site is in place\. \S+site\.old, left by an earlier build, cannot be removed: /,
      ),
    ])
    discard(output)
    expect(front(out)).toBe('later')
    rmSync(`${out}.old`, { recursive: true })
    discard(prepared(out))
    expect(readdirSync(join(out, '..'))).toEqual(['site'])
  })
  it('puts the earlier site back where the new one cannot take its place', async () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    const output = prepared(out)
    // A foreign hand empties the stage between its sync and the renaming: no folder is there to be renamed.
    const swapping = swapIn(output, FRONT)
    rmSync(output.next, { recursive: true })
    await expect(swapping).rejects.toThrow()
    expect(front(out)).toBe('earlier')
    expect(existsSync(`${out}.old`)).toBe(false)
  })
})

describe('the spare site', () => {
  /** A site that took the place of another. */
  async function swapped(): Promise<string> {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    await build(out, 'later')
    return out
  }
  async function build(out: string, text: string): Promise<OutputFolder> {
    const output = prepared(out)
    rmSync(join(output.next, 'index.html'), { force: true })
    writeFileSync(join(output.next, 'index.html'), text)
    await swapIn(output, FRONT)
    discard(output)
    return output
  }
  it('is what the next site is made of, under the marker of one that is being built', async () => {
    const out = await swapped()
    const output = prepared(out)
    expect(front(output.next)).toBe('earlier')
    expect(output.spare).toEqual({ files: ['index.html'], folders: [''] })
    expect(markerOf(output.next)?.state).toBe('being-built')
    expect(existsSync(spareOf(out))).toBe(false)
    discard(output)
  })
  it('is given back by a build that comes to nothing, and changes from build to build', async () => {
    const out = await swapped()
    discard(prepared(out))
    expect(existsSync(`${out}.next`)).toBe(false)
    expect(front(spareOf(out))).toBe('earlier')
    expect((await build(out, 'last')).spare).toBeDefined()
    expect([front(out), front(spareOf(out))]).toEqual(['last', 'later'])
  })
  it('is left alone where it is none of ours, and the earlier site is removed then', async () => {
    const out = await swapped()
    rmSync(spareOf(out), { recursive: true })
    mkdirSync(spareOf(out))
    writeFileSync(join(spareOf(out), 'letter.txt'), 'mine')
    expect((await build(out, 'last')).spare).toBeUndefined()
    expect(readdirSync(spareOf(out))).toEqual(['letter.txt'])
    expect(readdirSync(join(out, '..'))).toEqual(['.puteoli', 'site'])
  })
  it('is not used where a folder of it has other permissions than a new one', async () => {
    const out = await swapped()
    mkdirSync(join(spareOf(out), 'lots'))
    chmodSync(join(spareOf(out), 'lots'), 0o700)
    const { spare, next, release } = prepared(out)
    expect(spare).toBeUndefined()
    expect(readdirSync(next)).toEqual([MARKER])
    release()
  })
})

describe('removeMarked', () => {
  it('removes a folder with its marker, and minds none', () => {
    const folder = join(scratch(), 'site')
    site(folder, 'earlier')
    removeMarked(folder)
    removeMarked(folder)
    expect(existsSync(folder)).toBe(false)
  })

  it('removes many files at once, follows no link, and minds none', async () => {
    const folder = join(scratch(), 'site')
    const kept = join(scratch(), 'kept')
    mkdirSync(kept)
    writeFileSync(join(kept, 'file'), '')
    site(folder, 'earlier')
    mkdirSync(join(folder, 'a/b/c'), { recursive: true })
    for (const path of ['a/1', 'a/b/2', 'a/b/c/3']) writeFileSync(join(folder, path), '')
    symlinkSync(kept, join(folder, 'a/link'))
    await removeMarkedAtOnce(folder)
    await removeMarkedAtOnce(folder)
    expect(existsSync(folder)).toBe(false)
    expect(existsSync(join(kept, 'file'))).toBe(true)
  })
})
