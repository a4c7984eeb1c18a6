/** What was issued is read again wherever it may have changed, and only there. */
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { keptIssued, type KeptIssuedRequest } from '../../src/commands/kept-issued.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase, LOT } from '../records/issued/issue-base.ts'

const BASE = resolve(import.meta.dirname, '../diagnostics/base')
/** Long after whatever the test writes. */
const LATER = Date.now() + 3_600_000
/** Three documents, a private part of each, and what they share. */
const FILES = 11

let beside = ''
let content = ''

beforeEach(() => {
  beside = mkdtempSync(join(tmpdir(), 'kept-issued-'))
  content = join(beside, 'content')
  cpSync(BASE, content, { recursive: true })
  issueBase(content)
})

/** Reads the records as a build does. @returns what was told, and how many files were read for it */
function reading(request: Partial<KeptIssuedRequest> = {}): { codes: string[]; files: number } {
  const { issued, write } = keptIssued({ beside, content, begun: LATER, ...request })
  const of = issued.of.bind(issued)
  let files = 0
  issued.of = (name, mark, read) =>
    of(name, mark, () => {
      files += 1
      return read()
    })
  const { diagnostics } = loadRecords(content, undefined, { issued })
  expect(write()).toEqual([])
  return { codes: diagnostics.map(({ code }) => code), files }
}

const document = (number: number) => join(content, `issued/${LOT}/${number}.json`)
const list = () => join(beside, '.puteoli', 'issued-of-content.json')

describe('keptIssued', () => {
  it('reads every file once, and none of them the next time', () => {
    expect(reading()).toEqual({ codes: [], files: FILES })
    expect(reading()).toEqual({ codes: [], files: 0 })
  })

  it('reads all where everything is asked for anew', () => {
    reading()
    expect(reading({ fresh: true }).files).toBe(FILES)
  })

  it('tells of a document whose bytes were changed behind its size and its day', () => {
    reading()
    const { atime, mtime } = statSync(document(1))
    writeFileSync(document(1), readFileSync(document(1), 'utf8').replace('65.9', '75.9'))
    utimesSync(document(1), atime, mtime)
    expect(reading()).toEqual({ codes: ['issued-altered'], files: 1 })
    expect(reading().codes).toEqual(['issued-altered'])
  })

  it('tells of a part that was altered or lost, for each document that has it', () => {
    reading()
    const parts = join(content, 'issued/parts')
    const [first = ''] = readdirSync(parts).filter((name) =>
      readFileSync(join(parts, name), 'utf8').includes('"salt"'),
    )
    rmSync(join(parts, first))
    expect(reading()).toEqual({ codes: ['issued-part'], files: 1 })
  })

  it('reads no document that a link leads to in place of a file', () => {
    reading()
    renameSync(document(1), join(content, 'elsewhere.json'))
    symlinkSync(join(content, 'elsewhere.json'), document(1))
    expect(reading().codes).toContain('issued-missing')
  })

  it('holds a document that was read before against a line of its record that was changed', () => {
    reading()
    const record = join(content, `lots/${LOT}.yaml`)
    writeFileSync(record, readFileSync(record, 'utf8').replace('reason: first', 'reason: second'))
    expect(reading()).toEqual({ codes: ['issued-mismatch'], files: 0 })
  })

  it('does not rest on what was written while it was being read', () => {
    reading({ begun: Date.now() })
    expect(reading().files).toBe(FILES)
  })

  it.each<[string, () => void]>([
    ['is gone', () => rmSync(list())],
    ['was cut short', () => writeFileSync(list(), readFileSync(list()).subarray(0, -100))],
    ['was edited', () => writeFileSync(list(), readFileSync(list(), 'utf8').replace('tuff', 'tufa'))],
    [
      'is of records that lay in another folder',
      () => {
        renameSync(content, join(beside, 'before'))
        cpSync(join(beside, 'before'), content, { recursive: true })
        const other = mkdtempSync(join(tmpdir(), 'kept-issued-'))
        renameSync(join(beside, '.puteoli'), join(other, '.puteoli'))
        renameSync(content, join(other, 'content'))
        ;[beside, content] = [other, join(other, 'content')]
      },
    ],
  ])('reads all where its list %s', (_what, spoil) => {
    reading()
    spoil()
    expect(reading()).toEqual({ codes: [], files: FILES })
  })
})
