/** Everything that can be lost or altered below issued/, one at a time. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { issueBase, LOT } from './issue-base.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { digestOf } from '../../../src/records/issued/digest.ts'
import { loadRecords } from '../../../src/records/load.ts'

const BASE = resolve(import.meta.dirname, '../../diagnostics/base')
let good = ''

/** The good records with two revisions of one lot and one of another. */
beforeAll(() => {
  good = join(mkdtempSync(join(tmpdir(), 'issued-')), 'content')
  cpSync(BASE, good, { recursive: true })
  issueBase(good)
})

function spoiled(spoil: (folder: string) => void): string[] {
  const folder = join(mkdtempSync(join(tmpdir(), 'spoiled-')), 'content')
  cpSync(good, folder, { recursive: true })
  spoil(folder)
  return loadRecords(folder).diagnostics.map(({ code, file, line }) => `${file}:${line} ${code}`)
}

function edit(folder: string, path: string, from: string | RegExp, to: string): void {
  const text = readFileSync(join(folder, path), 'utf8')
  expect(text).toMatch(from)
  writeFileSync(join(folder, path), text.replace(from, to))
}

const RECORD = `lots/${LOT}.yaml`
const document = (folder: string, number: number) => join(folder, `issued/${LOT}/${number}.json`)
const withPart = (what: string) => (folder: string, spoil: (path: string) => void) => {
  const parts = join(folder, 'issued/parts')
  for (const name of readdirSync(parts))
    if (readFileSync(join(parts, name), 'utf8').includes(what)) spoil(join(parts, name))
}

/** Writes the newest document anew and puts its digest on record, as a forger would. */
function putOnRecord(folder: string, text: string): void {
  const before = digestOf(readFileSync(document(folder, 1)))
  writeFileSync(document(folder, 1), text)
  edit(folder, RECORD, before, digestOf(text))
}

describe('checkIssued', () => {
  it('has nothing to say of what was issued and left alone', () => expect(spoiled(() => {})).toEqual([]))

  it.each<[string, (folder: string) => void, RegExp]>([
    ['a newest document deleted', (f) => rmSync(document(f, 1)), /lots\/tuff\/T-1\.yaml:\d+ issued-missing/],
    ['an earlier document deleted', (f) => rmSync(document(f, 0)), /T-1\.yaml:\d+ issued-missing/],
    ['all that was issued deleted', (f) => rmSync(join(f, 'issued'), { recursive: true }), /issued-missing/],
    [
      'a document altered',
      (f) => edit(f, `issued/${LOT}/1.json`, '65.9', '75.9'),
      /T-1\.yaml:\d+ issued-altered/,
    ],
    [
      'an earlier document altered',
      (f) => edit(f, `issued/${LOT}/0.json`, '"first"', '"other"'),
      /T-1\.yaml:\d+ issued-altered/,
    ],
    [
      'the lot’s record deleted',
      (f) => rmSync(join(f, RECORD)),
      /issued\/tuff\/T-1\/0\.json:1 issued-unrecorded/,
    ],
    [
      'the revisions dropped',
      (f) => edit(f, RECORD, /\nrevisions:[\s\S]*/, '\n'),
      /T-1\/1\.json:1 issued-unrecorded/,
    ],
    [
      'the newest revision dropped',
      (f) => edit(f, RECORD, / {2}- \{ number: 1.*\n/, ''),
      /T-1\/1\.json:1 issued-unrecorded/,
    ],
    [
      'the reason of a line changed',
      (f) => edit(f, RECORD, 'reason: first', 'reason: second'),
      /issued-mismatch/,
    ],
    [
      'the date of a line changed',
      (f) => edit(f, RECORD, 'date: 2026-04-10', 'date: 2026-04-09'),
      /issued-mismatch/,
    ],
    [
      'the signatory of a line changed',
      (f) => edit(f, RECORD, 'by: A. Mason', 'by: B. Baker'),
      /issued-mismatch/,
    ],
    [
      'the function of a line changed',
      (f) => edit(f, RECORD, 'function: manager', 'function: clerk'),
      /issued-mismatch/,
    ],
    [
      'a withdrawal written into a line',
      (f) => edit(f, RECORD, 'reason: first', 'reason: first, withdrawn: yes'),
      /issued-mismatch/,
    ],
    [
      'a document of another lot in its place',
      (f) => {
        cpSync(join(f, 'issued/tuff/T-9/0.json'), document(f, 0))
      },
      /issued-altered/,
    ],
    [
      'two documents exchanged',
      (f) => {
        renameSync(document(f, 0), `${document(f, 0)}.x`)
        renameSync(document(f, 1), document(f, 0))
        renameSync(`${document(f, 0)}.x`, document(f, 1))
      },
      /issued-altered/,
    ],
    ['a shared part deleted', (f) => withPart('"words"')(f, rmSync), /issued-part$/],
    [
      'a shared part altered',
      (f) => withPart('"words"')(f, (path) => writeFileSync(path, '{}')),
      /issued-part$/,
    ],
    ['a private part deleted', (f) => withPart('"salt"')(f, rmSync), /issued-part$/],
    [
      'a private part altered',
      (f) => withPart('"salt"')(f, (path) => edit('', path, 'A. Mason', 'B. Baker')),
      /issued-part$/,
    ],
    [
      'a private part of another form',
      (f) => withPart('"salt"')(f, (path) => writeFileSync(path, '{"persons":[null]}')),
      /issued-part$/,
    ],
    ...['[]', '{"format":2}', '{}', 'null'].map((text): [string, (folder: string) => void, RegExp] => [
      `a document of another form on record: ${text}`,
      (f) => putOnRecord(f, text),
      /T-1\.yaml:\d+ issued-altered/,
    ]),
    ...(['state', 'printed', 'data', 'program', 'by', 'shared'] as const).map(
      (key): [string, (folder: string) => void, RegExp] => [
        `a document on record without its ${key}`,
        (f) => {
          const { [key]: _gone, ...rest } = JSON.parse(readFileSync(document(f, 1), 'utf8')) as Record<
            string,
            unknown
          >
          putOnRecord(f, JSON.stringify(rest))
        },
        /T-1\.yaml:\d+ issued-altered/,
      ],
    ),
    [
      'a document on record with a state that no document has',
      (f) => {
        const stored = JSON.parse(readFileSync(document(f, 1), 'utf8')) as object
        putOnRecord(f, JSON.stringify({ ...stored, state: 'draft' }))
      },
      /T-1\.yaml:\d+ issued-altered/,
    ],
    ...['{}', '[]', '5'].map((text): [string, (folder: string) => void, RegExp] => [
      `a lot part of another form on record: ${text}`,
      (f) => {
        const digest = digestOf(text)
        writeFileSync(join(f, `issued/parts/${digest}.json`), text)
        putOnRecord(
          f,
          readFileSync(document(f, 1), 'utf8').replace(/"lot":\{"part":"[^"]+"/, `"lot":{"part":"${digest}"`),
        )
      },
      /T-1\.yaml:\d+ issued-part/,
    ]),
    ['a document added', (f) => cpSync(document(f, 1), document(f, 2)), /T-1\/2\.json:1 issued-unrecorded/],
    [
      'a document of a lot that never was',
      (f) => cpSync(join(f, 'issued/tuff/T-9'), join(f, 'issued/tuff/T-99'), { recursive: true }),
      /T-99\/0\.json:1 issued-unrecorded/,
    ],
    [
      'a foreign file',
      (f) => writeFileSync(join(f, 'issued/notes.txt'), 'x'),
      /issued\/notes\.txt:1 issued-stray/,
    ],
    ...['01', '1000000', '99999999999999999999999'].map((name): [string, (f: string) => void, RegExp] => [
      `a number that no revision is written with, ${name}`,
      (f) => cpSync(document(f, 1), join(f, `issued/${LOT}/${name}.json`)),
      new RegExp(`T-1/${name}\\.json:1 issued-stray`),
    ]),
    [
      'a file in place of the folder of all that was issued',
      (f) => {
        rmSync(join(f, 'issued'), { recursive: true })
        writeFileSync(join(f, 'issued'), '')
      },
      /issued\/:1 file-unreadable/,
    ],
    [
      'an unused part',
      (f) => writeFileSync(join(f, `issued/parts/sha256-${'0'.repeat(64)}.json`), '{}'),
      /issued-part-unused/,
    ],
  ])('tells %s', (_, spoil, expected) => {
    const told = spoiled(spoil)
    expect(told.join('\n')).toMatch(expected)
  })
  it('names the revision that an unused private part was written for, where it is not on record', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'lost-')), 'content')
    cpSync(good, folder, { recursive: true })
    rmSync(document(folder, 1))
    edit(folder, RECORD, /\n {2}- \{ number: 1,[^\n]*/, '')
    const messages = loadRecords(folder).diagnostics.map(({ message }) => message)
    expect(messages).toContain(`this belongs to revision 1 of ${LOT}, which is not on record`)
  })
  it('says once how many parts belong to no document', () => {
    const told = spoiled((folder) => {
      for (const digit of ['0', '1', '2'])
        writeFileSync(join(folder, `issued/parts/sha256-${digit.repeat(64)}.json`), '{}')
    })
    expect(told).toHaveLength(1)
  })
  it('lets nothing be read from a document with a fault', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'unsound-')), 'content')
    cpSync(good, folder, { recursive: true })
    putOnRecord(folder, '[]')
    const { records } = loadRecords(folder)
    expect([...records.unsoundDocuments]).toEqual([`${LOT}/1.json`])
    const asOf = readMoment('2026-05-01')
    expect(computeEdition(records, { program: 'test', asOf }).lot(LOT).findings).toEqual([])
  })
  it('tells a digest and a document that were changed together, by the revision after it', () => {
    const told = spoiled((folder) => {
      edit(folder, `issued/${LOT}/0.json`, '"first"', '"other"')
      const { diagnostics } = loadRecords(folder)
      const digest =
        /its digest is (\S+)/.exec(
          diagnostics.find(({ code }) => code === 'issued-altered')?.message ?? '',
        )?.[1] ?? ''
      edit(folder, RECORD, /digest: sha256-\w+/, `digest: ${digest}`)
      edit(folder, RECORD, 'reason: first', 'reason: other')
    })
    expect(told).toEqual([expect.stringMatching(/T-1\.yaml:\d+ issued-mismatch/)])
  })
  it('tells the fault of a lot’s record alone, not that its documents belong to nobody', () => {
    expect(spoiled((folder) => edit(folder, RECORD, '1450 t', '1450,5 t'))).toEqual([
      expect.stringContaining('quantity-comma'),
    ])
  })
  it('accepts the documents of a lot that was renamed and says so', () => {
    expect(
      spoiled((folder) => {
        renameSync(join(folder, RECORD), join(folder, 'lots/tuff/T-3.yaml'))
        renameSync(join(folder, `issued/${LOT}`), join(folder, 'issued/tuff/T-3'))
        edit(folder, 'lots/tuff/T-3.yaml', 'produced:', `formerly: [${LOT}]\nproduced:`)
      }),
    ).toEqual([])
  })
})
