import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { keptSources } from '../../src/commands/kept-sources.ts'

const PART = { source: 'ash', name: 'rows', restsOn: 'sha256-1 https://example.org /a/ ' }
const TEXT = '[{"id":"ash/1"}]'

let folder = ''
const site = () => join(folder, 'dist')
const theFile = () => {
  const [first = ''] = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
  return first
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kept-sources-'))
  keptSources(site(), false)?.put(PART, TEXT)
})
afterEach(() => rmSync(folder, { recursive: true }))

it('gives a part that was put for the same site, and none when everything is made anew', () => {
  expect(keptSources(site(), false)?.get(PART)).toBe(TEXT)
  expect(keptSources(site(), true)?.get(PART)).toBeUndefined()
  expect(keptSources(join(folder, 'other'), false)?.get(PART)).toBeUndefined()
})

it('gives what was put when everything is made anew, to other threads too', () => {
  const kept = keptSources(site(), true)
  expect(kept?.isShared).toBe(true)
  expect(kept?.isComputed('ash')).toBe(false)
  kept?.put(PART, '[]')
  expect(kept?.isComputed('ash')).toBe(true)
  expect(kept?.get(PART)).toBe('[]')
  expect(keptSources(site(), false)?.get(PART)).toBe('[]')
})

it('has none of another name, of another source, or of what rested on something else', () => {
  const kept = keptSources(site(), false)
  for (const other of [{ name: 'row' }, { source: 'tuff' }, { restsOn: 'sha256-2 https://example.org /a/ ' }])
    expect(kept?.get({ ...PART, ...other })).toBeUndefined()
})

it('takes a part of which anything was altered, cut off or put elsewhere for none', () => {
  const whole = readFileSync(theFile(), 'utf8')
  const spoiled = [
    whole.replace('ash/1', 'ash/2'),
    whole.slice(0, -1),
    whole.slice(0, 40),
    `${whole}\n`,
    whole.replace('rows', 'row2'),
    '',
  ]
  for (const text of spoiled) {
    writeFileSync(theFile(), text)
    expect(keptSources(site(), false)?.get(PART)).toBeUndefined()
  }
  writeFileSync(theFile(), whole)
  expect(keptSources(site(), false)?.get(PART)).toBe(TEXT)
})

it('keeps nothing of a source that is gone', () => {
  keptSources(site(), false)?.put({ ...PART, source: 'tuff' }, TEXT)
  expect(keptSources(site(), false)?.end(['tuff'])).toEqual([])
  expect(keptSources(site(), false)?.get(PART)).toBeUndefined()
  expect(keptSources(site(), false)?.get({ ...PART, source: 'tuff' })).toBe(TEXT)
})

it('says what could not be written, once, and goes on', () => {
  writeFileSync(join(folder, 'a-file'), '')
  const kept = keptSources(join(folder, 'a-file', 'dist'), false)
  kept?.put(PART, TEXT)
  kept?.put({ ...PART, source: 'tuff' }, TEXT)
  expect(kept?.end([])).toEqual([
    expect.stringMatching(/^The next build will compute every lot: .*ash.* cannot be written: /),
  ])
})
