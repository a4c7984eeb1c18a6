import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { discard, MARKER, prepareOutput, swapIn } from '../../src/commands/output-folder.ts'

function scratch(): string {
  return mkdtempSync(join(tmpdir(), 'output-'))
}

function site(folder: string, text: string): void {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'index.html'), text)
  writeFileSync(join(folder, MARKER), 'test\n')
}

describe('prepareOutput', () => {
  it('refuses a folder with files that no build wrote, and leaves them', () => {
    const out = join(scratch(), 'site')
    mkdirSync(out)
    writeFileSync(join(out, 'letter.txt'), 'mine')
    expect(() => prepareOutput(out, [])).toThrow(/no build of this program wrote/)
    expect(readFileSync(join(out, 'letter.txt'), 'utf8')).toBe('mine')
  })
  it('refuses a folder that holds the content or lies in it', () => {
    const folder = scratch()
    const content = join(folder, 'content')
    mkdirSync(content)
    expect(() => prepareOutput(folder, [content])).toThrow(/holds or lies in/)
    expect(() => prepareOutput(join(content, 'site'), [content])).toThrow(/holds or lies in/)
  })
  it('finishes a swap that was interrupted after the earlier site had been moved away', () => {
    const out = join(scratch(), 'site')
    site(`${out}.old`, 'earlier')
    site(`${out}.next`, 'later')
    discard(prepareOutput(out, []))
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('later')
    expect(existsSync(`${out}.old`)).toBe(false)
  })
  it('undoes a swap whose new site was not whole', () => {
    const out = join(scratch(), 'site')
    site(`${out}.old`, 'earlier')
    mkdirSync(`${out}.next`)
    discard(prepareOutput(out, []))
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('earlier')
  })
  it('clears the torso of a build that failed', () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    mkdirSync(`${out}.next`)
    writeFileSync(join(`${out}.next`, 'torso.html'), '')
    const { next } = prepareOutput(out, [])
    expect(existsSync(join(next, 'torso.html'))).toBe(false)
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('earlier')
  })
})

describe('swapIn', () => {
  it('puts the new site in the place of the earlier one and leaves nothing beside it', () => {
    const out = join(scratch(), 'site')
    site(out, 'earlier')
    const output = prepareOutput(out, [])
    writeFileSync(join(output.next, 'index.html'), 'later')
    swapIn(output, 'test')
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('later')
    expect([existsSync(`${out}.old`), existsSync(`${out}.next`)]).toEqual([false, false])
  })
})
