/** What npm run issue -- --resume finishes, what it refuses, and that it then leaves everything as it was. */
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { CommandFailure } from '../../src/commands/program.ts'
import { resumeIssue } from '../../src/commands/resume-issue.ts'
import { loadRecords } from '../../src/records/load.ts'
import { issueBase, LOT } from '../records/issued/issue-base.ts'

const RECORD = `lots/${LOT}.yaml`
const NEWEST_LINE = / {2}- \{ number: 1.*\n/
let good = ''

/** The good records with two revisions of one lot and one of another. */
beforeAll(() => {
  vi.spyOn(process.stdout, 'write').mockReturnValue(true)
  vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  good = join(mkdtempSync(join(tmpdir(), 'resume-')), 'content')
  cpSync(resolve(import.meta.dirname, '../diagnostics/base'), good, { recursive: true })
  issueBase(good)
})

afterAll(() => {
  vi.restoreAllMocks()
})

function spoiled(spoil: (folder: string) => void): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'resumed-')), 'content')
  cpSync(good, folder, { recursive: true })
  spoil(folder)
  return folder
}

function edit(folder: string, path: string, from: string | RegExp, to: string): void {
  const text = readFileSync(join(folder, path), 'utf8')
  expect(text).toMatch(from)
  writeFileSync(join(folder, path), text.replace(from, to))
}

const document = (folder: string, number: number | string) => join(folder, `issued/${LOT}/${number}.json`)
const loseNewestLine = (folder: string) => edit(folder, RECORD, NEWEST_LINE, '')

/** Names of all entries and the bytes of the records. */
function stateOf(folder: string): unknown {
  return [readdirSync(folder, { recursive: true }).sort(), readFileSync(join(folder, RECORD), 'utf8')]
}

function removeParts(folder: string, what: string): void {
  const parts = join(folder, 'issued/parts')
  for (const name of readdirSync(parts))
    if (readFileSync(join(parts, name), 'utf8').includes(what)) rmSync(join(parts, name))
}

describe('resumeIssue', () => {
  it('restores both lines of a record that lost them, in order', () => {
    const folder = spoiled((f) => edit(f, RECORD, /\nrevisions:[\s\S]*/, '\n'))
    expect(resumeIssue(folder)).toBe(0)
    expect(stateOf(folder)).toEqual(stateOf(good))
  })
  it('restores lines in the order of numbers, not of names', () => {
    const names = ['10.json', '2.json', '9.json']
    const folder = spoiled((f) => {
      loseNewestLine(f)
      for (const name of names) writeFileSync(join(f, `issued/${LOT}/${name}`), '{')
    })
    resumeIssue(folder)
    expect(vi.mocked(process.stdout.write).mock.lastCall?.[0]).toMatch(
      /revision 1 is finished[\s\S]*revision 2 [\s\S]*revision 9 [\s\S]*revision 10 \(1 byte\) was removed/,
    )
    expect(stateOf(folder)).toEqual(stateOf(good))
  })
  it('restores the line of a lot that was renamed', () => {
    const folder = spoiled((f) => {
      renameSync(join(f, RECORD), join(f, 'lots/tuff/T-3.yaml'))
      renameSync(join(f, `issued/${LOT}`), join(f, 'issued/tuff/T-3'))
      edit(f, 'lots/tuff/T-3.yaml', 'produced:', `formerly: [${LOT}]\nproduced:`)
    })
    const whole = readFileSync(join(folder, 'lots/tuff/T-3.yaml'), 'utf8')
    edit(folder, 'lots/tuff/T-3.yaml', NEWEST_LINE, '')
    expect(resumeIssue(folder)).toBe(0)
    expect(readFileSync(join(folder, 'lots/tuff/T-3.yaml'), 'utf8')).toBe(whole)
    expect(loadRecords(folder).diagnostics).toEqual([])
  })
  it('tells the parts of a revision that never came to its document', () => {
    const folder = spoiled((f) => writeFileSync(join(f, `issued/parts/sha256-${'0'.repeat(64)}.json`), '{}'))
    expect(resumeIssue(folder)).toBe(0)
    expect(vi.mocked(process.stdout.write).mock.lastCall?.[0]).toBe(
      '1 file that no issued document refers to removed.\n',
    )
    expect(stateOf(folder)).toEqual(stateOf(good))
    resumeIssue(folder)
    expect(vi.mocked(process.stdout.write).mock.lastCall?.[0]).toBe('Nothing was left behind.\n')
  })
  it('finishes one lot although another’s record has a fault, and says so', () => {
    const folder = spoiled((f) => {
      loseNewestLine(f)
      edit(f, 'lots/tuff/T-9.yaml', 'produced:', 'produced: [')
    })
    expect(loadRecords(folder).records.lots.has('tuff/T-9')).toBe(false)
    expect(resumeIssue(folder)).toBe(1)
    expect(vi.mocked(process.stderr.write).mock.lastCall?.[0]).toMatch(
      /^lots\/tuff\/T-9\.yaml has a fault, so whether an issue of that lot was interrupted is not known\.\nfix: /,
    )
    expect(readFileSync(join(folder, RECORD), 'utf8')).toBe(readFileSync(join(good, RECORD), 'utf8'))
  })

  it.each<[string, (folder: string) => void, RegExp]>([
    [
      'of a lot whose record is gone',
      (f) => rmSync(join(f, 'lots/tuff/T-9.yaml')),
      /0\.json cannot be finished: the record lots\/tuff\/T-9\.yaml is missing/,
    ],
    [
      'whose private part is gone',
      (f) => {
        loseNewestLine(f)
        removeParts(f, '"revision":1,"salt"')
      },
      /1\.json cannot be finished: its part issued\/parts\/sha256-\w+\.json is missing or was altered/,
    ],
    [
      'of another lot',
      (f) => {
        loseNewestLine(f)
        cpSync(join(f, 'issued/tuff/T-9/0.json'), document(f, 1))
      },
      /1\.json cannot be finished: it is a document of tuff\/T-9/,
    ],
    [
      'that was copied to the next number',
      (f) => cpSync(document(f, 1), document(f, 2)),
      /2\.json cannot be finished: it says that it is revision 1/,
    ],
    [
      'after one that is gone, whose line is gone, too',
      (f) => {
        edit(f, RECORD, /\nrevisions:[\s\S]*/, '\n')
        rmSync(document(f, 0))
      },
      /1\.json cannot be finished: revision 0 is not on record/,
    ],
    [
      'that is JSON and no document, beside one that is half written',
      (f) => {
        writeFileSync(document(f, 2), '{"format":1}')
        writeFileSync(join(f, 'issued/tuff/T-9/1.json'), '{')
      },
      /2\.json cannot be finished: it is not an issued document of format 2/,
    ],
    [
      'that is a link to nothing',
      (f) => symlinkSync('nowhere.json', document(f, 2)),
      /2\.json cannot be finished: it is a link, which is not followed/,
    ],
    [
      'that is null',
      (f) => writeFileSync(document(f, 2), 'null'),
      /2\.json cannot be finished: it is not an issued document of format 2/,
    ],
    ['with a number like 01', (f) => cpSync(document(f, 1), document(f, '01')), /^Nothing was resumed\.$/],
    [
      'with a number past all',
      (f) => cpSync(document(f, 1), document(f, '9'.repeat(23))),
      /^Nothing was res/,
    ],
  ])('stops at a document %s and changes nothing', (_, spoil, expected) => {
    const folder = spoiled(spoil)
    // No document refers to this part: a sweep would take it out.
    writeFileSync(join(folder, `issued/parts/sha256-${'0'.repeat(64)}.json`), '{}')
    const before = stateOf(folder)
    const resume = () => resumeIssue(folder)
    expect(resume).toThrow(CommandFailure)
    expect(resume).toThrow(expected)
    expect(stateOf(folder)).toEqual(before)
  })
})
