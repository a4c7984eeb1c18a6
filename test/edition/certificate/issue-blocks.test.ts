import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Moment } from '../../../src/core/measure/moment.ts'
import { type IssueBlock, issueBlocks } from '../../../src/edition/certificate/issue-blocks.ts'
import { carryOutPlan } from '../../../src/edition/certificate/issue-plan.ts'
import { faultyRecords } from '../../../src/records/checks/faulty-records.ts'
import { readText } from '../../../src/records/files.ts'
import { type LoadedContent, loadRecords, type Records } from '../../../src/records/load.ts'
import { issueBase } from '../../records/issued/issue-base.ts'
import { AS_OF, type Content, content, written } from '../passes/generated-content.ts'

function blocksIn(folder: string, loaded: LoadedContent): (lot: string) => IssueBlock[] {
  return issueBlocks({
    records: loaded.records,
    faulty: faultyRecords(loaded.diagnostics),
    dated: loaded.datedFaultyLots,
    textOf: (file) => {
      const reading = readText(folder, file)
      return 'text' in reading ? reading.text : null
    },
  })
}

/** Documents of lots issued together, by lot. */
function issued(records: Records, lots: readonly string[], date: Moment): Map<string, string> {
  const said = { by: 'A. Mason', function: 'manager', reason: 'due', withdrawn: false }
  const plan = lots.map((lot) => ({ lot, date, ...said }))
  const issuing = { program: 'test', saltOf: () => 'salt' }
  return new Map(
    [...carryOutPlan(records, plan, date, issuing)].map(({ request, revision }) => [
      request.lot,
      `${revision.text} ${[...revision.parts.values()].join(' ')}`,
    ]),
  )
}

const unissued = (whole: Content): Content => ({
  ...whole,
  lots: Object.fromEntries(Object.entries(whole.lots).map(([id, lot]) => [id, { ...lot, revisions: [] }])),
})

/** What makes a record unreadable, unsound, or a file that is not where a record is expected. */
const SPOILS: Readonly<Record<string, (path: string) => void>> = {
  syntax: (path) => writeFileSync(path, `${readFileSync(path, 'utf8')}]`),
  'unknown-key': (path) => writeFileSync(path, readFileSync(path, 'utf8').replace('{', '{"colour":"grey",')),
  'inner-key': (path) => {
    const text = readFileSync(path, 'utf8')
    const spoilt = text.replace(/"(laboratory|mass|country)":/, '"$1s":')
    writeFileSync(path, spoilt === text ? `${text}]` : spoilt)
  },
  reference: (path) => {
    const text = readFileSync(path, 'utf8')
    const spoilt = text.replace(/"(control|laboratory|producer)":"[^"]*"/, '"$1":"unknown"')
    writeFileSync(path, spoilt === text ? `${text}]` : spoilt)
  },
  bytes: (path) => writeFileSync(path, Buffer.from([0xff, 0xfe, 0x41])),
}

describe('issueBlocks', () => {
  it('leaves free only lots whose documents are the same, byte for byte, as without the fault', () => {
    let [free, blocked] = [0, 0]
    fc.assert(
      fc.property(content, fc.nat(), fc.constantFrom(...Object.keys(SPOILS)), (generated, pick, how) => {
        const whole = unissued(generated)
        const folder = written(whole, AS_OF)
        try {
          const sound = loadRecords(folder)
          fc.pre(sound.diagnostics.every(({ severity }) => severity !== 'error'))
          const files = readdirSync(folder, { recursive: true, withFileTypes: true })
            .filter((entry) => entry.isFile())
            .map((entry) => join(entry.parentPath, entry.name))
            .sort()
          SPOILS[how]?.(files[pick % files.length] ?? '')
          const spoilt = loadRecords(folder)
          // A lot that is taken away whole is no fault: nothing says that it was there.
          fc.pre(spoilt.diagnostics.some(({ severity }) => severity === 'error'))
          const blocks = blocksIn(folder, spoilt)
          const lots = [...sound.records.lots.keys()]
          const left = lots.filter((lot) => blocks(lot).length === 0)
          free += left.length
          blocked += lots.length - left.length
          expect(issued(spoilt.records, left, AS_OF)).toEqual(issued(sound.records, left, AS_OF))
        } finally {
          rmSync(folder, { recursive: true })
        }
      }),
      { numRuns: 150, seed: 14 },
    )
    // The property says nothing where every lot is blocked, or none.
    expect([free > 100, blocked > 100]).toEqual([true, true])
  }, 120_000)
})

/** The good records with a second source, ash, whose laboratory and control are its own. */
function twoSources(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'blocks-')), 'content')
  cpSync(resolve(import.meta.dirname, '../../diagnostics/base'), folder, { recursive: true })
  const own = (text: string) =>
    text
      .replaceAll('quay', 'moor')
      .replaceAll('K1', 'K2')
      .replaceAll('BL-', 'AL-')
      .replace(/\nrevisions:[\s\S]*/, '\n')
  const copy = (from: string, to: string) =>
    writeFileSync(join(folder, to), own(readFileSync(join(folder, from), 'utf8')))
  copy('laboratories/quay.yaml', 'laboratories/moor.yaml')
  copy('controls/K1.yaml', 'controls/K2.yaml')
  copy('sources/tuff.yaml', 'sources/ash.yaml')
  cpSync(join(folder, 'lots/tuff'), join(folder, 'lots/ash'), { recursive: true })
  for (const name of ['T-1', 'T-9']) copy(`lots/tuff/${name}.yaml`, `lots/ash/${name}.yaml`)
  return folder
}

const LOTS = ['tuff/T-1', 'tuff/T-9', 'ash/T-1', 'ash/T-9']

/** What blocks each lot once a folder was spoilt; lots that nothing blocks are left out. */
function blockedBy(spoil: (folder: string) => void): Record<string, string[]> {
  const folder = twoSources()
  expect(loadRecords(folder).diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
  spoil(folder)
  const blocks = blocksIn(folder, loadRecords(folder))
  return Object.fromEntries(
    LOTS.flatMap((lot) => {
      const own = blocks(lot).map(({ file, reason }) => `${file} ${reason}`)
      return own.length === 0 ? [] : [[lot, own]]
    }),
  )
}

const edit = (path: string, change: (text: string) => string) => (folder: string) =>
  writeFileSync(join(folder, path), change(readFileSync(join(folder, path), 'utf8')))
const unreadable = (path: string) => edit(path, (text) => `${text}]`)

describe('issueBlocks for one fault', () => {
  it('blocks nothing where there is none', () => {
    expect(blockedBy(() => undefined)).toEqual({})
  })
  it('blocks every lot of a source whose one lot cannot be dated, and no other source', () => {
    expect(blockedBy(unreadable('lots/tuff/T-1.yaml'))).toEqual({
      'tuff/T-1': ['lots/tuff/T-1.yaml own'],
      'tuff/T-9': ['lots/tuff/T-1.yaml undated'],
    })
  })
  it('blocks only later lots where the faulty one is dated', () => {
    const unknown = (text: string) => text.replace('laboratory: quay', 'laboratory: harbour')
    expect(blockedBy(edit('lots/tuff/T-1.yaml', unknown))).toEqual({
      'tuff/T-1': ['lots/tuff/T-1.yaml own'],
      'tuff/T-9': ['lots/tuff/T-1.yaml earlier'],
    })
    expect(blockedBy(edit('lots/tuff/T-9.yaml', unknown))).toEqual({ 'tuff/T-9': ['lots/tuff/T-9.yaml own'] })
  })
  it('dates a lot that has not the form of one by its production and samples, where these are sound', () => {
    const misspelt = (text: string) => text.replace('laboratory: quay', 'labratory: quay')
    expect(blockedBy(edit('lots/tuff/T-1.yaml', misspelt))).toEqual({
      'tuff/T-1': ['lots/tuff/T-1.yaml own'],
      'tuff/T-9': ['lots/tuff/T-1.yaml earlier'],
    })
    expect(blockedBy(edit('lots/tuff/T-9.yaml', misspelt))).toEqual({
      'tuff/T-9': ['lots/tuff/T-9.yaml own'],
    })
    for (const wrong of ['samplez:', 'colour: grey\nsamples:'])
      expect(blockedBy(edit('lots/tuff/T-9.yaml', (text) => text.replace('samples:', wrong)))).toMatchObject({
        'tuff/T-1': ['lots/tuff/T-9.yaml undated'],
      })
  })
  it('blocks every source of the laboratory where a lot that cannot be read names two controls', () => {
    const second = (text: string) => `${text}x: { control: K7, laboratory: moor }]`
    expect(Object.keys(blockedBy(edit('lots/tuff/T-1.yaml', second)))).toEqual(LOTS)
  })
  it.each(['controls/K1.yaml', 'laboratories/quay.yaml', 'sources/tuff.yaml'])(
    'blocks the source that uses %s, and no other',
    (path) => {
      expect(blockedBy(unreadable(path))).toEqual({
        'tuff/T-1': [`${path} referred-to`],
        'tuff/T-9': [`${path} referred-to`],
      })
    },
  )
  it.each(['site.yaml', 'producers/hill.yaml', 'criteria/strength.yaml', 'conditions/warm.yaml'])(
    'blocks every source by %s, which all use',
    (path) => {
      expect(Object.keys(blockedBy(unreadable(path)))).toEqual(LOTS)
    },
  )
  it('blocks nothing by a set, a method or a study that no lot is judged with', () => {
    expect(blockedBy(unreadable('methods/about.mdx'))).toEqual({})
    expect(blockedBy(unreadable('studies/heat.yaml'))).toEqual({})
  })
  it('blocks a lot, and later ones of its source, by a fault of its issued document', () => {
    const altered = (folder: string) => {
      issueBase(folder)
      writeFileSync(join(folder, 'issued/tuff/T-1/0.json'), '{}')
    }
    expect(blockedBy(altered)).toEqual({
      'tuff/T-1': ['lots/tuff/T-1.yaml own'],
      'tuff/T-9': ['lots/tuff/T-1.yaml earlier'],
    })
  })
  it('blocks a source by a file in its folder that may be a lot of it', () => {
    expect(Object.keys(blockedBy((folder) => writeFileSync(join(folder, 'lots/ash/A 2.yaml'), '')))).toEqual([
      'ash/T-1',
      'ash/T-9',
    ])
  })
})
