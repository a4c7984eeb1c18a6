/** What was issued is read again wherever it may have changed, and only there. */
import {
  cpSync,
  existsSync,
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
import { keptReadings, type KeptReadingsRequest } from '../../src/commands/kept-readings.ts'
import { loadRecords } from '../../src/records/load.ts'
import type { ReadBefore } from '../../src/records/read-before.ts'
import { issueBase, LOT } from '../records/issued/issue-base.ts'

const BASE = resolve(import.meta.dirname, '../diagnostics/base')
/** Long after whatever the test writes. */
const LATER = Date.now() + 3_600_000
/** Three documents, a private part of each, and what they share. */
const FILES = 11
const DOCUMENTS = 3

let beside = ''
let content = ''

beforeEach(() => {
  beside = mkdtempSync(join(tmpdir(), 'kept-readings-'))
  content = join(beside, 'content')
  cpSync(BASE, content, { recursive: true })
  issueBase(content)
})

/** Reads the records as a build does. @returns what was told, and which records and how many documents were read for it */
function reading(request: Partial<KeptReadingsRequest> = {}): {
  codes: string[]
  records: string[]
  files: number
} {
  const { before, issued, end } = keptReadings({ beside, content, begun: LATER, ...request })
  const [records, files] = [readFrom(before), readFrom(issued)]
  const { diagnostics } = loadRecords(content, undefined, { before, issued })
  expect(end()).toEqual([])
  return {
    codes: diagnostics.map(({ code }) => code),
    records: records.filter((path) => /^(lots|controls)/.test(path)),
    files: files.length,
  }
}

/** Names of what is read from now on. */
function readFrom(readings: ReadBefore): string[] {
  const names: string[] = []
  const of = readings.of.bind(readings)
  readings.of = (name, mark, read) =>
    of(name, mark, () => {
      names.push(name)
      return read()
    })
  return names
}

const document = (number: number) => join(content, `issued/${LOT}/${number}.json`)
const listOf = (lists: string, name: string) =>
  join(beside, '.puteoli', `${lists}-of-content`, `${name}.json`)
const list = () => listOf('issued', LOT.split('/')[0] ?? '')

describe('keptReadings of documents', () => {
  it('reads every file once, and none of them the next time', () => {
    expect(reading()).toMatchObject({ codes: [], files: FILES })
    expect(reading()).toMatchObject({ codes: [], files: 0 })
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
    expect(reading()).toMatchObject({ codes: ['issued-altered'], files: 1 })
    expect(reading().codes).toEqual(['issued-altered'])
  })

  it('tells of a part that was altered or lost, for each document that has it', () => {
    reading()
    const parts = join(content, 'issued/parts')
    const [first = ''] = readdirSync(parts).filter((name) =>
      readFileSync(join(parts, name), 'utf8').includes('"salt"'),
    )
    rmSync(join(parts, first))
    expect(reading()).toMatchObject({ codes: ['issued-part'], files: 1 })
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
    expect(reading()).toMatchObject({ codes: ['issued-mismatch'], files: 0 })
  })

  it('does not rest on what was written while it was being read', () => {
    reading({ begun: Date.now() })
    expect(reading().files).toBe(FILES)
  })

  it.each<[string, number, () => void]>([
    ['is gone', DOCUMENTS, () => rmSync(list())],
    ['was cut short', DOCUMENTS, () => writeFileSync(list(), readFileSync(list()).subarray(0, -100))],
    [
      'was edited',
      DOCUMENTS,
      () => writeFileSync(list(), readFileSync(list(), 'utf8').replace('tuff', 'tufa')),
    ],
    [
      'is of records that lay in another folder',
      FILES,
      () => {
        renameSync(content, join(beside, 'before'))
        cpSync(join(beside, 'before'), content, { recursive: true })
        const other = mkdtempSync(join(tmpdir(), 'kept-readings-'))
        renameSync(join(beside, '.puteoli'), join(other, '.puteoli'))
        renameSync(content, join(other, 'content'))
        ;[beside, content] = [other, join(other, 'content')]
      },
    ],
  ])('reads all that a list stood for where it %s', (_what, files, spoil) => {
    reading()
    spoil()
    expect(reading()).toMatchObject({ codes: [], files })
  })
})

describe('keptReadings of records', () => {
  const lot = `lots/${LOT}.yaml`
  const RECORDS = ['controls/K1.yaml', lot, 'lots/tuff/T-9.yaml']
  const edit = (path: string, from: string | RegExp, to: string) => {
    const text = readFileSync(join(content, path), 'utf8')
    expect(text).toMatch(from)
    writeFileSync(join(content, path), text.replace(from, to))
  }
  /** All that is read with what is kept, and without. */
  const both = (folder = content) => {
    const { before, issued } = keptReadings({ beside, content: folder, begun: LATER })
    return [loadRecords(folder, undefined, { before, issued }), loadRecords(folder)]
  }

  it('reads lots and controls once, and none of them the next time', () => {
    expect(reading().records.sort()).toEqual(RECORDS)
    expect(reading().records).toEqual([])
    expect(reading({ fresh: true }).records.sort()).toEqual(RECORDS)
  })

  it('reads a lot that was changed behind its size and its day, and one that was saved as it was', () => {
    reading()
    const { atime, mtime } = statSync(join(content, lot))
    edit(lot, '8.4 %', '8.5 %')
    utimesSync(join(content, lot), atime, mtime)
    expect(reading().records).toEqual([lot])
    edit(lot, '8.5 %', '8.5 %')
    expect(reading().records).toEqual([lot])
    expect(reading({ begun: 0 }).records).toEqual([])
  })

  it('reads all where the site puts moments in another order', () => {
    reading()
    writeFileSync(
      join(content, 'site.yaml'),
      `${readFileSync(join(content, 'site.yaml'), 'utf8')}offset: "+05:00"\n`,
    )
    expect(reading().records.sort()).toEqual(RECORDS)
  })

  it('reads a lot that there is something to tell of each time', () => {
    edit(lot, '63.1 %', '')
    for (let time = 0; time < 2; time++)
      expect(reading()).toMatchObject({
        codes: expect.arrayContaining(['value-blank']),
        records: expect.arrayContaining([lot]),
      })
  })

  it('places a fault that is found beside the file where the file has it now', () => {
    reading()
    rmSync(join(content, 'controls/K1.yaml'))
    const [kept, anew] = both()
    expect(anew?.diagnostics.map(({ file, line, column }) => [file, line > 1, column > 1])).toContainEqual([
      lot,
      true,
      true,
    ])
    expect(kept?.diagnostics).toEqual(anew?.diagnostics)
  })

  it('keeps nothing of a source that is gone', () => {
    reading()
    const [source = ''] = LOT.split('/')
    expect(existsSync(listOf('records', `lots-${source}`))).toBe(true)
    rmSync(join(content, 'lots', source), { recursive: true })
    reading()
    expect(existsSync(listOf('records', `lots-${source}`))).toBe(false)
  })

  it('gives the records of the demonstration as they are read', () => {
    const demo = resolve('content')
    const { before, issued, end } = keptReadings({ beside, content: demo, begun: LATER })
    loadRecords(demo, undefined, { before, issued })
    end()
    const later = keptReadings({ beside, content: demo, begun: LATER })
    const read = readFrom(later.before)
    const kept = loadRecords(demo, undefined, later)
    expect(read.filter((path) => /^(lots|controls)/.test(path))).toEqual([])
    const anew = loadRecords(demo)
    expect(kept.records).toStrictEqual(anew.records)
    expect(kept.diagnostics).toEqual(anew.diagnostics)
    expect(kept.records.lots.size).toBeGreaterThan(200)
  })
})
